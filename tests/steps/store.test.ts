import { describe, expect, it } from "vitest";
import { store } from "../../src/steps/store.js";
import { clothAt, contextFor, flowsOf, LOT, part, valueOf, waterOn } from "./context.js";

const context = contextFor(store);
const DRY_MASS = 224 / 1.075;

describe("storing", () => {
  // By hand: 224 kg conditioned are 208.4 kg bone dry; from 5 % to 7.5 % they take up 5.21 kg.
  it("lets overdried cloth take up moisture from the air", () => {
    const { terms, cloth } = store.build(context, clothAt(context, 0.05, 95));
    const flow = flowsOf(terms);
    expect(flow("water.from-air")).toBeCloseTo(0.025 * DRY_MASS, 9);
    expect(flow("water.evaporated")).toBe(0);
    expect(waterOn(cloth)).toBeCloseTo(0.075 * DRY_MASS, 9);
    expect(valueOf(cloth.temperature)).toBe(26);
    expect(valueOf(cloth.moisture!)).toBe(0.075);
  });

  it("lets damp cloth dry in the hall", () => {
    const flow = flowsOf(store.build(context, clothAt(context, 0.3, 60)).terms);
    expect(flow("water.evaporated")).toBeCloseTo(0.225 * DRY_MASS, 9);
    expect(flow("water.from-air")).toBe(0);
  });

  it("dries off all liquor of a pad", () => {
    const { terms, cloth } = store.build(context, {
      water: [part("mass", 0.07), part("mass·pickup", 0.94), part("mass[no pickup]", 0.7)],
      temperature: context.supplyTemperature,
    });
    const lots = [LOT, { ...LOT, pickup: 0.6 }];
    const flow = flowsOf(terms, lots);
    expect(flow("water.evaporated") - flow("water.from-air")).toBeCloseTo(
      448 * 0.07 + 224 * (0.7 + 0.6 * 0.94) - 2 * 0.075 * DRY_MASS,
      9,
    );
    expect(waterOn(cloth, lots)).toBeCloseTo(2 * 0.075 * DRY_MASS, 9);
  });

  it("takes nothing else", () => {
    const { terms } = store.build(context, clothAt(context, 0.05, 95));
    expect(new Set(terms.map(({ flow }) => flow))).toEqual(
      new Set(["water.evaporated", "water.from-air"]),
    );
  });
});
