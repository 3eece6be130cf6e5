import { describe, expect, it } from "vitest";
import { supplierPage } from "../../../src/report/suppliers/supplier-page.js";
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
    const values = Object.values(page?.figures ?? {}).map(({ value }) => value);
    const others = COMPARED.results.flatMap(({ suppliers }) =>
      suppliers
        .filter((one) => one.alias !== alias)
        .flatMap(({ cells }) =>
          cells.flatMap(({ value }) => (value === undefined ? [] : [value.median])),
        ),
    );
    expect(values.filter((value) => others.includes(value))).toEqual([]);
  });

  it("shows what was left unsaid, at what it counts, and asks to be corrected", () => {
    const text = JSON.stringify(supplierPage(COMPARED, "Supplier Brook", "2026-11-25"));
    expect(text).toContain("water-works.softening-reject");
    expect(text).toContain("tell us what is wrong");
    expect(text).toContain("No readings of meters were sent");
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
