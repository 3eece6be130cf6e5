import { describe, expect, it } from "vitest";
import { type Refusal, temperatureToCelsius, unitFactor } from "../../src/units/convert.js";
import { type Target, UNITS } from "../../src/units/unit-table.js";

const TARGETS = Object.keys(UNITS) as Target[];

function factor(unit: string, target: Target): number {
  const answer = unitFactor(unit, target);
  if (typeof answer === "number") return answer;
  throw new Error(`${answer.reason}. ${answer.remedy}`);
}

function refusal(unit: string, target: Target): Refusal {
  const answer = unitFactor(unit, target);
  if (typeof answer !== "number") return answer;
  throw new Error(`"${unit}" was taken as ${answer} ${target}`);
}

describe("unitFactor", () => {
  // NIST Special Publication 811 (2008), appendix B. From memory, each reproduced with GNU units 2.22; the
  // boiler horsepower and the two therms stand there with the digits given here.
  it.each<[string, Target, number]>([
    ["Btu", "MJ", 1055.05585262e-6],
    ["therm (US)", "MJ", 105.4804],
    ["therm (EC)", "MJ", 105.506],
    ["MMBtu", "kWh", 293.071070172],
    ["kWh", "MJ", 3.6],
    ["kcal", "kWh", 0.001163],
    ["kcal_th", "MJ", 4184e-6],
    ["toe", "MJ", 41868],
    ["Btu/lb", "kJ/kg", 2.326],
    ["US gal", "L", 3.785411784],
    ["imp gal", "L", 4.54609],
    ["lb", "kg", 0.45359237],
    ["oz", "kg", 28.349523125e-3],
    ["yd", "m", 0.9144],
    ["ft", "m", 0.3048],
    ["in", "m", 25.4e-3],
    ["short ton", "kg", 907.18474],
    ["long ton", "kg", 1016.0469088],
    ["oz/yd2", "g/m2", 33.9057474749],
    ["lb/yd2", "g/m2", 542.49196],
    ["psi", "bar", 6894.757293e-5],
    ["kgf/cm2", "bar", 98066.5e-5],
    ["boiler horsepower", "kW", 9.8095],
    ["ton of refrigeration", "kW", 3.516852842],
    ["lb/1000 US gal", "g/L", 453.59237 / 3785.411784],
  ])("[H1] %s in %s", (unit, target, expected) => {
    expect(Math.abs(factor(unit, target) / expected - 1)).toBeLessThan(1e-9);
  });

  it("[H2] turns 150 g/m² into 4.424 oz/yd², and a kWh into 3412 Btu", () => {
    expect(150 / factor("oz/yd²", "g/m2")).toBeCloseTo(4.424028702, 9);
    expect(factor("kWh", "MJ") / factor("Btu", "MJ")).toBeCloseTo(3412.14163313, 7);
  });

  it.each<[string, Target, number]>([
    ["m²", "m2", 1],
    ["g/m²", "g/m2", 1],
    ["g / m²", "g/m2", 1],
    ["GSM", "g/m2", 1],
    ["cm", "m", 0.01],
    ["mm", "m", 0.001],
    [" Metres ", "m", 1],
    ["ml", "L", 0.001],
    ["mL", "L", 0.001],
    ["m³", "L", 1000],
    ["KL", "L", 1000],
    ["l", "L", 1],
    ["KG", "kg", 1],
    ["g", "kg", 0.001],
    ["t", "kg", 1000],
    ["KWH", "kWh", 1],
    ["MWh", "kWh", 1000],
    ["MJ", "kWh", 1 / 3.6],
    ["GJ", "MJ", 1000],
    ["%", "1", 0.01],
    ["1", "1", 1],
    ["min", "s", 60],
    ["min", "h", 1 / 60],
    ["yd/min", "m/min", 0.9144],
    ["mbar", "bar", 0.001],
    ["kPa", "bar", 0.01],
    ["L/kg", "L/kg", 1],
    ["MJ/kg", "kJ/kg", 1000],
    ["Square  Metres", "m2", 1],
  ])("reads %o as %s", (unit, target, expected) => {
    expect(factor(unit, target)).toBeCloseTo(expected, 15);
  });

  it.each<[string, Target, string]>([
    ["MBtu", "kWh", "a thousand or a million Btu"],
    ["mbtu", "MJ", "a thousand or a million Btu"],
    ["ton", "kg", "907, 1000 or 1016 kg"],
    ["Tons", "kg", "907, 1000 or 1016 kg"],
    ["gallon", "L", "3.785 or 4.546 L"],
    ["gal", "L", "3.785 or 4.546 L"],
    ["therm", "MJ", "105.4804 or 105.506 MJ"],
    ["Therms", "kWh", "105.4804 or 105.506 MJ"],
    ["ML", "L", "a million litres"],
    ["mWh", "kWh", "a million watt hours"],
    ["oz/linear yard", "g/m2", "without the width"],
    ["bar(g)", "bar", "counts from air pressure"],
    ["psig", "bar", "counts from air pressure"],
    ["Nm³", "kWh", "no fixed energy"],
    ["m3", "MJ", "no fixed energy"],
    ["mJ", "MJ", "no unit known here"],
    ["Mg", "kg", "no unit known here"],
    ["Mm", "m", "no unit known here"],
    ["kg", "m", "no unit known here"],
    ["", "m", "no unit known here"],
    ["constructor", "m", "no unit known here"],
  ])("[H3] refuses %o for %s and says why", (unit, target, reason) => {
    expect(refusal(unit, target).reason).toContain(reason);
    expect(refusal(unit, target).remedy).toMatch(/^[A-Z].*\.$/);
  });

  it("names units that would do, and every one of them is taken", () => {
    const { reason, remedy } = refusal("ell", "m");
    expect(reason).toBe('"ell" is no unit known here that can be turned into m');
    expect(remedy).toBe("Use one of m, mm, cm, km, in, ft, yd.");
    for (const target of TARGETS) {
      for (const [size, ...spellings] of UNITS[target]) {
        for (const spelling of spellings) expect(factor(spelling, target)).toBe(size);
      }
    }
  });

  it("[H4] goes there and back between every pair of units", () => {
    for (const target of TARGETS) {
      const names = UNITS[target].map(([, spelling]) => spelling ?? "");
      for (const from of names) {
        for (const to of names) {
          const there = (7.3 * factor(from, target)) / factor(to, target);
          const back = (there * factor(to, target)) / factor(from, target);
          expect(Math.abs(back / 7.3 - 1)).toBeLessThan(1e-12);
        }
      }
    }
  });

  it("has one unit of its own at size 1 in every target, and no spelling twice", () => {
    for (const target of TARGETS) {
      expect(factor(target, target)).toBe(1);
      const spellings = UNITS[target].flatMap(([, ...names]) => names);
      expect(new Set(spellings).size).toBe(spellings.length);
      // Case may be ignored only where it does not change the size.
      const sizes = new Map<string, number>();
      for (const [size, ...names] of UNITS[target]) {
        for (const name of names) {
          expect(sizes.get(name.toLowerCase()) ?? size).toBe(size);
          sizes.set(name.toLowerCase(), size);
        }
      }
    }
  });
});

describe("temperatureToCelsius", () => {
  it.each([
    [25, "°C", 25],
    [25, "C", 25],
    [25, "deg C", 25],
    [212, "°F", 100],
    [32, "degF", 0],
    [-40, "Fahrenheit", -40],
    [273.15, "K", 0],
    [300, "kelvin", 26.85],
  ])("%d %s", (value, unit, celsius) => {
    expect(temperatureToCelsius(value, unit)).toBeCloseTo(celsius, 12);
  });

  it("refuses what is no temperature", () => {
    expect(temperatureToCelsius(25, "bar")).toEqual({
      reason: '"bar" is no unit of temperature known here',
      remedy: "Give °C, °F or K.",
    });
  });
});
