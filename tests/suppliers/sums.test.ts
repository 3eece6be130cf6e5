import { describe, expect, it } from "vitest";
import type { Pack } from "../../src/suppliers/schema.js";
import { sumFaults } from "../../src/suppliers/sums.js";
import { packOf } from "./made.js";

const pack = packOf();
const places = (change: Partial<Pack>): readonly string[] =>
  sumFaults({ ...pack, ...change }).map(({ place }) => place);

describe("sums of a pack", () => {
  it("add up as it was made", () => {
    expect(sumFaults(pack)).toEqual([]);
  });

  it("are held against totals, months and rows", () => {
    expect(places({ totals: { ...pack.totals, accepted: pack.totals.accepted * 1.01 } })).toEqual([
      "/pack/totals/accepted",
      "/pack/months",
    ]);
    expect(places({ months: pack.months.slice(1) })).toEqual(["/pack/months", "/pack/months"]);
    expect(places({ counts: { ...pack.counts, rows: 99 } })).toEqual(["/pack/counts/rows"]);
    expect(places({ counts: { ...pack.counts, rows: 2, accepted: 2 } })).toEqual([
      "/pack/totals/lots",
    ]);
    expect(places({ strata: pack.strata.slice(1) })).toContain("/pack/totals/lots");
  });

  it("know no amount that cannot be", () => {
    const first = (amounts: Record<string, number>): Partial<Pack> => ({
      strata: pack.strata.map((one, i) =>
        i === 0 ? { ...one, amounts: { ...one.amounts, ...amounts } } : one,
      ),
    });
    expect(places(first({ bonus: 1 }))).toEqual(["/pack/strata/0/amounts/bonus"]);
    expect(places(first({ "mass·pickup": -1 }))).toEqual(["/pack/strata/0/amounts/mass·pickup"]);
    expect(places(first({ accepted: 1e6 }))).toContain("/pack/strata/0/amounts/accepted");
    expect(places(first({ lots: 400 }))).toContain("/pack/strata/0/lots");
  });

  it("keep months inside the period", () => {
    expect(places({ period: { from: "2026-04-01", to: "2026-04-30" } })).toEqual([
      "/pack/months/0",
    ]);
  });
});
