import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readUnit, sameUnit, unitProduct } from "../../src/units/dimension.js";

describe("readUnit", () => {
  it.each([
    ["kg", { kg: 1 }],
    ["m2", { m: 2 }],
    ["m²", { m: 2 }],
    ["m^2", { m: 2 }],
    ["m⁻¹", { m: -1 }],
    ["s-1", { s: -1 }],
    ["m¹⁰", { m: 10 }],
    ["kWh/h", { kWh: 1, h: -1 }],
    ["kJ/(kg K)", { kJ: 1, kg: -1, K: -1 }],
    ["MJ/(kg °C)", { MJ: 1, kg: -1, K: -1 }],
    ["MJ / (kg·°C)", { MJ: 1, kg: -1, K: -1 }],
    ["L/kg", { L: 1, kg: -1 }],
    ["l/kg", { L: 1, kg: -1 }],
    ["m·h", { m: 1, h: 1 }],
    ["m·h·°C", { m: 1, h: 1, K: 1 }],
    ["kg·°C", { kg: 1, K: 1 }],
    ["kg * K", { kg: 1, K: 1 }],
    ["lots", { lot: 1 }],
    ["g/L", { g: 1, L: -1 }],
    ["1/h", { h: -1 }],
    ["L/kg/h", { L: 1, kg: -1, h: -1 }],
    ["Nm3", { Nm: 3 }],
    ["kg CO2e / kWh", { kg: 1, CO2e: 1, kWh: -1 }],
    ["g COD/kg", { g: 1, COD: 1, kg: -1 }],
    ["1", {}],
    ["kg/kg", {}],
    ["%", { "%": 1 }],
    ["m/(s/kg)", { m: 1, s: -1, kg: 1 }],
  ])("takes %o", (unit, exponents) => {
    expect(Object.fromEntries(readUnit(unit) ?? [["unread", 1]])).toEqual(exponents);
  });

  it.each([
    ...["", " ", "kJ/kg K", "kJ//kg", "kg/", "/kg", "(kg", "kg)", "kg·", "·kg", "()", "2", "12"],
    ...["m0", "kg&", "kg,m", "m2.5"],
  ])("leaves %o unread", (unit) => {
    expect(readUnit(unit)).toBeUndefined();
  });
});

describe("unitProduct", () => {
  it.each([
    ["kg", "MJ/kg", "MJ"],
    ["kg·°C", "MJ/(kg K)", "MJ"],
    ["m·h", "kWh/(m·h)", "kWh"],
    ["lots", "L/lot", "L"],
    ["m²", "L/m2", "L"],
    ["kg", "1", "kg"],
    ["kg/kg", "1", "1"],
    ["kJ/kg", "1/K", "kJ/(K·kg)"],
    ["m", "m", "m²"],
    ["1/s", "1/s", "1/s²"],
  ])("of %s and %s", (a, b, product) => {
    expect(unitProduct(a, b)).toBe(product);
  });

  it("does not turn one symbol into another", () => {
    expect(sameUnit(unitProduct("kW", "h"), "kWh")).toBe(false);
    expect(sameUnit(unitProduct("h", "kWh/h"), "kWh")).toBe(true);
    expect(sameUnit(unitProduct("h", "kWh/min"), "kWh")).toBe(false);
  });

  it("commutes, cancels, and can be read again", () => {
    const symbol = fc.constantFrom("kg", "m", "K", "h", "lot", "CO2e");
    const unit = fc
      .array(fc.tuple(symbol, fc.integer({ min: -3, max: 3 }).filter(Boolean)), { minLength: 1 })
      .map((factors) => factors.map(([name, exponent]) => `${name}^${exponent}`).join("·"));
    fc.assert(
      fc.property(unit, unit, (a, b) => {
        const product = unitProduct(a, b);
        expect(unitProduct(b, a)).toBe(product);
        expect(sameUnit(unitProduct(product, `1/(${b})`), a)).toBe(true);
        expect(unitProduct(product, "1")).toBe(product);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("refuses what cannot be read", () => {
    expect(() => unitProduct("kg", "kJ/kg K")).toThrow('"kJ/kg K" cannot be read as a unit');
    expect(() => sameUnit("", "kg")).toThrow('"" cannot be read as a unit');
  });
});

describe("sameUnit", () => {
  it("looks past spelling alone", () => {
    expect(sameUnit("MJ/(kg °C)", "MJ/(K kg)")).toBe(true);
    expect(sameUnit("m²", "m2")).toBe(true);
    expect(sameUnit("lots", "lot")).toBe(true);
    expect(sameUnit("kg/kg", "1")).toBe(true);
    expect(sameUnit("MJ", "kWh")).toBe(false);
    expect(sameUnit("m", "m²")).toBe(false);
  });
});
