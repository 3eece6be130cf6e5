import { describe, expect, it } from "vitest";
import { COLUMN_BY_NAME, COLUMNS } from "../../src/log/columns.js";
import { unitFactor } from "../../src/units/convert.js";

describe("COLUMNS", () => {
  it("asks for no more than the house rules: lot, day, fibre, mass, width, length, route", () => {
    expect(COLUMNS.filter(({ required }) => required).map(({ name }) => name)).toEqual([
      "lot",
      "date",
      "fibre",
      "gsm",
      "width_m",
      "length_m",
      "route",
    ]);
  });

  it("names each column once and finds it by its name", () => {
    expect(COLUMN_BY_NAME.size).toBe(COLUMNS.length);
    for (const column of COLUMNS) expect(COLUMN_BY_NAME.get(column.name)).toBe(column);
  });

  it("gives every number a unit that its target knows, a range, and a scale that fits both", () => {
    for (const { name, kind, unit, target, scale, range } of COLUMNS) {
      if (kind !== "number") continue;
      expect(range?.[0], name).toBeLessThan(range?.[1] ?? NaN);
      if (target === undefined) continue;
      const factor = unitFactor(unit ?? "", target);
      // Readings and times keep the unit they are logged in; ink and percentages are scaled.
      expect(factor, name).toBeCloseTo(scale ?? 1, 15);
    }
  });
});
