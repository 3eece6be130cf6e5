import { describe, expect, it } from "vitest";
import { washRange } from "../../src/steps/wash-range.js";
import {
  clothAt,
  contextFor,
  flowsOf,
  LOT,
  part,
  storedCloth,
  type Told,
  valueOf,
  waterOn,
} from "./context.js";

const BROUGHT = (224 * 0.075) / 1.075;

function run(told: Told = {}, lots = [LOT]) {
  const context = contextFor(washRange, told);
  const { terms, cloth } = washRange.build(context, storedCloth(context));
  return { flow: flowsOf(terms, lots), cloth };
}

describe("wash range", () => {
  // BREF on textiles, 2003, table in section 4.9 (from memory): continuous washing after reactive dyeing
  // takes 10 to 15 L/kg. At 10 L/kg, 224 kg take 2240 L, and cloth carries out 1.1 kg/kg.
  it("draws and drains its liquor", () => {
    const { flow, cloth } = run({
      settings: { "fresh-water": 10 },
      choices: { heating: "coil" },
    });
    expect(flow("water.process")).toBeCloseTo(2240, 9);
    expect(flow("water.drained")).toBeCloseTo(2240 + BROUGHT - 224 * 1.1, 9);
    expect(waterOn(cloth)).toBeCloseTo(246.4, 9);
    expect(valueOf(cloth.temperature)).toBe(15);
    expect(cloth.moisture).toBeUndefined();
  });

  it("draws less where open steam joins the bath, and drains the same", () => {
    const { flow } = run();
    expect(flow("water.process")).toBeCloseTo(224 * 25 - flow("steam.open"), 9);
    expect(flow("water.drained")).toBeCloseTo(224 * 25 + BROUGHT - 224 * 1.1, 9);
  });

  // Two lots of 3 L/kg × 8 baths and 8 L/kg × 3 baths take 24 L/kg each.
  it("takes liquor ratio and baths as each lot logged them", () => {
    const lots = [
      { ...LOT, liquorRatio: 3, baths: 8 },
      { ...LOT, liquorRatio: 8, baths: 3 },
      { ...LOT, liquorRatio: 12 },
      { ...LOT, baths: 6 },
      LOT,
    ];
    const { flow } = run({ takes: ["liquorRatio", "baths"], choices: { heating: "coil" } }, lots);
    expect(flow("water.process")).toBeCloseTo(224 * (24 + 24 + 12 + 6 * 4 + 25), 9);
  });

  it("takes the setting when the columns belong to another step", () => {
    const lots = [{ ...LOT, liquorRatio: 3, baths: 8 }];
    const { flow } = run({ choices: { heating: "coil" } }, lots);
    expect(flow("water.process")).toBeCloseTo(224 * 25, 9);
  });

  // By hand: 1800 L to fill the boxes, emptied after each of two lots.
  it("fills its boxes anew", () => {
    const fills = { fill: 1800, "fills-per-lot": 1 };
    const choices = { heating: "coil" };
    const { flow } = run({ settings: fills, choices }, [LOT, LOT]);
    const steady = run({ choices }, [LOT, LOT]).flow;
    expect(flow("water.process") - steady("water.process")).toBeCloseTo(3600, 9);
    expect(flow("water.drained") - steady("water.drained")).toBeCloseTo(3600, 9);
    expect(flow("heat.steam-coil")).toBeGreaterThan(steady("heat.steam-coil"));
  });

  // By hand: 1000 m at 25 m/min and 12 min to set up are 0.8667 h, and a quarter of that stopped with the
  // valves open: 1.0833 h × 3600 L/h = 3900 L, 780 L of them while nothing ran.
  it("draws by the hour where its valves stand open, stops included", () => {
    const told = {
      settings: { flow: 3600, stops: 0.25, crew: 2 },
      choices: { "water-by": "flow", heating: "coil" },
      takes: ["liquorRatio", "baths"],
    } as const;
    const { flow } = run(told, [{ ...LOT, liquorRatio: 3, baths: 8 }]);
    expect(flow("water.process")).toBeCloseTo(3900, 9);
    expect(flow("water.drained")).toBeCloseTo(3900 + BROUGHT - 224 * 1.1, 9);
    expect(flow("machine.hours")).toBeCloseTo(1.25 * (2 / 3 + 0.2), 12);
    expect(flow("labour.hours")).toBeCloseTo(2.5 * (2 / 3 + 0.2), 12);
    expect(flow("electricity")).toBeCloseTo(12 * (2 / 3 + 0.2), 12);
    const context = contextFor(washRange, told);
    const { terms } = washRange.build(context, storedCloth(context));
    const idle = flowsOf(terms.filter(({ part }) => part === "waiting"));
    expect(idle("water.process")).toBeCloseTo(780, 9);
    // The loss of the surfaces goes on: 12 kW over 0.2167 h are 9.36 MJ; liquor is warmed by 250/6 K on average.
    expect(idle("heat.steam-coil")).toBeCloseTo(9.36 + (780 * 4.186 * 250) / 6000, 9);
  });

  // The same litres warm the same, however they are asked for.
  it("takes the heat of its water by the hour as by the kilogram", () => {
    const hours = 2 / 3 + 0.2;
    const byFlow = run({
      settings: { flow: (224 * 25) / hours, stops: 0 },
      choices: { "water-by": "flow" },
    });
    const byLiquor = run();
    expect(byFlow.flow("steam.open")).toBeCloseTo(byLiquor.flow("steam.open"), 9);
    expect(byFlow.flow("water.process")).toBeCloseTo(byLiquor.flow("water.process"), 9);
  });

  it("waits for nothing where water goes by the liquor", () => {
    const context = contextFor(washRange);
    const { terms } = washRange.build(context, storedCloth(context));
    expect(terms.filter(({ part }) => part !== undefined)).toEqual([]);
  });

  it("doses chemicals per cloth into the bath", () => {
    const { flow } = run({ recipe: { detergent: 5, soda: 10 } });
    expect(flow("detergent@bath")).toBeCloseTo(1120, 9);
    expect(flow("soda@bath")).toBeCloseTo(2240, 9);
  });

  // By hand: 1000 m at 25 m/min take 40 min, and 12 min to set up; 12 kW.
  it("draws power while it runs", () => {
    const { flow } = run();
    expect(flow("machine.hours")).toBeCloseTo(2 / 3 + 0.2, 12);
    expect(flow("electricity")).toBeCloseTo(12 * (2 / 3 + 0.2), 12);
  });

  it("drains what each lot brings", () => {
    const context = contextFor(washRange, { choices: { heating: "coil" } });
    const wet = {
      water: [part("mass", 0.1), part("mass·pickup", 0.94)],
      temperature: context.hall.temperature,
    };
    const lots = [LOT, { ...LOT, pickup: 0.7 }];
    const flow = flowsOf(washRange.build(context, wet).terms, lots);
    expect(flow("water.drained")).toBeCloseTo(448 * (25 + 0.1 - 1.1) + 224 * 0.7 * 0.94, 9);
  });

  it("takes more heat with more liquor and less with cloth that comes in hot", () => {
    const heat = (fresh: number, tIn: number): number => {
      const context = contextFor(washRange, { settings: { "fresh-water": fresh } });
      return flowsOf(washRange.build(context, clothAt(context, 0.2, tIn)).terms)("steam.open");
    };
    expect(heat(30, 60)).toBeGreaterThan(heat(20, 60));
    const counter = (tIn: number): number => {
      const context = contextFor(washRange, {
        settings: { "fresh-water": 1 },
        choices: { sequence: "counter-current" },
      });
      return flowsOf(washRange.build(context, clothAt(context, 0.2, tIn)).terms)("steam.open");
    };
    expect(counter(80)).toBeLessThan(counter(20));
  });
});
