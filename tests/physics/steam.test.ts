import { describe, expect, it } from "vitest";
import {
  liquidEnthalpy,
  saturationPressure,
  saturationTemperature,
  steamEnthalpy,
  vapourEnthalpy,
  waterEnthalpy,
} from "../../src/physics/steam.js";

const BAR_PER_PSI = 0.06894757293;
const KJ_PER_KG_PER_BTU_PER_LB = 2.326;

const celsius = (fahrenheit: number): number => (fahrenheit - 32) / 1.8;

describe("saturation", () => {
  // ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, table 3, as used in the tests of psychrolib; Pa.
  // Agreement within 2e-5, half a unit of the last printed digit.
  it.each([
    [25, 3169.7],
    [50, 12351.3],
    [100, 101418.0],
    [150, 476101.4],
  ])("[B5] pressure at %d °C is as tabulated", (t, pascal) => {
    expect(Math.abs((saturationPressure(t) * 1e5) / pascal - 1)).toBeLessThan(2e-5);
  });

  it("[B4] temperature undoes pressure", () => {
    for (let t = 10; t <= 350; t += 7) {
      expect(Math.abs(saturationTemperature(saturationPressure(t)) / t - 1)).toBeLessThan(1e-9);
    }
  });

  // Steam tables after IAPWS-IF97, two sets of printed values, from memory: p [bar], t [°C], h_g, h_fg [kJ/kg].
  it.each([
    [4, 143.6, 2738, 2133],
    [6, 158.8, 2756, 2086],
    [8, 170.4, 2768, 2047],
    [10, 179.9, 2777, 2014],
  ])("steam of %d bar is as in the tables", (p, t, vapour, evaporation) => {
    expect(Math.abs(saturationTemperature(p) - t)).toBeLessThan(0.06);
    expect(Math.abs(vapourEnthalpy(p) - vapour)).toBeLessThan(0.8);
    expect(Math.abs(vapourEnthalpy(p) - liquidEnthalpy(p) - evaporation)).toBeLessThan(0.9);
  });
});

describe("enthalpies", () => {
  // US DOE, Steam Tip Sheet 15, Benchmark the Fuel Cost of Steam Generation: energy to make one pound of
  // saturated steam from feed water of 50, 100, 150, 200 and 250 °F, Btu/lb. Worst agreement 0.3 Btu/lb at
  // 150 psig; the row of 600 psig stands 1.5 Btu/lb below the formulation.
  it.each([
    [150, [1178, 1128, 1078, 1028, 977], 1],
    [600, [1184, 1134, 1084, 1034, 984], 2],
  ])("[B6, B8] raise steam of %d psig as the tip sheet says", (gauge, printed, tolerance) => {
    const p = (gauge + 14.696) * BAR_PER_PSI;
    printed.forEach((expected, i) => {
      const heat = vapourEnthalpy(p) - waterEnthalpy(p, celsius(50 + 50 * i));
      expect(Math.abs(heat / KJ_PER_KG_PER_BTU_PER_LB - expected)).toBeLessThan(tolerance);
    });
  });

  it("of water and steam meet the boiling line", () => {
    for (const p of [0.1, 1.01325, 8, 40, 160]) {
      const t = saturationTemperature(p);
      expect(steamEnthalpy(p, t)).toBeCloseTo(vapourEnthalpy(p), 6);
      expect(waterEnthalpy(p, t)).toBeCloseTo(liquidEnthalpy(p), 6);
    }
  });

  // IAPWS R7-97(2012), tables 5 and 15, in bar and °C.
  it("of water at 30 bar and 26.85 °C, and of thin steam at 426.85 °C, are as printed", () => {
    expect(waterEnthalpy(30, 26.85)).toBeCloseTo(115.331273, 5);
    expect(steamEnthalpy(0.035, 426.85)).toBeCloseTo(3335.68375, 4);
  });

  // Superheat costs about 2.0 kJ/(kg K) just above boiling at one bar: common practice, no source.
  it("rise with superheat at about the usual rate", () => {
    expect((steamEnthalpy(1, 150) - steamEnthalpy(1, 102)) / 48).toBeCloseTo(2.0, 1);
  });
});

describe("refusals", () => {
  it("name the reading and the range", () => {
    expect(() => saturationPressure(-1)).toThrow(
      "saturation temperature = -1: expected 0 to 373.946",
    );
    expect(() => saturationPressure(Number.NaN)).toThrow("saturation temperature = NaN");
    expect(() => saturationTemperature(0)).toThrow("saturation pressure = 0: expected 0.00611213");
    expect(() => vapourEnthalpy(170)).toThrow(
      "steam pressure = 170: expected 0.00611213 to 165.29",
    );
    expect(() => liquidEnthalpy(0.001)).toThrow("steam pressure = 0.001");
    expect(() => steamEnthalpy(1, 801)).toThrow("steam temperature = 801");
    expect(() => waterEnthalpy(1, 351)).toThrow("water temperature = 351");
    expect(() => waterEnthalpy(1001, 20)).toThrow("water pressure = 1001");
  });

  it("tell water that would be steam, and the other way round", () => {
    expect(() => waterEnthalpy(7, 170)).toThrow("water of 170 °C boils below 7.92 bar absolute");
    expect(() => steamEnthalpy(8, 165)).toThrow("steam of 8 bar absolute is not below 170.4 °C");
  });

  it("leave both ends of the range in", () => {
    expect(saturationPressure(0)).toBeCloseTo(0.00611213, 8);
    expect(saturationPressure(373.946)).toBeCloseTo(220.64, 2);
    expect(saturationTemperature(220.64)).toBeCloseTo(373.946, 3);
    expect(vapourEnthalpy(165.29)).toBeGreaterThan(2500);
    expect(saturationTemperature(165.29)).toBeCloseTo(350, 2);
  });
});
