import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocate, byKey, composite, KEYS } from "../../src/meters/allocation.js";

// Worked by hand: a meter of 160, three lots.
const L1 = { kg: 400, m2: 2500, hour: 2 };
const L2 = { kg: 900, m2: 4500, hour: 3 };
const L3 = { kg: 300, m2: 3000, hour: 5 };
const LOTS = [L1, L2, L3];

describe("keys", () => {
  it.each([
    ["kg", [40, 90, 30]],
    ["m2", [40, 72, 48]],
    ["hour", [32, 48, 80]],
  ] as const)("[P8] by %s", (key, expected) => {
    expect(byKey(160, LOTS, key, 1)).toEqual(expected);
  });

  it("[P8] a base by hours and the rest by kg", () => {
    expect(composite(160, 40, LOTS, "kg", 0.5)).toEqual([38, 79.5, 42.5]);
  });

  it("[P8] a meter of two lots' machine, and the rest by kg", () => {
    const range = [...byKey(100, [L1, L2], "kg", 1e-4), 0];
    const rest = byKey(60, LOTS, "kg", 1e-4);
    [45.7692, 102.9808, 11.25].forEach((value, i) => {
      expect(range[i]! + rest[i]!).toBeCloseTo(value, 3);
    });
  });

  it("matter: one lot takes 11 or 80 by what is chosen", () => {
    const parts = KEYS.map((key) => byKey(160, LOTS, key, 1)[2]!);
    expect(Math.max(...parts)).toBe(80);
  });
});

describe("parts", () => {
  it("add up to the meter to the last step", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (total, weights) => {
          fc.pre(weights.some((weight) => weight > 1e-6));
          const parts = allocate(total, weights, 1);
          expect(parts.reduce((sum, part) => sum + part, 0)).toBe(total);
          const all = weights.reduce((sum, weight) => sum + weight, 0);
          parts.forEach((part, i) => {
            expect(Math.abs(part - (total * weights[i]!) / all)).toBeLessThan(1 + 1e-9);
          });
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it("go to the earlier where two lost the same", () => {
    expect(allocate(1, [1, 1], 1)).toEqual([1, 0]);
  });

  it("are refused where there is nothing to share by", () => {
    expect(() => allocate(10, [0, 0], 1)).toThrow("weights");
    expect(() => allocate(-1, [1], 1)).toThrow("meter");
    expect(() => allocate(1, [NaN], 1)).toThrow("weight");
    expect(() => composite(10, 11, LOTS, "kg", 1)).toThrow("base load");
  });
});
