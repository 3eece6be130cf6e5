import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  digitsFor,
  formatDate,
  formatInterval,
  formatNumber,
  formatPercent,
  formatShareOfDraws,
} from "../../src/report/format.js";

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true });

const SEEDED = { seed: 1, numRuns: 200 };

describe("digitsFor", () => {
  // Worked by hand: half widths 3.59, 6.45, 0.5, 1.3, 0.025 and 400.
  it.each([
    [90, 85.79, 92.97, 0],
    [-41.3, -48, -35.1, 0],
    [5.1, 4.6, 5.6, 1],
    [61.53, 60.2, 62.8, 1],
    [0.3091, 0.284, 0.334, 3],
    [7412, 7000, 7800, -2],
  ])("prints %d within %d to %d with %d decimals", (value, low, high, digits) => {
    expect(digitsFor(value, low, high)).toBe(digits);
  });

  it.each([
    [61.53, 1],
    [1284, -1],
    [0.012_34, 4],
    [99.96, 0],
    [0, 0],
  ])("prints %d with three significant digits where there is no interval", (value, digits) => {
    expect(digitsFor(value)).toBe(digits);
  });

  it("never prints more than three significant digits of the value", () => {
    fc.assert(
      fc.property(between(1e-6, 1e9), between(0, 1e3), (x, w) => {
        const printed = formatNumber(x, digitsFor(x, x - w * x, x + w * x));
        const bare = printed.replace(/[^\d]/g, "").replace(/^0+/, "");
        // Zeros before the decimal point only hold the place.
        expect(bare.replace(printed.includes(".") ? "" : /0+$/, "").length).toBeLessThan(4);
      }),
      SEEDED,
    );
  });

  it.each([
    // An end that would print as twice itself, or as nothing, takes one place more: 0.5 as 1, 0.12 as 0.
    [2.6, 0.52, 8.8, 1],
    [0.066, 0.0135, 0.25, 3],
    // An end that keeps its size takes none, and one next to nothing may print as nothing.
    [6, 2.9, 9.1, 0],
    [3, 0.1, 9, 0],
  ])("prints %d within %d to %d so that no end is distorted", (value, low, high, digits) => {
    expect(digitsFor(value, low, high)).toBe(digits);
  });

  it("never prints a place below a hundredth of the half width", () => {
    fc.assert(
      fc.property(between(-1e6, 1e6), between(1e-6, 1e6), (x, half) => {
        const place = 10 ** -digitsFor(x, x - half, x + half);
        expect(place).toBeGreaterThan(half / 310);
      }),
      SEEDED,
    );
  });

  it("refuses what is no number", () => {
    expect(() => digitsFor(Number.NaN)).toThrow("report.value = NaN");
    expect(() => digitsFor(1, 0, Infinity)).toThrow("report.interval = Infinity");
  });
});

describe("formatNumber", () => {
  it.each([
    [-12_345.64, 1, "\u221212\u202f345.6"],
    [7412, -2, "7\u202f400"],
    [999, 0, "999"],
    [-0.04, 1, "0.0"],
    [0, 2, "0.00"],
  ])("prints %d with %d decimals", (value, decimals, printed) => {
    expect(formatNumber(value, decimals)).toBe(printed);
  });

  it("refuses what is no number", () => {
    expect(() => formatNumber(Number.NaN, 1)).toThrow("NaN");
  });
});

describe("formatInterval", () => {
  it("says both ends with the same decimals", () => {
    expect(formatInterval(-48.04, -35.1, 1)).toBe("\u221248.0 to \u221235.1");
  });

  it("refuses ends that are swapped or missing", () => {
    expect(() => formatInterval(2, 1, 0)).toThrow("report.interval = 2");
    expect(() => formatInterval(Number.NaN, 1, 0)).toThrow("report.interval = NaN");
  });
});

describe("formatPercent", () => {
  it("puts a blank that does not break before the sign", () => {
    expect(formatPercent(0.412)).toBe("41\u00a0%");
    expect(formatPercent(-0.0126, 1)).toBe("\u22121.3\u00a0%");
  });
});

describe("formatShareOfDraws", () => {
  // 3/n is the rule of three: Jovanovic and Levy, The American Statistician 51, 1997 (from memory).
  it.each([
    [10_000, 10_000, ">\u00a099.9\u00a0%"],
    [0, 10_000, "<\u00a00.1\u00a0%"],
    [9_995, 10_000, ">\u00a099.9\u00a0%"],
    [5, 10_000, "<\u00a00.1\u00a0%"],
    [0, 1_000, "<\u00a00.3\u00a0%"],
    [1_000, 1_000, ">\u00a099.7\u00a0%"],
    [0, 100, "<\u00a03\u00a0%"],
    [100, 100, ">\u00a097\u00a0%"],
    [0, 40, "<\u00a08\u00a0%"],
    [9_950, 10_000, "99.5\u00a0%"],
    [9_742, 10_000, "97\u00a0%"],
    [5_000, 10_000, "50\u00a0%"],
    [49, 10_000, "0.5\u00a0%"],
  ])("prints %d of %d draws", (count, draws, printed) => {
    expect(formatShareOfDraws(count, draws)).toBe(printed);
  });

  it("never prints certainty", () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 20_000 }), between(0, 1), (n, p) => {
        for (const count of [0, n, Math.round(p * n)]) {
          const printed = formatShareOfDraws(count, n);
          expect(printed).not.toMatch(/^(0(\.0+)?|100(\.0+)?)\u00a0%$/);
          expect(printed).not.toMatch(/100|[<>]\u00a00(\.0+)?\u00a0%/);
        }
      }),
      SEEDED,
    );
  });

  it.each([
    [1.5, 100],
    [-1, 100],
    [101, 100],
    [3, 29],
    [3, Number.NaN],
  ])("refuses %d of %d", (count, draws) => {
    expect(() => formatShareOfDraws(count, draws)).toThrow("expected");
  });
});

describe("formatDate", () => {
  it("prints days and months", () => {
    expect(formatDate("2025-07-04")).toBe("4\u00a0July\u00a02025");
    expect(formatDate("2024-02-29")).toBe("29\u00a0February\u00a02024");
    expect(formatDate("2025-12")).toBe("December\u00a02025");
  });

  it.each(["2025-02-30", "2025-13-01", "04.07.2025", "2025-00", ""])("refuses %j", (iso) => {
    expect(() => formatDate(iso)).toThrow(`date "${iso}"`);
  });
});
