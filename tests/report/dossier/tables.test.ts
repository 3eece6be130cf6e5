import { describe, expect, it } from "vitest";
import type { Factor, FactorValue } from "../../../src/factors/factor.js";
import { scoresOf } from "../../../src/report/dossier/scores.js";
import { scoreTable, vintageTable } from "../../../src/report/dossier/tables.js";
import { newest, shippedFactor } from "../../tools/shipped-factors.js";
import { rowsOf } from "./whole.js";

describe("table of scores", () => {
  const factor = shippedFactor("grid.PRT.intensity");
  const table = scoreTable("x", factor.id, scoresOf(factor, newest(factor.id)));

  it("has a row for each score and one for all together", () => {
    const rows = rowsOf([table], "scores-x");
    expect(rows.map(([name]) => name)).toEqual([
      "reliability",
      "completeness",
      "time",
      "place",
      "technology",
      "together",
    ]);
    expect(rows[0]).toEqual(["reliability", "2", "measured, or verified", "1.05"]);
  });

  it("says whether the scores make the spread", () => {
    expect(table).toMatchObject({ caption: expect.stringContaining("shown only") as string });
    const made = scoreTable("x", factor.id, {
      ...scoresOf(factor, newest(factor.id)),
      inForce: true,
    });
    expect(made).toMatchObject({ caption: expect.stringContaining("make the spread") as string });
  });
});

describe("table of vintages", () => {
  const base = newest("wash-range.fresh-water");
  const at = (from: string, entered: string, value: number): FactorValue => ({
    ...base,
    from,
    entered,
    spread: { shape: "fixed", value },
  });
  const corrected = at("2025-01-01", "2026-03-01", 21);
  const factor: Factor = {
    ...shippedFactor("wash-range.fresh-water"),
    values: [corrected, at("2025-01-01", "2025-02-01", 22), at("2020-01-01", "2020-06-01", 30)],
  };

  it("keeps old values, and tells corrections from earlier months", () => {
    const table = vintageTable("x", factor, corrected, "2026-11-25");
    expect(rowsOf([table], "vintages-x").map(([, , value, , serves]) => [value, serves])).toEqual([
      ["21", "in force now"],
      ["22", "reports before its correction"],
      ["30", "earlier months"],
    ]);
  });

  it("leaves out what was not known on the day", () => {
    const [, before] = factor.values;
    const table = vintageTable("x", factor, before ?? corrected, "2026-02-28");
    expect(rowsOf([table], "vintages-x").map(([, , value, , serves]) => [value, serves])).toEqual([
      ["22", "in force now"],
      ["30", "earlier months"],
    ]);
  });
});
