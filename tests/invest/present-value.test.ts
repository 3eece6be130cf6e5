import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DECIMALS, DOUBLES } from "../../src/invest/arithmetic.js";
import {
  equivalentAnnual,
  modifiedReturn,
  nominalRate,
  paybackOf,
  presentValue,
  realRate,
  uniformWorth,
} from "../../src/invest/present-value.js";

const money = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const flows = fc.array(money, { minLength: 2, maxLength: 20 });
const rate = fc.double({ min: -0.2, max: 0.6, noNaN: true });

describe("present value", () => {
  it("of two flows is the sum of both, and scales with the currency", () => {
    fc.assert(
      fc.property(flows, rate, fc.double({ min: 0.01, max: 200, noNaN: true }), (one, r, k) => {
        const two = one.map((flow, i) => flow * (i % 3) - 7);
        const both = one.map((flow, i) => flow + (two[i] ?? 0));
        const size = one.reduce((sum, flow, t) => sum + Math.abs(flow) / (1 + r) ** t, 1e3);
        const of = (list: readonly number[]): number => presentValue(DOUBLES, r, list);
        expect(Math.abs(of(both) - of(one) - of(two)) / size).toBeLessThan(1e-9);
        expect(Math.abs(of(one.map((flow) => k * flow)) - k * of(one)) / size).toBeLessThan(1e-9);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("is the same in real and in nominal money", () => {
    fc.assert(
      fc.property(flows, rate, fc.double({ min: -0.05, max: 0.3, noNaN: true }), (real, r, pi) => {
        const nominal = real.map((flow, t) => flow * (1 + pi) ** t);
        const one = presentValue(DOUBLES, r, real);
        const other = presentValue(DOUBLES, nominalRate(r, pi), nominal);
        const size = real.reduce((sum, flow, t) => sum + Math.abs(flow) / (1 + r) ** t, 1);
        expect(Math.abs(one - other) / size).toBeLessThan(1e-9);
        expect(realRate(nominalRate(r, pi), pi)).toBeCloseTo(r, 12);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("in decimals and in doubles agrees to half a cent", () => {
    fc.assert(
      fc.property(flows, rate, (list, r) => {
        const exact = presentValue(DECIMALS, DECIMALS.of(r), list.map(DECIMALS.of)).toNumber();
        expect(Math.abs(exact - presentValue(DOUBLES, r, list))).toBeLessThan(0.005);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  it("at a rate of −1 or below is refused", () => {
    expect(() => presentValue(DOUBLES, -1, [1, 2])).toThrow("discount rate = -1");
    expect(() => presentValue(DOUBLES, NaN, [1, 2])).toThrow("discount rate");
  });
});

describe("uniform worth", () => {
  it("is the number of years where growth and rate are alike", () => {
    expect(uniformWorth(DOUBLES, 0.08, 17, 0.08)).toBeCloseTo(17, 12);
    expect(uniformWorth(DECIMALS, DECIMALS.of(0.08), 17, DECIMALS.of(0.08)).toNumber()).toBe(17);
  });

  it("times the equivalent yearly money is the worth", () => {
    const each = equivalentAnnual(DOUBLES, 0.06, 1234, 9, "mid-year");
    expect(each * uniformWorth(DOUBLES, 0.06, 9, 0, "mid-year")).toBeCloseTo(1234, 9);
  });
});

describe("payback", () => {
  it("counts from the last time that the sum is below zero", () => {
    // 100 out, back in year 2, out again for an overhaul in year 3, back in year 5: by hand 4 + 20/50.
    expect(paybackOf([-100, 60, 60, -90, 50, 50])).toBeCloseTo(4.4, 12);
  });

  it("is never where the money does not come back, and none where nothing goes out", () => {
    expect(paybackOf([-100, 20, 20])).toBeUndefined();
    expect(paybackOf([0, 20, 20])).toBe(0);
  });
});

describe("modified rate of return", () => {
  it("has no value without an outlay or an income", () => {
    expect(modifiedReturn([5, 6], 0.1, 0.1)).toBeUndefined();
    expect(modifiedReturn([-5, -6], 0.1, 0.1)).toBeUndefined();
  });
});
