import { describe, expect, it } from "vitest";
import { vapourPerMegajoule } from "../../src/physics/combustion.js";

// Standard enthalpies of formation at 25 °C, kJ/mol: carbon dioxide −393.51 and water vapour −241.826 are key
// values of CODATA (1989); methane −74.6 and propane −104.7 stand in the NIST Chemistry WebBook. From memory.
const FORMED = { carbonDioxide: -393.51, vapour: -241.826, methane: -74.6, propane: -104.7 };

// Net calorific value in MJ/kg from enthalpies of formation.
function netCalorificValue(x: number, y: number, formed: number): number {
  const molar = x * 12.011 + y * 1.008;
  return -(x * FORMED.carbonDioxide + (y / 2) * FORMED.vapour - formed) / molar;
}

describe("vapourPerMegajoule", () => {
  it("of methane is that of natural gas, 0.045 kg/MJ", () => {
    const ncv = netCalorificValue(1, 4, FORMED.methane);
    // Net calorific value of methane, 50.0 MJ/kg (ISO 6976), from memory.
    expect(ncv).toBeCloseTo(50.0, 1);
    expect(vapourPerMegajoule(1, 4, ncv)).toBeCloseTo(0.045, 3);
    // By hand: 36.03 / 16.043 / 50.03.
    expect(vapourPerMegajoule(1, 4, 50.03)).toBeCloseTo(0.04489, 5);
  });

  it("of propane is that of liquefied petroleum gas, 0.035 kg/MJ", () => {
    const ncv = netCalorificValue(3, 8, FORMED.propane);
    expect(ncv).toBeCloseTo(46.3, 1);
    expect(vapourPerMegajoule(3, 8, ncv)).toBeCloseTo(0.035, 3);
  });

  // 9 kg of water per kg of hydrogen, 120 MJ/kg: 0.0745 kg/MJ, the most of any fuel.
  it("of hydrogen alone", () => {
    expect(vapourPerMegajoule(0, 2, 119.96)).toBeCloseTo(0.0745, 4);
  });

  it("refuses what is no fuel", () => {
    expect(() => vapourPerMegajoule(-1, 4, 50)).toThrow("carbon atoms = -1");
    expect(() => vapourPerMegajoule(1, 0, 50)).toThrow("hydrogen atoms = 0");
    expect(() => vapourPerMegajoule(1, 4, 0)).toThrow("net calorific value = 0");
    expect(() => vapourPerMegajoule(1, Number.NaN, 50)).toThrow("hydrogen atoms = NaN");
  });
});
