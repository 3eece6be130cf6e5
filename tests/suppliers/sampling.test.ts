import { describe, expect, it } from "vitest";
import { AMOUNTS } from "../../src/steps/amounts.js";
import {
  effectiveAtMix,
  effectiveLots,
  LOT_SCATTER,
  sampleFactors,
} from "../../src/suppliers/sampling.js";
import { placeOf } from "../../src/suppliers/strata.js";

const group = (lots: number, area: number) => {
  const amounts = new Float64Array(AMOUNTS.length);
  amounts[placeOf("accepted")] = area;
  return { lots, amounts };
};

describe("doubt of the sample", () => {
  it("counts lots of equal size in full, and one large lot for little more than one", () => {
    expect(effectiveLots([group(4, 400), group(6, 600)])).toBeCloseTo(10, 9);
    expect(effectiveLots([group(1, 1000), group(9, 9)])).toBeGreaterThan(1);
    expect(effectiveLots([group(1, 1000), group(9, 9)])).toBeLessThan(1.1);
    expect(effectiveLots([group(3, 0)])).toBe(0);
    // Kish: (Σw)² / Σw² of weights 1, 2 and 3.
    expect(effectiveLots([group(1, 1), group(1, 2), group(1, 3)])).toBeCloseTo(36 / 14, 9);
  });

  it("is worth at a mix what the same doubt would take of lots shared out as the mix is", () => {
    expect(effectiveAtMix([0.5, 0.5], [10, 10])).toBeCloseTo(20, 9);
    // Hand-worked: 1 / (0.5² / 40 + 0.5² / 2.5) = 9.41.
    expect(effectiveAtMix([0.5, 0.5], [40, 2.5])).toBeCloseTo(9.4118, 3);
    expect(effectiveAtMix([0.5, 0.5], [10, 0])).toBeCloseTo(10, 9);
    expect(effectiveAtMix([1], [0])).toBe(0);
  });

  it("falls with the root of the lots, about a median of 1", () => {
    const sd = (lots: number): number => {
      const logs = [...sampleFactors(lots, 1, "x", 4000)].map(Math.log);
      return Math.sqrt(logs.reduce((sum, log) => sum + log * log, 0) / logs.length);
    };
    expect(sd(1) / LOT_SCATTER).toBeCloseTo(1, 1);
    expect(sd(1) / sd(25)).toBeCloseTo(5, 9);
  });

  it("is the same whatever else is drawn, and another for another stratum", () => {
    expect(sampleFactors(5, 1, "x", 10)).toEqual(sampleFactors(5, 1, "x", 20).slice(0, 10));
    expect(sampleFactors(5, 1, "x", 10)).not.toEqual(sampleFactors(5, 1, "y", 10));
  });
});
