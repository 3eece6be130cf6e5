import { describe, expect, it } from "vitest";
import { wholeMonths } from "../../src/meters/whole-months.js";

describe("wholeMonths", () => {
  it("leaves out months of which only part was asked for", () => {
    const isWhole = wholeMonths({ from: "2026-01-10", to: "2026-03-30" });
    expect(["2026-01", "2026-02", "2026-03"].map(isWhole)).toEqual([false, true, false]);
  });

  it("leaves out the months in which the log itself begins and ends", () => {
    const isWhole = wholeMonths({ days: ["2026-01-12", "2026-04-20"] });
    expect(["2026-01", "2026-02", "2026-03", "2026-04"].map(isWhole)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it("forgives a quiet week at either end, and no more", () => {
    expect(wholeMonths({ days: ["2026-01-07", "2026-04-24"] })("2026-01")).toBe(true);
    expect(wholeMonths({ days: ["2026-01-08", "2026-04-24"] })("2026-01")).toBe(false);
    expect(wholeMonths({ days: ["2026-01-07", "2026-04-24"] })("2026-04")).toBe(true);
    expect(wholeMonths({ days: ["2026-01-07", "2026-04-23"] })("2026-04")).toBe(false);
    expect(wholeMonths({ days: ["2026-01-07", "2026-02-22"] })("2026-02")).toBe(true);
  });

  it("takes a log of one month for what it holds", () => {
    expect(wholeMonths({ days: ["2026-05-02", "2026-05-30"] })("2026-05")).toBe(true);
    expect(wholeMonths({ days: ["2026-05-12", "2026-05-30"] })("2026-05")).toBe(false);
  });
});
