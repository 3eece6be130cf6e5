import { describe, expect, it } from "vitest";
import { formatChange, formatNumber } from "../../src/charts/number-format.js";

describe("printed numbers", () => {
  it.each([
    [0, 0, "0"],
    [7.25, 1, "7.3"],
    [-3.04, 1, "\u22123.0"],
    [999, 0, "999"],
    [1000, 0, "1\u202f000"],
    [1234567.891, 2, "1\u202f234\u202f567.89"],
    [-123456, 0, "\u2212123\u202f456"],
    [-0.04, 1, "0.0"],
    [1849, -2, "1\u202f800"],
    [-44, -2, "0"],
  ])("write %d with %d decimals as %s", (value, digits, printed) => {
    expect(formatNumber(value, digits)).toBe(printed);
  });

  it.each([
    [0.26, 1, "+0.3"],
    [0.04, 1, "0.0"],
    [-0.26, 1, "\u22120.3"],
    [0, 0, "0"],
  ])("write the change %d with %d decimals as %s", (value, digits, printed) => {
    expect(formatChange(value, digits)).toBe(printed);
  });

  it.each([Number.NaN, Infinity, -Infinity, 1e21])("cannot write %d", (value) => {
    expect(() => formatNumber(value, 1)).toThrow("expected a finite number");
  });
});
