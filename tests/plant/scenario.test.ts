import { describe, expect, it } from "vitest";
import type { Plant, Scenario } from "../../src/plant/plant.js";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { type Changes, faultsOf, lineOf, plantFile } from "./plant-file.js";

const DYE = `  reactive:
    like: reactive
    machines: { pretreat: pad, pretreat-dry: stenter, print: printer, steam: steamer, wash: range, squeeze: nip, dry: stenter }
`;
const WET = `burner: { fuel: natural-gas }
    yield: { dye: { value: 0.9, low: 0.8, high: 0.95, source: trial } }`;

function withWet(more: string): Changes {
  return { site: WET, more: `${DYE}${more}` };
}

/** The file's text, its wet machines put in. */
function textOf(changes: Changes): string {
  return plantFile(changes).replace(
    "      calender:",
    "      steamer: { kind: steamer }\n      range: { kind: wash-range }\n      nip: { kind: squeeze }\n      calender:",
  );
}

function read(says: string, before = ""): { plant: Plant; scenario: Scenario } {
  const text = textOf(withWet(`${before}scenarios:\n  other:\n    ${says}\n`));
  const { value, problems } = readPlant({ name: "plant.yaml", text }, SHIPPED);
  const scenario = value?.scenarios?.[0];
  if (value === undefined || scenario === undefined) throw new Error(problems.map(sentence).join());
  return { plant: value, scenario };
}

/** Faults of one scenario, each with its key inside it. */
function faults(says: string): readonly (readonly (string | undefined)[])[] {
  const changes = { more: `scenarios:\n  other:\n    ${says}\n` };
  return faultsOf(plantFile(changes)).map(({ line, key, value, code, remedy }) => {
    expect(line).toBe(lineOf(changes, says));
    expect(remedy).toMatch(/\.$/);
    return [key?.replace(/^scenarios\.other\.?/, ""), value, code];
  });
}

describe("a scenario", () => {
  it("that says nothing leaves the house as it is", () => {
    const { plant, scenario } = read("note: nothing at all");
    const { sites, routes, counterparts } = plant;
    expect(scenario.plant).toMatchObject({ sites, routes, counterparts });
    expect(scenario).toMatchObject({
      name: "other",
      note: "nothing at all",
      asked: false,
      differs: [],
      instead: {},
      rejects: { pigment: 1, dye: 1 },
    });
  });

  it("overrides one route and leaves others, and the house itself, alone", () => {
    const { plant, scenario } = read(
      "routes: { reactive: { settings: { wash.fresh-water: 12 } } }",
    );
    const wash = scenario.plant.routes["reactive"]?.steps.find(({ role }) => role === "wash");
    expect(wash?.settings["fresh-water"]).toEqual({
      value: 12,
      source: "plant.yaml, scenario other, routes.reactive.settings.wash.fresh-water",
    });
    expect(scenario.plant.routes["pigment"]).toEqual(plant.routes["pigment"]);
    const own = plant.routes["reactive"]?.steps.find(({ role }) => role === "wash");
    expect(own?.settings).toEqual({});
  });

  it("holds on every day, over changes that say the same thing otherwise", () => {
    const { scenario } = read(
      "sites: { main: { settings: { hall.temperature: 31 }, machines: { flue: { words: new one } } } }",
      `changes:
  - from: 2026-07-01
    sites: { main: { settings: { hall.temperature: 29 }, machines: { flue: { kind: hot-flue } } } }
`,
    );
    const versions = scenario.plant.versions ?? [];
    expect(versions.map(({ from }) => from)).toEqual(["", "2026-07-01"]);
    for (const { plant } of versions)
      expect(plant.sites["main"]?.settings?.["hall.temperature"]).toMatchObject({ value: 31 });
    // The flue stands from the change on; the scenario brings none before it.
    expect(versions.map(({ plant }) => plant.sites["main"]?.machines["flue"])).toEqual([
      undefined,
      { kind: "hot-flue", words: "new one" },
    ]);
  });

  it.each([
    ["pigment", [1, 0]],
    ["dye", [0, 1]],
    ["every", [1, 1]],
  ])("finishes %s goods with the machines that prepare them", (which, wanted) => {
    const { scenario } = read(`finish: ${which}`);
    const pads = ["pigment", "reactive"].map(
      (route) =>
        scenario.plant.routes[route]?.steps.filter(
          ({ role, machine }) => role === "finish" && machine === "pad",
        ).length,
    );
    expect(pads).toEqual(wanted);
  });

  it("multiplies the rejects behind a yield as well", () => {
    const { scenario } = read("rejects: { dye: 2 }");
    expect(scenario.rejects).toEqual({ pigment: 1, dye: 2 });
    const share = scenario.plant.sites["main"]?.yield?.dye;
    // 1 − 2 (1 − 0.9) and so on.
    expect(share?.value).toBeCloseTo(0.8, 12);
    expect(share?.low).toBeCloseTo(0.6, 12);
    expect(share?.high).toBeCloseTo(0.9, 12);
    expect(() => read("rejects: 6")).toThrow(/rejects: "6"; expected a multiple that leaves/);
  });

  it.each([
    ["sites: { mian: { place: NOR } }", "sites.mian", "mian", "unknown-name"],
    ["sites: { main: { place: NOT } }", "sites.main.place", "NOT", "place-not-listed"],
    [
      "sites: { main: { settings: { boiler.efficiency: 9 } } }",
      "sites.main.settings.boiler.efficiency",
      "9",
      "setting-out-of-range",
    ],
    [
      "routes: { pigment: { machines: { fix: pad } } }",
      "routes.pigment.machines.fix",
      "pad",
      "machine-of-other-kind",
    ],
    [
      "routes: { pigment: { print_width: 1 } }",
      "routes.pigment.print_width",
      "print_width",
      "unknown-key",
    ],
    ["counterparts: { pigment: nobody }", "counterparts.pigment", "nobody", "unknown-name"],
    ["instead: { pigment: pigmnt }", "instead.pigment", "pigmnt", "unknown-name"],
    ["finish: always", "finish", "always", "wrong-value"],
    ["rejects: 40", "rejects", "40", "wrong-value"],
    ["rejects: { pigment: -1 }", "rejects.pigment", "-1", "wrong-value"],
    ["from: 2026-01-01", "from", "from", "unknown-key"],
  ])("is refused at its key: %s", (says, key, value, code) => {
    expect(faults(says)).toEqual([[key, value, code]]);
  });

  it("turns no route into one of the other workflow", () => {
    expect(() => read("routes: { pigment: { workflow: dye } }")).toThrow(/a pigment route still/);
    expect(() => read("instead: { pigment: reactive }")).toThrow(/a pigment route, as pigment is/);
  });

  it("says a fault once, however many days it holds on", () => {
    const more = `changes:\n  - { from: 2026-07-01, sites: { main: { words: new } } }\nscenarios:\n  other: { sites: { main: { settings: { boiler.efficiency: 9 } } } }\n`;
    expect(faultsOf(plantFile({ more }))).toHaveLength(1);
  });

  it("is told once more that its exhaust is too dry", () => {
    expect(
      faults(
        "sites: { main: { machines: { stenter: { settings: { exhaust-humidity: 0.001 } } } } }",
      ),
    ).toEqual([
      [
        "sites.main.machines.stenter.settings.exhaust-humidity",
        "0.001",
        expect.stringMatching(/exhaust-too-dry|setting-out-of-range/),
      ],
    ]);
  });
});
