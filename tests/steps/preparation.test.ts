import { describe, expect, it } from "vitest";
import { preparation } from "../../src/steps/preparation.js";
import { clothAt, contextFor, flowsOf, storedCloth, valueOf, waterOn } from "./context.js";

describe("preparation", () => {
  // By hand, for 224 kg.
  it("is so much per kilogram of cloth", () => {
    const context = contextFor(preparation);
    const { terms, cloth } = preparation.build(context, storedCloth(context));
    const flow = flowsOf(terms);
    expect(flow("water.process")).toBeCloseTo(224 * 12, 9);
    expect(flow("water.drained")).toBeCloseTo(224 * 12, 9);
    expect(flow("heat.steam-coil")).toBeCloseTo(224 * 4, 9);
    expect(flow("electricity")).toBeCloseTo(56, 9);
    expect(flow("detergent@bath")).toBeCloseTo(1120, 9);
    expect(waterOn(cloth)).toBeCloseTo(waterOn(storedCloth(context)), 12);
  });

  it("takes its heat where the plant file says, a burner with its loss", () => {
    const context = contextFor(preparation, {
      choices: { "heated-by": "burner" },
      burnerEfficiency: 0.98,
    });
    const { terms, cloth } = preparation.build(context, clothAt(context, 0.075, 80));
    expect(flowsOf(terms)("heat.burner")).toBeCloseTo((224 * 4) / 0.98, 9);
    expect(flowsOf(terms)("heat.steam-coil")).toBe(0);
    expect(valueOf(cloth.temperature)).toBe(26);
  });
});
