import { describe, expect, it } from "vitest";
import { valueInForce } from "../src/factors/in-force.js";
import { shippedFactor, SHIPPED } from "./tools/shipped-factors.js";
import { textOf } from "./tools/tree.js";
import { vintages } from "./tools/vintages.js";

// This list checks no value against anything: it keeps values that stand in printed reports from moving.
const listed = textOf("tests/tools/vintages.txt").trim().split("\n");
const now = new Set(vintages());

describe("old values", () => {
  it("stay as they were entered; a correction is a new line with a later day", () => {
    expect(listed.filter((line) => !now.has(line))).toEqual([]);
  });

  it("are all listed, so that none can change unseen", () => {
    expect(
      [...now].filter((line) => !listed.includes(line)),
      "list them with node --import tsx tests/tools/list-vintages.ts",
    ).toEqual([]);
  });

  it("are what a report of an earlier day reads", () => {
    for (const factor of SHIPPED.factors.values()) {
      const [newest] = factor.values;
      if (newest === undefined) continue;
      const dayBefore = new Date(Date.parse(newest.entered) - 86_400_000)
        .toISOString()
        .slice(0, 10);
      const before = valueInForce(factor, "2026-10", dayBefore);
      expect(before?.value.entered ?? "", factor.id).not.toBe(newest.entered);
    }
  });

  it("answer for the month of the lot", () => {
    // Ember's yearly table has a row a year; a lot of March 2024 takes that of 2024.
    const grid = shippedFactor("grid.PRT.intensity");
    const years = grid.values.map(({ from }) => from.slice(0, 4));
    expect(new Set(years).size).toBe(grid.values.length);
    for (const value of grid.values) {
      const found = valueInForce(grid, `${value.from.slice(0, 4)}-03`, "2026-11-25");
      expect(found?.value.from).toBe(value.from);
    }
  });
});
