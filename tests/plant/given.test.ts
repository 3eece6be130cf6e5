import { describe, expect, it } from "vitest";
import { interval95 } from "../../src/numbers/distributions.js";
import { givenFault, givenSpread } from "../../src/plant/given.js";

const LIMITS = [0, 10] as const;

describe("givenSpread", () => {
  it("doubts a plain number by 5 % at 95 %", () => {
    const [low, high] = interval95(givenSpread(4, LIMITS));
    expect(low).toBeCloseTo(3.8, 5);
    expect(high).toBeCloseTo(4.2, 5);
  });

  it("takes given ends as they are, also around zero", () => {
    expect(givenSpread({ value: 4, low: 3, high: 6 }, LIMITS)).toEqual({
      shape: "triangular",
      low: 3,
      value: 4,
      high: 6,
    });
    expect(givenSpread({ value: 0, low: 0, high: 1 }, LIMITS).shape).toBe("triangular");
  });

  it.each([0, { value: 0 }, { value: 4, exact: true }, { value: 4, low: 4, high: 4 }])(
    "has no doubt about %j",
    (given) => {
      expect(givenSpread(given, LIMITS).shape).toBe("fixed");
    },
  );
});

describe("givenFault", () => {
  it.each([0, 10, { value: 4, low: 0, high: 10 }, { value: 4, low: 4, high: 4 }])(
    "lets %j through",
    (given) => {
      expect(givenFault(given, LIMITS)).toBeUndefined();
    },
  );

  it.each([
    [-1, "a value from 0 to 10"],
    [NaN, "a value from 0 to 10"],
    [{ value: 4, low: -1, high: 5 }, "a value from 0 to 10"],
    [{ value: 4, low: 1, high: 11 }, "a value from 0 to 10"],
    [{ value: 4, low: 5, high: 6 }, "low ≤ value ≤ high"],
    [{ value: 4, low: 1, high: 3 }, "low ≤ value ≤ high"],
    [{ value: 4, low: 1 }, "both low and high, or neither,"],
    [{ value: 4, high: 6 }, "both low and high, or neither,"],
  ])("says what is wrong with %j", (given, fault) => {
    expect(givenFault(given, LIMITS)).toBe(fault);
  });
});
