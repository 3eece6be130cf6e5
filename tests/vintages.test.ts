import { describe, expect, it } from "vitest";
import { accountOf } from "../src/account/account.js";
import { writeProgram } from "../src/account/program.js";
import type { Factor, FactorSet } from "../src/factors/factor.js";
import { valueInForce } from "../src/factors/in-force.js";
import { inputOf, smallMill } from "./report/compose/small-mill.js";
import { shippedFactor, SHIPPED } from "./tools/shipped-factors.js";
import { textOf } from "./tools/tree.js";
import { vintages } from "./tools/vintages.js";

// This list checks no value against anything: it keeps values that stand in printed reports from moving. A line
// that changed or went is a fault. New values bring new lines, which
//
//     node --import tsx tests/tools/list-vintages.ts
//
// adds; it refuses to take any away.
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

  it("have one line each", () => {
    const keys = listed.map((line) => line.split(" ").slice(0, 3).join(" "));
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
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

describe("a report of an earlier day", () => {
  const CORRECTED = "2027-06-01";

  // Every number with doubt is found to be a tenth larger, half a year after the report was printed.
  const grown = (factor: Factor): Factor => {
    const [newest] = factor.values;
    if (newest === undefined || newest.spread.shape === "fixed") return factor;
    const value = Math.min(newest.spread.value * 1.1, factor.plausible[1]);
    const spread = { shape: "fixed", value } as const;
    return { ...factor, values: [{ ...newest, entered: CORRECTED, spread }, ...factor.values] };
  };
  const later: FactorSet = {
    ...SHIPPED,
    factors: new Map([...SHIPPED.factors].map(([id, factor]) => [id, grown(factor)])),
  };
  const { groups } = inputOf();
  const water = (set: FactorSet, asOf: string): Float64Array => {
    const program = writeProgram(smallMill(), set, groups, asOf);
    return accountOf(program, 50, 1).indicators.dye.get("water") ?? new Float64Array(0);
  };

  it("is made again draw by draw after all factors were corrected", () => {
    const first = water(SHIPPED, "2026-11-25");
    const again = water(later, "2026-11-25");
    expect(first.length).toBe(50);
    first.forEach((value, i) => expect((again[i] ?? NaN) / value).toBeCloseTo(1, 12));
  });

  it("takes the correction from the day it was entered", () => {
    const before = water(later, "2027-05-31");
    expect(before[0]).toBeCloseTo(water(SHIPPED, "2027-05-31")[0] ?? NaN, 6);
    expect(water(later, CORRECTED)[0]).not.toBeCloseTo(before[0] ?? NaN, 3);
  });
});
