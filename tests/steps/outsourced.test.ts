import { describe, expect, it } from "vitest";
import { outsourced } from "../../src/steps/outsourced.js";
import { clothAt, contextFor, flowsOf, valueOf, waterOn } from "./context.js";

describe("outsourced step", () => {
  // By hand, for 224 kg.
  it("is energy bought from a partner, and nothing of our own", () => {
    const context = contextFor(outsourced);
    const cloth = clothAt(context, 0.05, 95);
    const result = outsourced.build(context, cloth);
    const flow = flowsOf(result.terms);
    expect(flow("bought.electricity")).toBeCloseTo(78.4, 9);
    expect(flow("bought.heat")).toBeCloseTo(784, 9);
    expect(result.terms).toHaveLength(2);
    expect(waterOn(result.cloth)).toBe(waterOn(cloth));
    expect(valueOf(result.cloth.temperature)).toBe(26);
  });
});
