import { describe, expect, it, vi } from "vitest";
import { compareArms } from "../../src/compare/compare.js";
import { type PlayedScenario, playScenarios, type Stage } from "../../src/compare/scenarios.js";
import type { ScenarioText } from "../../src/plant/schema.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import { AS_OF, inputOf, smallMill } from "../report/compose/small-mill.js";
import { plantFrom } from "../account/plant-file.js";
import { SHIPPED } from "../tools/shipped-factors.js";

vi.setConfig({ testTimeout: 60_000 });

/** The small mill with scenarios and another pigment route. */
function millWith(scenarios: Readonly<Record<string, ScenarioText>>) {
  const { text } = smallMill();
  const { fix: _fix, ...before } = text.routes["pigment-calender"]!.machines;
  const fresh = { "wash.fresh-water": { value: 25, low: 20, high: 30 } };
  const stenter = { like: "pigment-stenter", machines: { ...before, fix: "stenter" } };
  return plantFrom({
    ...text,
    sites: { main: { ...text.sites["main"] } },
    routes: {
      ...text.routes,
      reactive: { ...text.routes["reactive"], settings: fresh },
      "pigment-stenter": stenter,
    },
    scenarios,
  });
}

const MILL = inputOf(millWith({}));

function stageOf(plant: ReturnType<typeof millWith>): Stage {
  return {
    plant,
    factors: SHIPPED,
    groups: MILL.groups,
    uncovered: 0,
    asOf: AS_OF,
    draws: 200,
    seed: 1,
  };
}

/** Scenarios on the six lots. */
function play(scenarios: Readonly<Record<string, ScenarioText>>, more: Partial<Stage> = {}) {
  const plant = millWith(scenarios);
  const played = playScenarios({ ...stageOf(plant), ...more }, plant.scenarios ?? []);
  if ("without" in played) throw new Error(`no area under ${played.without.name}`);
  return played;
}

function one(
  says: ScenarioText,
  more: Partial<Stage> = {},
): PlayedScenario & { base: ReturnType<typeof play>["base"] } {
  const { base, played } = play({ one: says }, more);
  return { ...played[0]!, base };
}

const COUNTER: ScenarioText = {
  sites: {
    main: {
      machines: {
        range: { choices: { sequence: "counter-current" }, settings: { recovery: 0.6 } },
      },
    },
  },
  routes: { reactive: { settings: { "wash.fresh-water": { value: 10, low: 8, high: 12 } } } },
};

