import fc from "fast-check";
import * as financial from "financial";
import { irr as nodeIrr } from "node-irr";
import { describe, expect, it } from "vitest";
import xirr from "xirr";
import { DOUBLES } from "../../src/invest/arithmetic.js";
import { datedPresentValue, presentValue, yearsOf } from "../../src/invest/present-value.js";
import { ratesOfReturn } from "../../src/invest/rates-of-return.js";

const byYear = (flows: readonly number[]) => flows.map((amount, at) => ({ at, amount }));

const plain = fc
  .tuple(
    fc.integer({ min: 100, max: 9999 }),
    fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 3, maxLength: 12 }),
  )
  .filter(([outlay, back]) => back.reduce((sum, each) => sum + each, 0) > 1.05 * outlay)
  .map(([outlay, back]) => [-outlay, ...back]);

describe("rates of return", () => {
  it("agree with two packages on flows with one change of sign", () => {
    fc.assert(
      fc.property(plain, (flows) => {
        const rates = ratesOfReturn(byYear(flows));
        expect(rates).toHaveLength(1);
        const [rate = NaN] = rates;
        expect(rate).toBeCloseTo(financial.irr(flows), 5);
        expect(rate).toBeCloseTo(nodeIrr(flows), 5);
        expect(Math.abs(presentValue(DOUBLES, rate, flows))).toBeLessThan(1e-7);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  it("agree with a package on dated flows, leap years included, in any order of days", () => {
    const flows = [
      { day: "2023-11-30", amount: -10000 },
      { day: "2024-02-29", amount: 3000 },
      { day: "2025-01-01", amount: 4000 },
      { day: "2026-06-30", amount: 6000 },
    ];
    const theirs = xirr(flows.map(({ day, amount }) => ({ amount, when: new Date(day) })));
    const [first, ...rest] = flows;
    for (const order of [flows, [first!, ...rest.reverse()]]) {
      const [rate = NaN] = ratesOfReturn(yearsOf(order));
      expect(rate).toBeCloseTo(theirs, 6);
      expect(Math.abs(datedPresentValue(rate, order))).toBeLessThan(1e-6);
    }
  });

  it("finds every rate that flows were built from", () => {
    // (x − 1/1.05)(x − 1/1.2)(x − 1/1.8) by hand: three rates.
    const roots = [0.05, 0.2, 0.8];
    let factors = [1];
    for (const rate of roots) {
      const x = 1 / (1 + rate);
      factors = [...factors, 0].map((_, i) => (factors[i - 1] ?? 0) - x * (factors[i] ?? 0));
    }
    const found = ratesOfReturn(byYear(factors.map((factor) => 1000 * factor)));
    expect(found).toHaveLength(3);
    found.forEach((rate, i) => {
      expect(rate).toBeCloseTo(roots[i] ?? NaN, 8);
    });
  });

  it("finds a rate at which the worth touches zero", () => {
    // (1.1 x − 1)² = 1.21 x² − 2.2 x + 1.
    const found = ratesOfReturn(byYear([1000, -2200, 1210]));
    expect(found).toHaveLength(1);
    expect(found[0]).toBeCloseTo(0.1, 6);
  });

  it("finds none where money only comes or only goes", () => {
    expect(ratesOfReturn(byYear([100, 20, 5]))).toEqual([]);
    expect(ratesOfReturn(byYear([-100, -20, -5]))).toEqual([]);
    expect(ratesOfReturn([])).toEqual([]);
  });

  it("finds none where the worth never comes back to zero", () => {
    expect(ratesOfReturn(byYear([1000, -1500, 1540]))).toEqual([]);
  });

  it("holds for the middle of the year", () => {
    const flows = [-1000, 400, 400, 400];
    const [rate = NaN] = ratesOfReturn(
      flows.map((amount, year) => ({ at: year === 0 ? 0 : year - 0.5, amount })),
    );
    expect(presentValue(DOUBLES, rate, flows, "mid-year")).toBeCloseTo(0, 8);
    expect(rate).toBeGreaterThan(ratesOfReturn(byYear(flows))[0] ?? NaN);
  });
});
