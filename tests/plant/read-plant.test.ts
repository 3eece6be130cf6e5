import { describe, expect, it } from "vitest";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { type Changes, faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

const DYE = `  reactive:
    like: reactive
    machines: { pretreat: pad, pretreat-dry: stenter, print: printer, steam: steamer, wash: range, squeeze: nip, dry: stenter }
`;

describe("readPlant", () => {
  it("ties every step to its machine, with settings and choices of route and machine", () => {
    const { value } = readPlant({ name: "plant.yaml", text: plantFile() }, SHIPPED);
    expect(value?.house).toBe("House of faults (invented)");
    expect(value?.gwp).toBe("AR6");
    const route = value?.routes["pigment"];
    expect(route).toMatchObject({ name: "pigment", workflow: "pigment", dye: undefined });
    expect(route?.steps.map(({ role, machine }) => [role, machine])).toEqual([
      ["pretreat", "pad"],
      ["pretreat-dry", "stenter"],
      ["pretreat-store", ""],
      ["print", "printer"],
      ["fix", "calender"],
      ["store", ""],
    ]);
    expect(route?.steps[4]).toMatchObject({ settings: { dwell: 30 }, choices: { heat: "oil" } });
    expect(route?.steps[1]?.choices).toEqual({ heat: "burner" });
  });

  it("puts the route's choice before the machine's", () => {
    const text = plantFile({ choices: "fix.heat: electric" });
    const { value } = readPlant({ name: "plant.yaml", text }, SHIPPED);
    expect(value?.routes["pigment"]?.steps[4]?.choices).toEqual({ heat: "electric" });
  });

  it("adds a soft finish after all", () => {
    const text = plantFile({
      fix: "fix: calender\n      finish: pad\n      finish-dry: stenter\n    finish: soft",
    });
    const { value, problems } = readPlant({ name: "plant.yaml", text }, SHIPPED);
    expect(problems).toEqual([]);
    expect(value?.routes["pigment"]?.steps.slice(6).map(({ role }) => role)).toEqual([
      "finish",
      "finish-dry",
      "finish-store",
    ]);
  });

  it("names an unknown key with the keys there are", () => {
    const text = plantFile({ site: "boilr: { fuel: natural-gas }" });
    const [first, ...others] = faultsOf(text);
    expect(others).toEqual([]);
    expect(first).toMatchObject({ code: "unknown-key", value: "boilr", line: 6 });
    expect(first?.expected).toMatch(/^one of place, words, settings, burner, oil_heater, boiler,/);
    expect(first?.remedy).toBe("Write boiler if that was meant.");
  });

  it("says what is no YAML", () => {
    expect(faultsOf("millrace: [1").map(({ code }) => code)).toContain("yaml-syntax");
  });

  it("says all faults in one run, in the order of the file", () => {
    const text = plantFile({
      place: "ATA",
      site: "boiler: { fuel: peat }",
      padSettings: "power: 5000",
      fix: "fix: pad",
      settings: "fix.dwel: 1, pretreat.pickup: 70",
      choices: "fix.heat: coal",
      more: `${DYE}counterparts: { pigment: nobody }\n`,
    });
    const found = faultsOf(text);
    expect(found.map(({ value }) => value)).toEqual([
      "ATA",
      "peat",
      "5000",
      "pad",
      ...["70", "dwel"],
      "coal",
      ...["steamer", "range", "nip"],
      "nobody",
    ]);
    const lines = found.map(({ line }) => line ?? 0);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    for (const fault of found) expect(sentence(fault)).toMatch(/^plant\.yaml, line \d+, key .+\.$/);
  });

  it("says wrong shapes, wrong names and a wrong dialect in the same run", () => {
    const text = plantFile({
      site: "boiler: { feul: wood }",
      padSettings: "power: much, speed: 900",
      settings: "fix.dwel: 1",
      more: 'log: { decimal: ";" }\nhuose: twice\n',
    });
    expect(faultsOf(text).map(({ key, code }) => [key, code])).toEqual([
      ["sites.main.boiler.feul", "unknown-key"],
      ["sites.main.machines.pad.settings.power", "wrong-value"],
      ["sites.main.machines.pad.settings.speed", "setting-out-of-range"],
      ["routes.pigment.settings.fix.dwel", "unknown-name"],
      ["log.decimal", "wrong-value"],
      ["huose", "unknown-key"],
    ]);
  });

  it.each<[string, Changes, string]>([
    ["a machine of no kind", { calenderKind: "[]" }, "sites.main.machines.calender.kind"],
    [
      "an unknown kind of machine",
      { calenderKind: "calandra" },
      "sites.main.machines.calender.kind",
    ],
    ["a shipped route that is no word", { like: "5" }, "routes.pigment.like"],
    ["an unknown shipped route", { like: "pigment-calendar" }, "routes.pigment.like"],
    ["a machine that is no word", { fix: "fix: 5" }, "routes.pigment.machines.fix"],
    ["a place that is no word", { place: "5" }, "sites.main.place"],
    [
      "a route that is none",
      { more: "  other: 5\ncounterparts: { other: pigment }\n" },
      "routes.other",
    ],
    [
      "a misspelt key of a route",
      { more: "  other: { lik: acid, machines: {} }\n" },
      "routes.other.lik",
    ],
    [
      "a step without role",
      {
        more: "  other: { workflow: dye, steps: [{ kind: pad }], machines: { a: pad } }\n",
      },
      "routes.other.steps[0].role",
    ],
    [
      "a recipe that is no word",
      {
        more: "  other: { workflow: dye, steps: [{ role: a, kind: pad, recipe: 5 }], machines: { a: pad }, settings: { a.urea: 5 } }\n",
      },
      "routes.other.steps[0].recipe",
    ],
  ])("names %s once, and nothing that follows from it", (_, changes, key) => {
    expect(faultOf(changes).key).toBe(key);
  });

  it("takes a `log:` without lines for none", () => {
    const { value } = readPlant(
      { name: "plant.yaml", text: plantFile({ more: "log:\n" }) },
      SHIPPED,
    );
    expect(value?.text.log).toBeNull();
  });
});

describe("readPlant with changes", () => {
  const CHANGES = `changes:
  - from: 2026-09-01
    note: softener after all
    routes:
      pigment:
        finish: soft
        machines:
          finish: pad
          finish-dry: stenter
  - from: 2026-07-01
    sites:
      main:
        machines:
          calender: { choices: { heat: electric } }
`;

  it("lays changes over the file by day, later ones over earlier ones", () => {
    const text = plantFile({ more: CHANGES });
    const { value, problems } = readPlant({ name: "plant.yaml", text }, SHIPPED);
    expect(problems).toEqual([]);
    const versions = value?.versions ?? [];
    expect(versions.map(({ from, note }) => [from, note])).toEqual([
      ["", ""],
      ["2026-07-01", ""],
      ["2026-09-01", "softener after all"],
    ]);
    const fix = versions.map(({ plant }) => plant.routes["pigment"]?.steps[4]?.choices["heat"]);
    expect(fix).toEqual(["oil", "electric", "electric"]);
    expect(versions.map(({ plant }) => plant.routes["pigment"]?.steps.length)).toEqual([6, 6, 9]);
  });

  it("has one house only where no change is stated", () => {
    const { value } = readPlant({ name: "plant.yaml", text: plantFile() }, SHIPPED);
    expect(value).not.toHaveProperty("versions");
  });

  it("names a step that a change leaves without machine by the line of the change", () => {
    const more = CHANGES.replace("          finish: pad\n", "");
    expect(faultOf({ more })).toMatchObject({
      code: "route-misses-step",
      key: "changes[0].routes.pigment.machines.finish",
      line: lineOf({ more }, "finish-dry") - 1,
    });
  });

  it("names what a change breaks elsewhere by the line on which the change begins", () => {
    const more =
      "changes:\n  - from: 2026-07-01\n    sites: { main: { machines: { calender: { kind: pad } } } }\n";
    const [first, ...others] = faultsOf(plantFile({ more }));
    expect(first).toMatchObject({ line: lineOf({ more }, "- from") });
    expect([first, ...others].map((fault) => fault?.key)).toContain(
      "changes[0].routes.pigment.machines.fix",
    );
  });

  it("names a number out of range in a change at its own line, and once", () => {
    const more = `changes:
  - from: 2026-07-01
    sites:
      main:
        settings:
          boiler.efficiency: 87
  - from: 2026-08-01
    sites:
      main:
        settings:
          hall.temperature: warm
`;
    expect(faultsOf(plantFile({ more })).map(({ key, line }) => [key, line])).toEqual([
      ["changes[0].sites.main.settings.boiler.efficiency", lineOf({ more }, "boiler.efficiency")],
      ["changes[1].sites.main.settings.hall.temperature", lineOf({ more }, "hall.temperature")],
    ]);
  });

  it("does not say a fault of the file again for each change", () => {
    expect(faultOf({ place: "ATA", more: CHANGES }).key).toBe("sites.main.place");
  });

  it("asks for one change a day, and for days that exist", () => {
    const twice = CHANGES.replace("2026-09-01", "2026-07-01");
    expect(faultOf({ more: twice })).toMatchObject({
      code: "change-twice",
      key: "changes[1].from",
      line: lineOf({ more: twice }, "- from: 2026-07-01") + 8,
    });
    const never = CHANGES.replace("2026-07-01", "2026-06-31");
    expect(faultOf({ more: never })).toMatchObject({ key: "changes[1].from", value: "2026-06-31" });
  });

  it("names an unknown key of a change", () => {
    const more = "changes:\n  - from: 2026-07-01\n    machines: {}\n";
    expect(faultOf({ more })).toMatchObject({
      code: "unknown-key",
      key: "changes[0].machines",
      expected: "one of from, note, sites, routes, counterparts",
    });
  });
});
