import { describe, expect, it } from "vitest";
import { DECIMALS, DOUBLES, sumOf, toCent } from "../../src/invest/arithmetic.js";

describe("decimals", () => {
  it("add tenths without a rest, which doubles do not", () => {
    const tenths = Array.from({ length: 10 }, () => 0.1);
    expect(sumOf(DECIMALS, tenths.map(DECIMALS.of)).eq(1)).toBe(true);
    expect(sumOf(DOUBLES, tenths)).not.toBe(1);
  });

  it.each([
    [0.005, "0.01"],
    [1.005, "1.01"],
    [-2.675, "-2.68"],
    [12.344999, "12.34"],
  ])("round %d to the cent, a half away from zero", (amount, printed) => {
    expect(toCent(DECIMALS.of(amount)).toFixed(2)).toBe(printed);
  });
});
