import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gainOf, GROSS, reconcile } from "../../src/numbers/reconcile.js";
import { chiSquareQuantile } from "../../src/numbers/tails.js";

const row = (...numbers: readonly number[]): Float64Array => Float64Array.from(numbers);
const diagonal = (...numbers: readonly number[]): readonly Float64Array[] =>
  numbers.map((value, i) => row(...numbers.map((_, j) => (i === j ? value : 0))));

describe("reconcile", () => {
  // S. Narasimhan and C. Jordache, Data Reconciliation and Gross Error Detection (Gulf 2000), table 1-1, from
  // memory: a heat exchanger with a bypass, six flows of equal variance.
  it("[F12] closes the balances of a heat exchanger with bypass", () => {
    const measured = row(101.91, 64.45, 34.65, 64.2, 36.44, 98.88);
    const balances = [
      row(1, -1, -1, 0, 0, 0),
      row(0, 1, 0, -1, 0, 0),
      row(0, 0, 1, 0, -1, 0),
      row(0, 0, 0, 1, 1, -1),
    ];
    const { values, sum, chance } = reconcile(measured, diagonal(1, 1, 1, 1, 1, 1), balances);
    const printed = [100.22, 64.5, 35.72, 64.5, 35.72, 100.22];
    values.forEach((value, i) => {
      expect(Math.abs(value - printed[i]!)).toBeLessThan(0.005);
    });
    expect(sum).toBeCloseTo(6.4075, 3);
    expect(sum).toBeLessThan(chiSquareQuantile(0.05, 4));
    expect(chance).toBeGreaterThan(0.05);
  });

  // By hand: 100 ± 2 against 62 ± 1 and 35 ± 1; the gap of 3 is shared as 4 : 1 : 1.
  it("[F12] shares the gap of a main meter and two below it by their variances", () => {
    const { values, covariance, scores, sum } = reconcile(row(100, 62, 35), diagonal(4, 1, 1), [
      row(1, -1, -1),
    ]);
    [98, 62.5, 35.5].forEach((value, i) => {
      expect(values[i]).toBeCloseTo(value, 9);
    });
    [1.154701, 0.912871, 0.912871].forEach((sd, i) => {
      expect(Math.sqrt(covariance[i]![i]!)).toBeCloseTo(sd, 6);
    });
    expect(sum).toBeCloseTo(1.5, 12);
    for (const score of scores) expect(Math.abs(score)).toBeCloseTo(1.224745, 6);
  });

  it("names a reading that cannot be", () => {
    const { scores, chance } = reconcile(row(130, 62, 35), diagonal(4, 1, 1), [row(1, -1, -1)]);
    expect(Math.abs(scores[0]!)).toBeGreaterThan(GROSS);
    expect(chance).toBeLessThan(1e-6);
  });

  it("obeys its balances, and leaves alone what has no doubt", () => {
    const number = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(number, number, number, number), ([a, b, c, d]) => {
        const { values, scores } = reconcile(row(a, b, c, d), diagonal(4, 1, 0, 9), [
          row(1, -1, -1, 0),
          row(0, 1, 1, -1),
        ]);
        expect(values[0]! - values[1]! - values[2]!).toBeCloseTo(0, 9);
        expect(values[1]! + values[2]! - values[3]!).toBeCloseTo(0, 9);
        expect(values[2]).toBeCloseTo(c, 12);
        expect(scores[2]).toBe(0);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("refuses balances that say the same, and sizes that differ", () => {
    expect(() => gainOf(diagonal(1, 1), [row(1, -1), row(2, -2)])).toThrow("balance");
    expect(() => gainOf(diagonal(1, 1), [row(1, -1, 0)])).toThrow("numbers of a balance");
  });
});
