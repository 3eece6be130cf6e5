import jstat from "jstat";
import { describe, expect, it } from "vitest";
import {
  chiSquareQuantile,
  chiSquareTail,
  fQuantile,
  fTail,
  tQuantile,
  tTail,
} from "../../src/numbers/tails.js";

const { jStat } = jstat;

describe("F", () => {
  // Measurement and verification protocol of the US Department of Energy for industry, as restated on a public
  // page of Lawrence Berkeley National Laboratory: F that 12 monthly points with k variables must pass, α = 0.10.
  it.each([
    [1, 3.285],
    [2, 3.0065],
    [3, 2.9238],
    [4, 2.9605],
    [5, 3.1075],
  ])("[F8] upper tenth with %i variables of 12 points", (k, printed) => {
    expect(Math.abs(fQuantile(0.1, k, 11 - k) - printed)).toBeLessThan(5e-5);
  });

  it("agrees with another library", () => {
    for (const [f, a, b] of [
      [0.5, 3, 20],
      [1.7, 5, 7],
      [5, 12, 400],
      [330.3, 6, 9],
    ] as const)
      expect(fTail(f, a, b)).toBeCloseTo(1 - jStat.centralF.cdf(f, a, b), 8);
  });
});

describe("tails in closed form", () => {
  // By hand: F with 2 and b degrees of freedom is passed with (1 + 2 f / b)^(−b/2), t with 2 with 1 − t/√(2 + t²).
  it.each([0.01, 0.4, 1, 3, 25])("at %f", (x) => {
    for (const b of [1, 4, 9, 300]) {
      expect(fTail(x, 2, b) / (1 + (2 * x) / b) ** (-b / 2)).toBeCloseTo(1, 10);
      expect(tTail(x, 2)).toBeCloseTo(1 - x / Math.sqrt(2 + x * x), 11);
    }
  });
});

describe("t", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2: 2.228 for 10 degrees of freedom, and the normal
  // distribution's 1.960 in the last row.
  it("[F9] 97.5 % point with 10 degrees of freedom, and with very many", () => {
    expect(tQuantile(0.05, 10)).toBeCloseTo(2.228138842, 7);
    expect(tQuantile(0.05, 10).toFixed(3)).toBe("2.228");
    expect(tQuantile(0.05, 1e9).toFixed(3)).toBe("1.960");
  });

  it("agrees with another library", () => {
    for (const [t, freedom] of [
      [0.3, 2],
      [2.5, 9],
      [-4, 30],
    ] as const)
      expect(tTail(t, freedom)).toBeCloseTo(2 * jStat.studentt.cdf(-Math.abs(t), freedom), 9);
  });
});

describe("χ²", () => {
  it("is passed by one in twenty at the points of the tables", () => {
    // NIST/SEMATECH e-Handbook, 1.3.6.7.4: 3.841 and 9.488 for 1 and 4 degrees of freedom.
    expect(chiSquareQuantile(0.05, 1).toFixed(3)).toBe("3.841");
    expect(chiSquareQuantile(0.05, 4).toFixed(3)).toBe("9.488");
  });

  it("agrees with another library in both branches", () => {
    for (const [x, freedom] of [
      [0.2, 3],
      [6, 4],
      [80, 60],
      [40, 60],
    ] as const)
      expect(chiSquareTail(x, freedom)).toBeCloseTo(1 - jStat.chisquare.cdf(x, freedom), 10);
    expect(chiSquareTail(0, 3)).toBe(1);
  });

  it("refuses a chance that is none", () => {
    expect(() => chiSquareQuantile(0, 3)).toThrow("chance");
    expect(() => chiSquareQuantile(NaN, 3)).toThrow("chance");
  });
});
