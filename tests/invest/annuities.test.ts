import * as financial from "financial";
import { describe, expect, it } from "vitest";
import {
  effectiveRate,
  loanSchedule,
  payment,
  presentSum,
  quotedRate,
} from "../../src/invest/annuities.js";
import { DECIMALS, DOUBLES, sumOf } from "../../src/invest/arithmetic.js";

describe("payments", () => {
  it.each([
    [0.05, 10, 100000],
    [0.004, 60, 25000],
    [0.12, 3, 999.99],
  ])("at %d for %d periods agree with a package", (rate, periods, sum) => {
    expect(payment(DOUBLES, rate, periods, sum)).toBeCloseTo(financial.pmt(rate, periods, sum), 8);
    expect(presentSum(rate, periods, -70, 5)).toBeCloseTo(financial.pv(rate, periods, -70, 5), 8);
  });

  it("without interest are equal parts", () => {
    expect(payment(DOUBLES, 0, 4, 1000)).toBe(-250);
  });
});

describe("a loan", () => {
  it("is paid back to the cent, and each year is interest on what was left", () => {
    const years = loanSchedule(333333.33, 0.0475, 7);
    expect(
      sumOf(
        DECIMALS,
        years.map(({ repaid }) => repaid),
      ).toFixed(2),
    ).toBe("333333.33");
    expect(years.at(-1)?.left.toFixed(2)).toBe("0.00");
    // First year by hand: 333,333.33 × 4.75 %.
    expect(years[0]?.interest.toFixed(2)).toBe("15833.33");
    const yearly = years
      .slice(0, -1)
      .map(({ interest, repaid }) => interest.plus(repaid).toFixed(2));
    expect(new Set(yearly).size).toBe(1);
    expect(Number(yearly[0])).toBeCloseTo(-financial.pmt(0.0475, 7, 333333.33), 2);
  });
});

describe("rates in parts of a year", () => {
  it("come back", () => {
    expect(quotedRate(effectiveRate(0.08, 12), 12)).toBeCloseTo(0.08, 12);
  });
});
