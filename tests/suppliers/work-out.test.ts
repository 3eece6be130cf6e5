import { describe, expect, it } from "vitest";
import { factorSetOf } from "../../src/suppliers/factor-list.js";
import { groupsOf } from "../../src/suppliers/strata.js";
import { plantOf, printedProgram, workOut } from "../../src/suppliers/work-out.js";
import { inputOf } from "../report/compose/small-mill.js";
import { packOf } from "./made.js";

const pack = packOf();
const factors = factorSetOf(pack);
const plant = plantOf(pack.plant, factors).value!;

describe("a pack worked out", () => {
  // The report of the same lots is worked out from the ledger itself, with all factors and the whole plant file.
  it("comes to what the report of the same lots says", () => {
    const { comparisons, account } = inputOf();
    const { figures } = workOut(pack, plant, factors, []);
    for (const id of ["water", "cod", "energy", "co2-location"] as const) {
      const of = (side: string): number | undefined =>
        figures.find((figure) => figure.indicator === id && figure.side === side)?.median;
      expect(of("pigment")! / comparisons.get(id)!.pigment.median).toBeCloseTo(1, 9);
      expect(of("dye")! / comparisons.get(id)!.dye.median).toBeCloseTo(1, 9);
      const actual = account.indicators.actual.get(id)!;
      const mid = [...actual].sort((a, b) => a - b);
      const median = (mid[99]! + mid[100]!) / 2 / pack.totals.accepted;
      expect(of("as-printed")! / median).toBeCloseTo(1, 9);
    }
  });

  it("holds no money", () => {
    expect(
      workOut(pack, plant, factors, []).figures.some(({ indicator }) => indicator === "cost"),
    ).toBe(false);
  });

  it("has shares that add up", () => {
    for (const one of pack.coverage)
      expect(one.measured + one.allocated + one.modelled + one.default).toBeCloseTo(1, 12);
  });

  it("judges claims by the months of the pack, not of its strata", () => {
    const claims = workOut(pack, plant, factors, ["less-water", "no such claim"]).claims;
    expect(claims.map(({ id }) => id)).toEqual(["less-water"]);
  });

  it("counts what was printed on the route it took", () => {
    const groups = groupsOf(pack.strata);
    const program = printedProgram(plant, factors, groups, pack.made);
    expect(program.terms.every(({ arm }) => arm === "pigment")).toBe(true);
    expect(groups.every(({ key }) => program.classOf(key) !== undefined)).toBe(true);
  });

  it("refuses a plant file that does not hold together", () => {
    expect(
      plantOf({ ...pack.plant, routes: { x: { like: "reactive", machines: {} } } }, factors).value,
    ).toBeUndefined();
  });
});
