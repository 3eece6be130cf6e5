import fc from "fast-check";
import { quantile as quantileOracle } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { fractionBelow, mean, quantile, quantiles } from "../../src/numbers/quantiles.js";

const TEN = Float64Array.from([7, 3, 9, 1, 10, 5, 2, 8, 6, 4]);
const finite = fc.double({ min: -1e9, max: 1e9, noNaN: true, noDefaultInfinity: true });
const sample = fc.float64Array({
  minLength: 1,
  maxLength: 300,
  noNaN: true,
  noDefaultInfinity: true,
});

// Type 7 in its textbook form, on sorted values.
function textbook(values: Float64Array, p: number): number {
  const sorted = values.slice().sort();
  const h = (sorted.length - 1) * p;
  const low = sorted[Math.floor(h)]!;
  const high = sorted[Math.ceil(h)]!;
  return h === Math.floor(h) ? low : low + (h - Math.floor(h)) * (high - low);
}

describe("quantile", () => {
  // Type 7 of 1 … 10 at 0.1 is 1.9: Hyndman and Fan 1996, definition 7; other common types give 1 to 1.5.
  it("[F7] is of type 7", () => {
    expect(quantile(TEN, 0.1)).toBeCloseTo(1.9, 12);
    expect(quantile(TEN, 0.25)).toBeCloseTo(3.25, 12);
    expect(quantile(TEN, 0.5)).toBeCloseTo(5.5, 12);
    expect([quantile(TEN, 0), quantile(TEN, 1)]).toEqual([1, 10]);
  });

  it("agrees with another library at whole ranks, where all definitions agree", () => {
    const odd = Float64Array.from({ length: 101 }, (_, i) => Math.sin(i) * 100);
    expect(quantile(odd, 0.5)).toBe(quantileOracle([...odd], 0.5));
  });

  it("agrees with sorting, for any values and probabilities, ties and infinities included", () => {
    fc.assert(
      fc.property(sample, fc.double({ min: 0, max: 1, noNaN: true }), (values, p) => {
        expect(quantile(values, p)).toBe(textbook(values, p));
      }),
      { seed: 1, numRuns: 300 },
    );
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1 }), (few) => {
        const values = Float64Array.from(few);
        expect(quantiles(values, [0.1, 0.5, 0.9])).toEqual(
          [0.1, 0.5, 0.9].map((p) => textbook(values, p)),
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("answers in the order asked, and leaves the values alone", () => {
    const before = TEN.slice();
    expect(quantiles(TEN, [0.9, 0.1, 0.5, 0.1])).toEqual([9.1, 1.9, 5.5, 1.9]);
    expect(TEN).toEqual(before);
  });

  it("refuses no values, values that are no numbers, and probabilities outside 0 to 1", () => {
    expect(() => quantile(new Float64Array(0), 0.5)).toThrow("number of values = 0");
    expect(() => quantile(Float64Array.of(1, Number.NaN), 0.5)).toThrow("draws = NaN");
    expect(() => quantile(TEN, 1.01)).toThrow("quantile = 1.01");
    expect(() => quantile(TEN, Number.NaN)).toThrow("quantile = NaN");
  });
});

describe("mean", () => {
  // NIST Statistical Reference Datasets, univariate: NumAcc1 to NumAcc4, certified means.
  it.each([
    ["NumAcc1", [10_000_001, 10_000_003, 10_000_002], 10_000_002],
    ["NumAcc2", [1.2, ...new Array<number[]>(500).fill([1.1, 1.3]).flat()], 1.2],
    [
      "NumAcc3",
      [1e6 + 0.2, ...new Array<number[]>(500).fill([1e6 + 0.1, 1e6 + 0.3]).flat()],
      1e6 + 0.2,
    ],
    [
      "NumAcc4",
      [1e7 + 0.2, ...new Array<number[]>(500).fill([1e7 + 0.1, 1e7 + 0.3]).flat()],
      1e7 + 0.2,
    ],
  ])("[F5] of %s", (_, values, certified) => {
    expect(Math.abs(mean(Float64Array.from(values)) / certified - 1)).toBeLessThan(1e-14);
  });

  it("does not lose small values beside large ones", () => {
    expect(mean(Float64Array.of(1e16, 1, -1e16, 1))).toBe(0.5);
  });

  it("refuses an empty set", () => {
    expect(() => mean(new Float64Array(0))).toThrow("number of values = 0");
  });
});

describe("fractionBelow", () => {
  it("counts what is below, not what is equal", () => {
    expect(fractionBelow(TEN, 4)).toBe(0.3);
    expect(fractionBelow(TEN, 0)).toBe(0);
    expect(fractionBelow(TEN, 11)).toBe(1);
  });

  it("never falls as the threshold rises", () => {
    fc.assert(
      fc.property(sample, finite, finite, (values, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(fractionBelow(values, low)).toBeLessThanOrEqual(fractionBelow(values, high));
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
