import { describe, expect, it } from "vitest";
import { amountsByMonth, isCounted, isMonth } from "../../src/meters/months.js";
import type { Reading } from "../../src/meters/reading.js";

const reading = (from: string, to: string, amount: number): Reading => ({
  meter: "power",
  from,
  to,
  amount,
});

describe("amountsByMonth", () => {
  it("shares a reading across months by days, and loses nothing", () => {
    // 10 days of January, 28 of February and 2 of March 2026.
    const months = amountsByMonth([reading("2026-01-22", "2026-03-02", 400)]);
    expect([...months.keys()]).toEqual(["2026-01", "2026-02", "2026-03"]);
    const amounts = [...months.values()].map(({ amount }) => amount);
    [100, 280, 20].forEach((amount, at) => {
      expect(amounts[at]).toBeCloseTo(amount, 9);
    });
    expect(amounts.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(400, 9);
    expect([...months.values()].map(({ covered }) => covered)).toEqual([
      expect.closeTo(10 / 31, 9),
      1,
      expect.closeTo(2 / 31, 9),
    ]);
  });

  it("adds the readings of a month, and keeps what of it was estimated", () => {
    const months = amountsByMonth([
      reading("2026-01-01", "2026-01-15", 30),
      { ...reading("2026-01-16", "2026-01-16", 4), estimated: true },
    ]);
    expect(months.get("2026-01")).toMatchObject({ amount: 34, estimated: 4 });
  });
});

describe("isMonth", () => {
  it.each([
    ["2026-02-01", "2026-02-28", true],
    ["2024-02-01", "2024-02-28", false],
    ["2026-01-02", "2026-01-31", false],
    ["2026-01-01", "2026-02-28", false],
  ])("%s to %s: %s", (from, to, expected) => {
    expect(isMonth({ from, to })).toBe(expected);
  });
});

describe("isCounted", () => {
  it("knows what a model has", () => {
    expect(["water", "gas", "effluent", "cod"].map(isCounted)).toEqual([true, true, false, false]);
  });
});
