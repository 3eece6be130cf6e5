import jstat from "jstat";
import { cumulativeStdNormalProbability, probit } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { normalCdf, normalDensity, normalQuantile } from "../../src/numbers/normal.js";

describe("normalQuantile", () => {
  // Worked with 40 digits (mpmath 1.3: findroot on log(ncdf(x)) − log(p)).
  it.each([
    [1e-300, -37.0470962993612],
    [1e-9, -5.9978070150076865],
    [0.025, -1.9599639845400543],
    [0.3, -0.5244005127080408],
    [0.5, 0],
    [0.9, 1.2815515655446006],
  ])("of %d", (p, x) => {
    expect(Math.abs(normalQuantile(p) - x)).toBeLessThanOrEqual(1e-15 * Math.max(1, Math.abs(x)));
  });

  // 97.5 % point as tabulated everywhere, e.g. ISO 3534-1 and NIST/SEMATECH e-Handbook 1.3.6.7.1.
  it("[F9] has the tabulated 97.5 % point", () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963985, 9);
  });

  // simple-statistics' probit is a table-free approximation good to 1e-2, jstat's erfcinv to 1e-9.
  it("agrees with two other libraries within their own accuracy", () => {
    for (let i = 1; i < 200; i++) {
      const p = i / 200;
      expect(Math.abs(normalQuantile(p) - probit(p))).toBeLessThan(1e-2);
      expect(Math.abs(normalQuantile(p) - jstat.jStat.normal.inv(p, 0, 1))).toBeLessThan(1e-8);
    }
  });

  it("undoes the distribution function over its whole range, across all seams", () => {
    for (let x = -36; x <= 0; x += 0.037) {
      expect(Math.abs(normalQuantile(normalCdf(x)) - x)).toBeLessThan(1e-13 * (1 + Math.abs(x)));
    }
  });

  it("rises over the seams of its three approximations", () => {
    for (const seam of [0.075, Math.exp(-25)]) {
      const near = [-1e-9, -1e-12, 0, 1e-12, 1e-9].map((d) => normalQuantile(seam * (1 + d)));
      expect([...near].sort((a, b) => a - b)).toEqual(near);
    }
  });

  it.each([0, 1, -0.1, 1.1, Number.NaN])("refuses %d", (p) => {
    expect(() => normalQuantile(p)).toThrow("expected a probability above 0 and below 1");
  });
});

describe("normalCdf", () => {
  // Worked with 40 digits (mpmath 1.3: ncdf).
  it.each([
    [-30, 4.906713927148187e-198],
    [-6, 9.86587645037698e-10],
    [-1.96, 0.024997895148220435],
    [-0.5, 0.3085375387259869],
    [0, 0.5],
    [0.3, 0.6179114221889527],
    [1, 0.8413447460685429],
    [3, 0.9986501019683699],
  ])("of %d", (x, p) => {
    expect(Math.abs(normalCdf(x) / p - 1)).toBeLessThan(1e-14);
  });

  // simple-statistics works from a rounded table of 1e-4, jstat from an erf good to 1e-9 or so.
  it("agrees with two other libraries within their own accuracy", () => {
    for (let x = -3; x <= 3; x += 0.17) {
      expect(Math.abs(normalCdf(x) - cumulativeStdNormalProbability(x))).toBeLessThan(2e-3);
      expect(Math.abs(normalCdf(x) - jstat.jStat.normal.cdf(x, 0, 1))).toBeLessThan(1e-8);
    }
  });

  it("is symmetric and reaches both ends", () => {
    for (let x = 0; x < 8; x += 0.31) expect(normalCdf(x) + normalCdf(-x)).toBeCloseTo(1, 15);
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
    expect(normalCdf(-39)).toBe(0);
    expect(() => normalCdf(Number.NaN)).toThrow("normal distribution = NaN");
  });
});

describe("normalDensity", () => {
  it("is the slope of the distribution function", () => {
    for (let x = -4; x <= 4; x += 0.23) {
      const slope = (normalCdf(x + 1e-5) - normalCdf(x - 1e-5)) / 2e-5;
      expect(Math.abs(normalDensity(x) - slope)).toBeLessThan(1e-9);
    }
  });
});
