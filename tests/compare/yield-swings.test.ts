import { describe, expect, it } from "vitest";
import type { Swings } from "../../src/account/swings.js";
import { swingsWithYields } from "../../src/compare/yield-swings.js";
import type { GivenYield, WorkflowYields } from "../../src/compare/yields.js";
import type { Spread } from "../../src/numbers/spread.js";
import { inputWithYields, share } from "../report/compose/with-yields.js";

const SWINGS: Swings = {
  base: 0.5,
  factors: [
    {
      factor: "wash-range.fresh-water",
      unit: "L/kg",
      words: "fresh water of the wash",
      own: false,
      low: { value: 10, saving: 0.4 },
      high: { value: 30, saving: 0.7 },
      width: 0.3,
    },
  ],
};

/** Yields of pigment alone over 100 m², dye keeping 100 m². */
function yieldsWith(spread: Spread): WorkflowYields {
  const one: GivenYield = {
    site: "main",
    arm: "pigment",
    leaf: {
      kind: "leaf",
      id: "yield.pigment @ site main",
      factor: "yield.pigment",
      unit: "1",
      words: "share of first quality",
      spread,
      provenance: "plant",
      source: "book",
    },
    printed: 100,
  };
  const none = new Float64Array(0);
  return {
    given: [one],
    accepted: { pigment: none, dye: none },
    central: { pigment: 90, dye: 100 },
    fixed: { pigment: 0, dye: 100 },
    printed: 100,
    areaOf: () => NaN,
  };
}

const worked = (spread: Spread): Swings | undefined =>
  swingsWithYields(new Map([["water", SWINGS]]), yieldsWith(spread)).get("water");

describe("swingsWithYields", () => {
  it("works the savings over with the ratio of areas", () => {
    const { base, factors } = worked({ shape: "fixed", value: 0.8 }) ?? {};
    // 1 − 0.5 × 100/80, and the ends alike; a yield without doubt has no swing.
    expect(base).toBeCloseTo(0.375, 12);
    expect(factors).toHaveLength(1);
    expect(factors?.[0]?.low.saving).toBeCloseTo(1 - 0.6 / 0.8, 12);
    expect(factors?.[0]?.high.saving).toBeCloseTo(1 - 0.3 / 0.8, 12);
    expect(factors?.[0]?.width).toBeCloseTo(0.3 / 0.8, 12);
  });

  it("gives each yield a swing of its own, widest first", () => {
    // The middle 95 % of a uniform from 0.2 to 1 runs from 0.22 to 0.98.
    const { factors } = worked({ shape: "uniform", low: 0.2, value: 0.6, high: 1 }) ?? {};
    expect(factors?.map(({ factor }) => factor)).toEqual([
      "yield.pigment @ site main",
      "wash-range.fresh-water",
    ]);
    const [own] = factors ?? [];
    expect(own?.own).toBe(true);
    expect(own?.low.value).toBeCloseTo(0.22, 9);
    expect(own?.low.saving).toBeCloseTo(1 - 0.5 / 0.22, 9);
    expect(own?.high.saving).toBeCloseTo(1 - 0.5 / 0.98, 9);
    expect(own?.width).toBeCloseTo(0.5 / 0.22 - 0.5 / 0.98, 9);
  });

  it("has its base near the median saving of the report", () => {
    const { swings, comparisons } = inputWithYields({ pigment: share(0.7, 0.65, 0.75) });
    const saving = comparisons.get("energy")?.saving?.median ?? NaN;
    expect(Math.abs((swings.get("energy")?.base ?? NaN) - saving)).toBeLessThan(0.06);
  });
});
