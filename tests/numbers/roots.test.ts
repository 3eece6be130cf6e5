import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { courseOf, rootBetween, rootsAlong } from "../../src/numbers/roots.js";

const pointsOf = (of: (x: number) => number, low: number, high: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const x = low + ((high - low) * i) / (count - 1);
    return { x, y: of(x) };
  });

describe("rootBetween", () => {
  // The cubic on which Newton showed his method (De analysi, 1669), root 2.0945514815, and the fixed point of the
  // cosine, 0.7390851332 (OEIS A003957); both from memory.
  it("finds Newton's root of x³ − 2x − 5 and the fixed point of the cosine", () => {
    expect(rootBetween((x) => x ** 3 - 2 * x - 5, [2, 3])).toBeCloseTo(2.0945514815, 10);
    expect(rootBetween((x) => Math.cos(x) - x, [0, 1])).toBeCloseTo(0.7390851332, 10);
  });

  // A zero of multiplicity 9 and a flat one, cases on which secants alone fail (after Brent 1973, chapter 4).
  it("finds zeros of high order and of curves that are flat nearby", () => {
    expect(rootBetween((x) => x ** 9, [-1, 1.5], 1e-6)).toBeCloseTo(0, 5);
    const flat = (x: number) => (x === 0 ? 0 : x * Math.exp(-1 / (x * x)));
    expect(Math.abs(rootBetween(flat, [-1, 4], 1e-6) ?? NaN)).toBeLessThan(0.2);
  });

  it("takes few steps where halving would take fifty", () => {
    let calls = 0;
    rootBetween(
      (x) => {
        calls += 1;
        return x ** 3 - 2 * x - 5;
      },
      [2, 3],
    );
    expect(calls).toBeLessThan(16);
  });

  it("takes ends in any order, and an end that is zero", () => {
    expect(rootBetween((x) => x - 1, [4, -4])).toBeCloseTo(1, 12);
    expect(rootBetween((x) => x - 1, [1, 4])).toBe(1);
    expect(rootBetween((x) => x - 4, [1, 4])).toBe(4);
  });

  it("answers with nothing for like signs, values that are no numbers, and poles", () => {
    expect(rootBetween((x) => x * x + 1, [-1, 1])).toBeUndefined();
    expect(rootBetween(() => NaN, [0, 1])).toBeUndefined();
    expect(rootBetween((x) => (Math.abs(x - 0.4) < 0.2 ? NaN : x - 0.4), [0, 1])).toBeUndefined();
    expect(rootBetween((x) => 1 / (x - 0.3), [0, 1])).toBeUndefined();
  });

  it("finds the zero of any cubic that was put together from its zeros", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (zero, bend) => {
          const of = (x: number) => (x - zero) * ((x - zero) ** 2 + bend);
          expect(rootBetween(of, [-4, 4.5], 1e-9)).toBeCloseTo(zero, 8);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe("rootsAlong", () => {
  it("finds several zeros, in order", () => {
    const found = rootsAlong(pointsOf(Math.sin, 1, 10, 17), Math.sin);
    expect(found).toHaveLength(3);
    found.forEach((root, i) => {
      expect(root).toBeCloseTo((i + 1) * Math.PI, 10);
    });
  });

  it("counts a zero at a point once", () => {
    const of = (x: number) => x * x - 1;
    expect(rootsAlong(pointsOf(of, -2, 2, 5), of)).toEqual([-1, 1]);
  });

  it("finds none where there is none, and stops at gaps", () => {
    const of = (x: number) => x * x + 1;
    expect(rootsAlong(pointsOf(of, -2, 2, 9), of)).toEqual([]);
    const gap = (x: number) => (x > -0.5 && x < 0.5 ? NaN : x);
    expect(rootsAlong(pointsOf(gap, -2, 2, 9), gap)).toEqual([]);
  });
});

describe("courseOf", () => {
  it("tells rising, falling, bent and level rows apart", () => {
    expect(courseOf([1, 2, 2, 5])).toBe("rises");
    expect(courseOf([3, 1, 0])).toBe("falls");
    expect(courseOf([1, 2, 1])).toBe("bends");
    expect(courseOf([1, 1, 1])).toBe("level");
    expect(courseOf([])).toBe("level");
  });

  it("passes over what is no number, and over changes within the slack", () => {
    expect(courseOf([1, NaN, 2])).toBe("rises");
    expect(courseOf([1, 1 + 1e-12, 1], 1e-9)).toBe("level");
  });
});
