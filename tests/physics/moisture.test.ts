import { describe, expect, it } from "vitest";
import { dryBasis, wetBasis } from "../../src/physics/moisture.js";

describe("moisture", () => {
  // R. L. Earle and M. D. Earle, Unit Operations in Food Processing, ch. 7, example 7.1: 1 kg of 80 % water
  // dried to 10 %, wet basis, gives off 0.778 kg; with 3.8 kJ/(kg K) over 79 K and 2257 kJ/kg it takes
  // 2.06e3 kJ. Inputs seen, answers from memory.
  it("[C3] gives the textbook's evaporation", () => {
    const dry = 1 - 0.8;
    const water = dry * (dryBasis(0.8) - dryBasis(0.1));
    expect(water).toBeCloseTo(0.778, 3);
    expect(Math.abs((3.8 * 79 + 2257 * water) / 2060 - 1)).toBeLessThan(0.005);
  });

  // A quiz built on it asks for 70 % to 15 %: 0.3 (70/30 − 15/85) = 0.6471 kg, by hand.
  it("takes both ends of the drying on the wet basis", () => {
    expect(0.3 * (dryBasis(0.7) - dryBasis(0.15))).toBeCloseTo(0.6471, 4);
  });

  it("goes back", () => {
    for (const wet of [0, 0.07, 0.5, 0.95]) expect(wetBasis(dryBasis(wet))).toBeCloseTo(wet, 15);
    expect(dryBasis(0.5)).toBe(1);
    expect(wetBasis(0.25)).toBeCloseTo(0.2, 15);
  });

  it("refuses what cannot be", () => {
    expect(() => dryBasis(1)).toThrow("moisture on the wet basis = 1");
    expect(() => dryBasis(-0.1)).toThrow("moisture on the wet basis = -0.1");
    expect(() => dryBasis(Number.NaN)).toThrow("moisture on the wet basis = NaN");
    expect(() => wetBasis(-0.1)).toThrow("moisture on the dry basis = -0.1");
  });
});
