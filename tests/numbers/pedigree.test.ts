import { describe, expect, it } from "vitest";
import { gsdFromScores, type QualityScores } from "../../src/numbers/pedigree.js";

const BEST: QualityScores = { reliability: 1, completeness: 1, time: 1, place: 1, technology: 1 };

describe("gsdFromScores", () => {
  // Formula of R. Frischknecht et al., Int. J. LCA 10 (2005) 3-9, worked by hand for the factors
  // 1.10, 1.05, 1.03, 1.02, 1.20 and a basic factor of 1.05.
  it("[E9] squares to the worked value", () => {
    const scores = { reliability: 3, completeness: 3, time: 2, place: 3, technology: 3 };
    expect(gsdFromScores(scores) ** 2).toBeCloseTo(1.245941, 6);
  });

  it("[E9] leaves the basic factor when every score is 1", () => {
    expect(gsdFromScores(BEST) ** 2).toBeCloseTo(1.05, 12);
    expect(gsdFromScores(BEST, 2) ** 2).toBeCloseTo(2, 12);
    expect(gsdFromScores(BEST, 1)).toBe(1);
  });

  // Variances (ln U / 2)² as printed in the data-quality guideline of 2013 (Weidema et al.), rounded there.
  it.each([
    ["reliability", [0, 0.0006, 0.002, 0.008, 0.04]],
    ["completeness", [0, 0.0001, 0.0006, 0.002, 0.008]],
    ["time", [0, 0.0002, 0.002, 0.008, 0.04]],
    ["place", [0, 2.5e-5, 0.0001, 0.0006, 0.002]],
    ["technology", [0, 0.0006, 0.008, 0.04, 0.12]],
  ] as const)("[E10] %s adds the printed variances", (indicator, variances) => {
    variances.forEach((variance, i) => {
      const added = Math.log(gsdFromScores({ ...BEST, [indicator]: i + 1 }, 1)) ** 2;
      const digit = variance === 0 ? 1e-15 : 10 ** Math.floor(Math.log10(variance));
      expect(Math.abs(added - variance)).toBeLessThanOrEqual(0.5 * digit);
    });
  });

  it("refuses scores and basic factors out of range", () => {
    expect(() => gsdFromScores({ ...BEST, time: 6 })).toThrow("quality score time = 6");
    expect(() => gsdFromScores({ ...BEST, place: 0 })).toThrow("quality score place = 0");
    expect(() => gsdFromScores({ ...BEST, place: 1.5 })).toThrow("expected a whole number from 1");
    expect(() => gsdFromScores(BEST, 0.9)).toThrow("basic factor of doubt = 0.9");
  });
});
