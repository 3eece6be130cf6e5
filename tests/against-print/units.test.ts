import { describe, expect, it } from "vitest";
import { unitFactor } from "../../src/units/convert.js";
import type { Target } from "../../src/units/unit-table.js";
import { expectNear } from "./near.js";

function size(unit: string, target: Target): number {
  const factor = unitFactor(unit, target);
  if (typeof factor === "number") return factor;
  throw new Error(`${factor.reason}. ${factor.remedy}`);
}

describe("units seen from the other side", () => {
  // NIST Special Publication 811 (2008), appendix B, and reciprocals worked from it with GNU units 2.22.
  it.each<[string, string, Target, number, number]>([
    ["g/m2", "oz/yd2", "g/m2", 0.0294935246816, 1e-11],
    ["g/m2", "lb/yd2", "g/m2", 0.0018433452926, 1e-10],
    ["lb/1000 US gal", "g/L", "g/L", 0.119826427, 5e-9],
    ["kWh", "Btu", "MJ", 3412.14163313, 1e-11],
    ["boiler horsepower", "Btu/h", "kW", 33_471.4, 2e-5],
  ])("[H1] one %s in %s", (from, to, target, printed, tolerance) => {
    expectNear(size(from, target) / size(to, target), printed, tolerance);
  });

  // Three therms: of the United States and of the European Communities as the same publication has them, and the
  // plain 100,000 Btu. The first two differ by 0.024 %, so that a bare therm must be refused.
  it("[H1] therms of two places and 100,000 Btu are three", () => {
    const sizes = [size("therm (US)", "MJ"), size("therm (EC)", "MJ"), 0.1 * size("MMBtu", "MJ")];
    expect(new Set(sizes).size).toBe(3);
    expectNear(sizes[2] ?? NaN, 105.505585, 1e-8);
  });
});

describe("cloth by the roll", () => {
  // By hand from the exact yard, inch and ounce of the same publication.
  it("[P3] 1000 yd of 60 in are 1393.5456 m², at 4.2 oz/yd² 198.4467 kg", () => {
    const area = 1000 * size("yd", "m") * 60 * size("in", "m");
    expectNear(area, 1393.5456, 1e-12);
    expectNear((area * 4.2 * size("oz/yd2", "g/m2")) / 1000, 198.4467, 3e-7);
  });

  it("[P3] an ounce per running yard is refused: without the width it says nothing per area", () => {
    expect(unitFactor("oz/linear yard", "g/m2")).toMatchObject({
      reason: expect.stringContaining("without the width") as string,
    });
  });
});
