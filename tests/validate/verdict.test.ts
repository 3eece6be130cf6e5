import { describe, expect, it } from "vitest";
import { spanOf, together, verdictOf } from "./verdict.js";

const PUBLISHED = { low: 2, high: 6 };

describe("verdictOf", () => {
  it.each([
    [3, 5, "inside"],
    [2, 6, "inside"],
    [1, 5, "partly inside"],
    [3, 7, "partly inside"],
    [1, 7, "partly inside"],
    [6, 7, "partly inside"],
    [0, 1.9, "outside"],
    [6.1, 9, "outside"],
  ])("sets %d to %d beside 2 to 6: %s", (low, high, verdict) => {
    expect(verdictOf({ low, high }, PUBLISHED)).toBe(verdict);
  });

  it("takes a ceiling as a range from 0", () => {
    expect(verdictOf({ low: 0, high: 6 }, { low: 0, high: 6 })).toBe("inside");
  });
});

describe("together", () => {
  it.each([
    [["inside", "inside"], "inside"],
    [["outside", "outside"], "outside"],
    [["inside", "outside"], "partly inside"],
    [["inside", "partly inside"], "partly inside"],
  ] as const)("makes %j %s", (verdicts, whole) => {
    expect(together(verdicts)).toBe(whole);
  });

  it("judges nothing where there is nothing", () => {
    expect(() => together([])).toThrow("no fabric");
  });
});

describe("spanOf", () => {
  it("holds all values, in any order", () => {
    expect(spanOf([5, 2, 9])).toEqual({ low: 2, high: 9 });
  });

  it.each([[[]], [[1, Number.NaN]]])("refuses %j", (values) => {
    expect(() => spanOf(values)).toThrow("no span");
  });
});
