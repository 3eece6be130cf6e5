import { describe, expect, it } from "vitest";
import { desorptionHeat } from "../../src/physics/sorption.js";

// Cotton, W. E. Morton and J. W. S. Hearle, Physical Properties of Textile Fibres, 4th ed., table 8.1: heat of
// wetting 46 kJ/kg; section 8.3: differential heat about 1250 kJ/kg at zero regain.
const COTTON = [46, 1250] as const;

describe("desorptionHeat", () => {
  it("is the heat of wetting for bone-dry cloth", () => {
    expect(desorptionHeat(0, ...COTTON)).toBe(46);
  });

  it("starts with the differential heat of sorption as its slope", () => {
    const slope = (desorptionHeat(0, ...COTTON) - desorptionHeat(1e-6, ...COTTON)) / 1e-6;
    expect(slope).toBeCloseTo(1250, 0);
  });

  // 2 · 46 / 1250 = 0.0736: below the regain of 7 to 8 % that cotton has in standard air.
  it("ends, level, where the bound water is off", () => {
    expect(desorptionHeat(0.0736, ...COTTON)).toBe(0);
    expect(desorptionHeat(0.08, ...COTTON)).toBe(0);
    expect(desorptionHeat(2, ...COTTON)).toBe(0);
    expect(desorptionHeat(0.0735, ...COTTON)).toBeLessThan(1e-4);
    // By hand: halfway there a quarter is left.
    expect(desorptionHeat(0.0368, ...COTTON)).toBeCloseTo(11.5, 12);
  });

  // Same book, section 8.3: the last water of cellulose costs about half as much again as free water,
  // 1250 on top of about 2450 kJ/kg.
  it("makes the last water about half as dear again", () => {
    const last = (desorptionHeat(0, ...COTTON) - desorptionHeat(0.001, ...COTTON)) / 0.001;
    expect(last / 2450).toBeGreaterThan(0.45);
    expect(last / 2450).toBeLessThan(0.55);
  });

  it("is nothing for a fibre that binds no water", () => {
    expect(desorptionHeat(0, 0, 1250)).toBe(0);
  });

  it("refuses what cannot be", () => {
    expect(() => desorptionHeat(-0.01, ...COTTON)).toThrow("moisture of cloth = -0.01");
    expect(() => desorptionHeat(0.01, -1, 1250)).toThrow("heat of wetting = -1");
    expect(() => desorptionHeat(0.01, 46, 0)).toThrow("heat of sorption = 0");
    expect(() => desorptionHeat(Number.NaN, ...COTTON)).toThrow("moisture of cloth = NaN");
  });
});
