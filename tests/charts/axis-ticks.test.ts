import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { axisTicks, logTicks, roundAxis } from "../../src/charts/axis-ticks.js";

describe("ticks", () => {
  it.each([
    [0, 52.3, 6, [0, 10, 20, 30, 40, 50], 0],
    [0, 0.31, 6, [0, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3], 2],
    [-7.4, 4.1, 6, [-6, -4, -2, 0, 2, 4], 0],
    [0, 3, 6, [0, 0.5, 1, 1.5, 2, 2.5, 3], 1],
    [0, 123456, 6, [0, 20000, 40000, 60000, 80000, 100000, 120000], 0],
    [0, 9, 1, [0], 0],
  ])("from %d to %d, about %d of them", (low, high, count, values, digits) => {
    expect(axisTicks(low, high, count)).toEqual({ values, digits });
  });

  it("lie within the stretch, evenly, and are round when printed", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-2, max: 1e6, noNaN: true }),
        (low, length) => {
          const { values, digits } = axisTicks(low, low + length, 6);
          expect(values.length).toBeGreaterThanOrEqual(3);
          expect(values.length).toBeLessThanOrEqual(11);
          for (const value of values) {
            expect(value).toBeGreaterThanOrEqual(low - 1e-6 * length);
            expect(value).toBeLessThanOrEqual(low + length * (1 + 1e-6));
            expect(Number(value.toFixed(digits))).toBe(value);
          }
          const steps = values.slice(1).map((value, index) => value - (values[index] ?? 0));
          expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(1e-6 * length);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("round axes", () => {
  it.each([
    [0, 5.2, 5, [0, 1, 2, 3, 4, 5, 6], [0, 6]],
    [-2.4, 4.1, 5, [-3, -2, -1, 0, 1, 2, 3, 4, 5], [-3, 5]],
    [-14, 7, 2, [-20, -10, 0, 10], [-20, 10]],
    [0, 300, 5, [0, 50, 100, 150, 200, 250, 300], [0, 300]],
  ])("from %d to %d begin and end at a number", (low, high, count, values, domain) => {
    const axis = roundAxis(low, high, count);
    expect(axis.ticks.values).toEqual(values);
    expect(axis.domain).toEqual(domain);
  });

  it("leave nothing beyond the last number", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-2, max: 1e5, noNaN: true }),
        (low, length) => {
          const { ticks, domain } = roundAxis(low, low + length, 5);
          expect(domain[0]).toBeLessThanOrEqual(low + 1e-6 * length);
          expect(domain[1]).toBeGreaterThanOrEqual(low + length * (1 - 1e-6));
          expect([ticks.values[0], ticks.values.at(-1)]).toEqual([...domain]);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("logarithmic ticks", () => {
  it("take 1, 2 and 5 of each power of ten on a short stretch", () => {
    expect(logTicks(0.4, 30)).toEqual({
      values: [0.5, 1, 2, 5, 10, 20],
      digits: [1, 0, 0, 0, 0, 0],
    });
  });

  it("take the powers alone on a long one", () => {
    expect(logTicks(0.02, 400).values).toEqual([0.1, 1, 10, 100]);
  });
});