describe("playScenarios", () => {
  it("gives the mill to the last bit where nothing differs", () => {
    const { base, comparisons, changes } = one({ note: "as it is" });
    expect([...comparisons.keys()]).toEqual([...base.keys()]);
    expect(comparisons).toEqual(base);
    const { account, reference } = MILL;
    expect(base.get("energy")).toEqual(compareArms(account, "energy", reference.units));
    for (const change of changes.values()) expect(change).toEqual({ median: 0, low: 0, high: 0 });
  });

  it("gives the mill to the last bit where a number is said over again", () => {
    const { base, comparisons } = one({
      sites: { main: { settings: { "hall.temperature": 24 } } },
    });
    expect(comparisons).toEqual(base);
  });

  it("lowers water and heat of the dye arm alone with a wash against the cloth", () => {
    const { base, comparisons, changes } = one(COUNTER);
    for (const id of ["water", "heat"] as const) {
      const [before, after] = [base.get(id)!, comparisons.get(id)!];
      expect(after.dye.median, id).toBeLessThan(before.dye.median);
      expect(after.pigment, id).toEqual(before.pigment);
      // The dye arm takes less in every draw, so pigment saves less in every draw.
      expect(changes.get(id)?.high, id).toBeLessThan(0);
    }
  });

  it("pairs the draws: the change is known better than either saving", () => {
    const { base, changes, comparisons } = one({
      sites: { main: { settings: { "hall.temperature": 30 } } },
    });
    const width = ({ low, high } = { low: NaN, high: NaN }): number => high - low;
    const change = width(changes.get("energy"));
    expect(change).toBeGreaterThan(0);
    expect(change).toBeLessThan(width(base.get("energy")?.saving) / 5);
    expect(change).toBeLessThan(width(comparisons.get("energy")?.saving) / 5);
  });

  it("moves carbon dioxide by another grid, and nothing but that", () => {
    const { base, comparisons } = one({ sites: { main: { place: "NOR" } } });
    expect(comparisons.get("co2-location")?.pigment.median).toBeLessThan(
      base.get("co2-location")?.pigment.median ?? NaN,
    );
    for (const id of ["water", "cod", "energy", "scope-1", "cost"] as const)
      expect(comparisons.get(id), id).toEqual(base.get(id));
  });

  it("fixes all pigment on the stenter, and leaves the dye arm alone", () => {
    const { base, comparisons } = one({ instead: { "pigment-calender": "pigment-stenter" } });
    expect(comparisons.get("energy")?.pigment).not.toEqual(base.get("energy")?.pigment);
    expect(comparisons.get("energy")?.dye).toEqual(base.get("energy")?.dye);
  });

  it("turns rejects of one arm into less accepted area of that arm", () => {
    const { base, comparisons } = one({ rejects: { pigment: 2 } });
    // By hand: 400, 250 and 610 m of pigment with 4 m rejected each, 700, 400 and 90 m of dye with 12, 4 and 4.
    // On the pigment arm all lots count, as no yield is given.
    const area = (times: number): number => 2450 - times * 32;
    const before = base.get("water")!;
    const after = comparisons.get("water")!;
    expect(after.pigment.median / before.pigment.median).toBeCloseTo(area(1) / area(2), 9);
    expect(after.dye).toEqual(before.dye);
  });

  it("leaves shares as they are where both arms reject as often", () => {
    const { base, comparisons, changes } = one({ rejects: 3 });
    expect(changes.get("energy")).toEqual({ median: 0, low: 0, high: 0 });
    expect(comparisons.get("energy")?.dye.median).toBeGreaterThan(
      base.get("energy")?.dye.median ?? NaN,
    );
  });

  it("takes no account of rejects per kg of cloth", () => {
    const { base, comparisons } = one({ rejects: { pigment: 3 } }, { units: 1000 });
    expect(comparisons).toEqual(base);
  });

  it("adds water and energy to pigment with a finish after all", () => {
    const { base, comparisons } = one({ finish: "pigment" });
    for (const id of ["water", "energy"] as const)
      expect(comparisons.get(id)?.pigment.median, id).toBeGreaterThan(
        base.get(id)?.pigment.median ?? NaN,
      );
    expect(comparisons.get("energy")?.dye).toEqual(base.get("energy")?.dye);
  });

  it("plays each by itself, in the order of the file", () => {
    const both = play({ wash: COUNTER, same: {} });
    expect(both.played.map(({ scenario }) => scenario.name)).toEqual(["wash", "same"]);
    expect(both.played[0]?.comparisons).toEqual(one(COUNTER).comparisons);
    expect(both.played[1]?.comparisons).toEqual(both.base);
  });

  it("names the scenario that leaves no accepted area", () => {
    const plant = millWith({ none: { rejects: 20 } });
    const stage = stageOf(plant);
    expect(playScenarios(stage, plant.scenarios ?? [])).toHaveProperty("played");
    // A tenth rejected twenty times over is twice of what was printed.
    const groups = stage.groups.map((group) => {
      const amounts = Float64Array.from(group.amounts);
      amounts[placeOf("accepted")] = 0.9 * (amounts[placeOf("printed")] ?? 0);
      return { ...group, amounts };
    });
    expect(playScenarios({ ...stage, groups }, plant.scenarios ?? [])).toMatchObject({
      without: { name: "none" },
    });
  });
});

function placeOf(name: string): number {
  return AMOUNTS.findIndex((amount) => amount.name === name);
}
