import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { kendallTau, pairsKept } from "../../src/suppliers/kendall.js";

describe("Kendall's tau-b", () => {
  // Worked by hand: of ten pairs eight agree and two do not, 6/10. With a tie in the second list eight agree and
  // one does not, 7/√(10 · 9).
  it("[P18] two lists of five", () => {
    expect(kendallTau([1, 2, 3, 4, 5], [1, 3, 2, 5, 4])).toBeCloseTo(0.6, 12);
    expect(kendallTau([1, 2, 3, 4, 5], [1, 3, 3, 5, 4])).toBeCloseTo(7 / Math.sqrt(90), 12);
  });

  it("is 1 for one order, −1 for its reverse, and has no value where all are tied", () => {
    expect(kendallTau([3, 1, 2], [30, 10, 20])).toBe(1);
    expect(kendallTau([3, 1, 2], [-30, -10, -20])).toBe(-1);
    expect(kendallTau([1, 1], [1, 2])).toBeNaN();
  });

  it("does not hang on which list is named first", () => {
    const list = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(list, list, (a, b) => {
        expect(
          Object.is(kendallTau(a, b), kendallTau(b, a)) ||
            Math.abs(kendallTau(a, b) - kendallTau(b, a)) < 1e-12,
        ).toBe(true);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("counts pairs that keep their order", () => {
    expect(pairsKept([1, 2, 3, 4, 5], [1, 2, 3, 5, 4])).toEqual({ pairs: 10, kept: 9 });
    expect(pairsKept([1, 2, 3], [3, 2, 1])).toEqual({ pairs: 3, kept: 0 });
    expect(pairsKept([1, 1, 2], [1, 2, 3])).toEqual({ pairs: 2, kept: 2 });
  });
});
