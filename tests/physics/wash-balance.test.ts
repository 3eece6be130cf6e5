import { describe, expect, it } from "vitest";
import {
  residualCounterCurrent,
  residualFreshBaths,
  residualIncomplete,
} from "../../src/physics/wash-balance.js";

// All boxes at once: unknowns f₁ … fₙ, b₁ … bₙ, by elimination with pivoting.
function solvedAtOnce(F: number, w: number, n: number, k: number, counter: boolean): number {
  const feed = counter ? F : F / n;
  const rows = Array.from({ length: 2 * n }, () => new Array<number>(2 * n + 1).fill(0));
  for (let i = 0; i < n; i++) {
    const exchange = rows[i]!;
    exchange[i] = 1;
    exchange[n + i] = -k;
    const balance = rows[n + i]!;
    balance[i] = w;
    balance[n + i] = feed;
    if (counter && i < n - 1) balance[n + i + 1] = -feed;
    if (i === 0) {
      exchange[2 * n] = 1 - k;
      balance[2 * n] = w;
    } else {
      exchange[i - 1] = -(1 - k);
      balance[i - 1] = -w;
    }
  }
  for (let column = 0; column < 2 * n; column++) {
    const rest = rows.slice(column);
    rest.sort((a, b) => Math.abs(b[column]!) - Math.abs(a[column]!));
    rows.splice(column, rest.length, ...rest);
    const pivot = rows[column]!;
    rows.forEach((row, i) => {
      if (i === column) return;
      const factor = row[column]! / pivot[column]!;
      row.forEach((value, j) => (row[j] = value - factor * pivot[j]!));
    });
  }
  return rows[n - 1]![2 * n]! / rows[n - 1]![n - 1]!;
}

describe("wash balance", () => {
  // Worked by hand from the balances: E, n, counter-current, equal fresh baths, one bath of all the water.
  it.each([
    [5, 1, 0.166667, 0.166667, 0.166667],
    [5, 2, 0.032258, 0.081633, 0.166667],
    [5, 4, 0.00128041, 0.039018, 0.166667],
    [1, 4, 0.2, 0.4096, 0.5],
  ])("[W1] E %d, %d boxes", (E, n, counter, fresh, single) => {
    expect(residualCounterCurrent(E, n)).toBeCloseTo(counter, 6);
    expect(residualFreshBaths(E, n)).toBeCloseTo(fresh, 6);
    expect(residualFreshBaths(E, 1)).toBeCloseTo(single, 6);
  });

  // Fresh water per carried liquor that leaves 1 % and 0.1 %, n = 1 … 6.
  it.each([
    [0.01, [99.0, 9.462, 4.249, 2.841, 2.234, 1.907], [99.0, 18.0, 10.925, 8.649, 7.559, 6.927]],
    [0.001, [999, 31.11, 9.642, 5.34, 3.741, 2.952], [999, 61.25, 27.0, 18.49, 14.91, 12.97]],
  ])("[W1] the water for a residual of %d", (residual, counter, fresh) => {
    counter.forEach((E, i) => {
      expect(Math.abs(residualCounterCurrent(E, i + 1) / residual - 1)).toBeLessThan(2e-3);
    });
    fresh.forEach((E, i) => {
      expect(Math.abs(residualFreshBaths(E, i + 1) / residual - 1)).toBeLessThan(2e-3);
    });
  });

  it("passes E = 1 without a seam", () => {
    expect(residualCounterCurrent(1, 4)).toBeCloseTo(0.2, 15);
    expect(residualCounterCurrent(1 + 1e-9, 4)).toBeCloseTo(0.2, 8);
    expect(residualCounterCurrent(0, 3)).toBe(1);
    expect(residualFreshBaths(0, 3)).toBe(1);
  });

  it("nears the exponential with ever more fresh baths", () => {
    expect(residualFreshBaths(2, 100)).toBeCloseTo(Math.exp(-2), 2);
  });

  // Worked by hand: F 5, w 1, four boxes.
  it.each([
    [1, 0.00128041],
    [0.8, 0.0134822],
    [0.6, 0.059361],
  ])("[W1] exchange of %d in each box", (k, residual) => {
    expect(residualIncomplete(5, 1, 4, k, true)).toBeCloseTo(residual, 7);
  });

  it("agrees with the whole set of equations solved at once", () => {
    for (const [F, w, n, k] of [
      [5, 1, 4, 0.6],
      [2.5, 0.8, 3, 0.35],
      [20, 1.2, 6, 0.9],
      [0.5, 1, 2, 1],
    ] as const) {
      for (const counter of [true, false]) {
        const residual = residualIncomplete(F, w, n, k, counter);
        expect(Math.abs(residual / solvedAtOnce(F, w, n, k, counter) - 1)).toBeLessThan(1e-10);
      }
    }
  });

  it("with full exchange is the closed form", () => {
    for (const n of [1, 3, 7]) {
      expect(residualIncomplete(6, 1.5, n, 1, true)).toBeCloseTo(residualCounterCurrent(4, n), 12);
      expect(residualIncomplete(6, 1.5, n, 1, false)).toBeCloseTo(residualFreshBaths(4, n), 12);
    }
  });

  it("leaves more with less exchange, and nothing gained without water", () => {
    expect(residualIncomplete(5, 1, 4, 0.5, true)).toBeGreaterThan(
      residualIncomplete(5, 1, 4, 0.6, true),
    );
    expect(residualIncomplete(0, 1, 4, 0.5, true)).toBeCloseTo(1, 12);
  });

  it("refuses what cannot be", () => {
    expect(() => residualCounterCurrent(5, 0)).toThrow("number of boxes = 0");
    expect(() => residualCounterCurrent(5, 1.5)).toThrow("number of boxes = 1.5");
    expect(() => residualFreshBaths(-1, 2)).toThrow("fresh water over carried liquor = -1");
    expect(() => residualIncomplete(5, 0, 2, 1, true)).toThrow("carried liquor = 0");
    expect(() => residualIncomplete(5, 1, 2, 0, true)).toThrow("exchange in a box = 0");
    expect(() => residualIncomplete(5, 1, 2, 1.1, true)).toThrow("exchange in a box = 1.1");
    expect(() => residualIncomplete(5, 1, 2, Number.NaN, true)).toThrow("exchange in a box = NaN");
  });
});
