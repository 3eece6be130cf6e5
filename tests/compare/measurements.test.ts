import { describe, expect, it } from "vitest";
import { measurementOf, MEASUREMENTS, OF_SOURCES } from "../../src/compare/measurements.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const FACTORS = [...SHIPPED.factors.keys()];

describe("measurementOf", () => {
  it.each(MEASUREMENTS)("knows every start of a factor that $id names", ({ shows }) => {
    for (const start of shows)
      expect(
        FACTORS.some((factor) => factor.startsWith(start)),
        start,
      ).toBe(true);
  });

  it("has no factor that two measurements show", () => {
    const twice = FACTORS.filter(
      (factor) =>
        MEASUREMENTS.filter(({ shows }) => shows.some((start) => factor.startsWith(start))).length >
        1,
    );
    expect(twice).toEqual([]);
  });

  it("has no meter for fuels, grids, warming potentials and fibres", () => {
    for (const factor of ["fuel.natural-gas.co2", "gwp.ar6.n2o", "grid.PRT.intensity"]) {
      expect(measurementOf(factor)).toBeUndefined();
    }
    const metered = FACTORS.filter((factor) =>
      OF_SOURCES.some((start) => factor.startsWith(start)),
    ).filter((factor) => measurementOf(factor) !== undefined);
    expect(metered).toEqual([]);
  });

  it("has a water meter for the belt washer, and weighing for the pad alone, not for its dumped bath", () => {
    expect(measurementOf("printer.belt-water")?.id).toBe("printer-water");
    expect(measurementOf("pad.pickup")?.id).toBe("pick-up");
    expect(measurementOf("pad.dump")?.id).toBe("pad-bath");
  });
});
