import { describe, expect, it } from "vitest";
import { supplierPage } from "../../../src/report/suppliers/supplier-page.js";
import { printed } from "../../../src/report/suppliers/supplier-tables.js";
import { COMPARED } from "./whole.js";

const ALIASES = COMPARED.candidates.map(({ alias }) => alias);

describe("a supplier's own page", () => {
  it.each(ALIASES)("of %s holds no other supplier, nor any number of one", (alias) => {
    const page = supplierPage(COMPARED, alias, "2026-11-25");
    const text = JSON.stringify(page);
    for (const other of ALIASES.filter((one) => one !== alias))
      expect([other, text.includes(other)]).toEqual([other, false]);
    expect(text).toContain(alias);
    expect(text).not.toMatch(/chance|group|\bplace of\b/i);
    const own = COMPARED.results.flatMap(({ suppliers }) => suppliers);
    const valuesOf = (one: (typeof own)[number]): readonly string[] =>
      one.cells.flatMap(({ value }) =>
        value === undefined
          ? []
          : [`${printed(value)} (${printed({ ...value, median: value.low })}`],
      );
    const mine = own.filter((one) => one.alias === alias).flatMap(valuesOf);
    const others = own.filter((one) => one.alias !== alias).flatMap(valuesOf);
    expect(others.filter((value) => !mine.includes(value) && text.includes(value))).toEqual([]);
  });

  it("shows weights, own value at the mix, own place with its share of draws, and the meter", () => {
    const text = JSON.stringify(supplierPage(COMPARED, "Supplier Ash", "2026-11-25"));
    expect(text).toContain("Weight in the mix");
    expect(text).toMatch(/At the mix it comes to [\d.]+ \([\d.]+ to [\d.]+\) L\/m²/);
    expect(text).toMatch(/it stands at 2 in .{1,8} of draws/);
    expect(text).toMatch(/Your site meters show [\d.]+ L\/m², 1\.3× what/);
    expect(text).toContain("A setting counts at the end at which more is taken");
  });

  it("lists costs that add up to the whole", () => {
    const page = supplierPage(COMPARED, "Supplier Ash", "2026-11-25")!;
    const table = page.blocks.find(
      (block) => block.kind === "table" && block.id === "unsaid-water",
    );
    if (table?.kind !== "table") throw new Error("no table");
    const costs = table.rows.map((row) =>
      Number(
        row[3]!.runs
          .map((run) => ("text" in run ? run.text : ""))
          .join("")
          .replace("−", "-"),
      ),
    );
    const parts = costs.slice(0, -1).reduce((sum, cost) => sum + cost, 0);
    // Printed with three digits each.
    expect(Math.abs(parts - costs.at(-1)!)).toBeLessThan(0.02);
    expect(costs.at(-1)).toBeGreaterThan(0);
  });

  it("shows what was left unsaid, at what it counts, and asks to be corrected", () => {
    const text = JSON.stringify(supplierPage(COMPARED, "Supplier Brook", "2026-11-25"));
    expect(text).toContain("water-works.softening-reject");
    expect(text).toContain("tell us what is wrong");
  });

  it("says where a step is missing", () => {
    expect(JSON.stringify(supplierPage(COMPARED, "Supplier Dell", "2026-11-25"))).toContain(
      "counts no washing. Where is it done?",
    );
  });

  it("is not made for who was not compared", () => {
    expect(supplierPage(COMPARED, "Supplier Nobody", "2026-11-25")).toBeUndefined();
  });
});
