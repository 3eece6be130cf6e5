import psychrolib from "psychrolib";
import { describe, expect, it } from "vitest";
import {
  humidityFromVapourPressure,
  humidityFromWetBulb,
  humidityRatio,
  moistAirEnthalpy,
  saturationHumidity,
  standardPressure,
  wetBulb,
} from "../../src/physics/moist-air.js";

const SEA_LEVEL = 1.01325;
const PASCAL = 101325;

psychrolib.SetUnitSystem(psychrolib.SI);

describe("moistAirEnthalpy", () => {
  // ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, table 2, saturated air at 101.325 kPa, as used in the
  // tests of psychrolib: t [°C], W_s [kg/kg], h_s [kJ/kg]. Worst agreement 0.9 %, at 85 °C, where the
  // perfect gas is furthest from air that is nearly half vapour.
  it.each([
    [5, 0.005425, 18.639, 0.0012],
    [25, 0.020173, 76.504, 0.0012],
    [50, 0.086863, 275.353, 0.0012],
    [85, 0.838105, 2307.539, 0.01],
  ])("of saturated air at %d °C is as tabulated", (t, W, h, tolerance) => {
    expect(Math.abs(moistAirEnthalpy(t, W) / h - 1)).toBeLessThan(tolerance);
  });

  // The same test file of psychrolib: 30 °C, W 0.02, 81 316 J/kg.
  it("[B11] of ordinary air", () => {
    expect(Math.abs(moistAirEnthalpy(30, 0.02) / 81.316 - 1)).toBeLessThan(3e-4);
  });

  // By hand: 1.006 · 150 + 0.1 (2501 + 1.86 · 150).
  it("[B11] of exhaust air", () => {
    expect(moistAirEnthalpy(150, 0.1)).toBeCloseTo(428.9, 9);
    expect(moistAirEnthalpy(150, 0.1)).toBeCloseTo(
      psychrolib.GetMoistAirEnthalpy(150, 0.1) / 1000,
      9,
    );
  });
});

describe("humidity", () => {
  // Test file of psychrolib: 3169.7 Pa of vapour in air of 95 461 Pa.
  it("[B10] from the vapour pressure", () => {
    expect(Math.abs(humidityFromVapourPressure(0.031697, 0.95461) / 0.0213603998 - 1)).toBeLessThan(
      1e-6,
    );
  });

  // ASHRAE, table 2 as above; a real mixture holds up to 1 % more than perfect gases (2 % at 85 °C).
  it.each([
    [5, 0.005425, 0.006],
    [25, 0.020173, 0.006],
    [50, 0.086863, 0.01],
    [85, 0.838105, 0.02],
  ])("of saturated air at %d °C is as tabulated", (t, W, tolerance) => {
    expect(Math.abs(saturationHumidity(t, SEA_LEVEL) / W - 1)).toBeLessThan(tolerance);
  });

  it("agrees with psychrolib within the difference of the two saturation curves", () => {
    for (const t of [1, 20, 25, 40, 60, 80]) {
      for (const share of [0.1, 0.5, 0.9]) {
        const other = psychrolib.GetHumRatioFromRelHum(t, share, PASCAL);
        expect(Math.abs(humidityRatio(t, share, SEA_LEVEL) / other - 1)).toBeLessThan(5e-4);
      }
    }
  });

  // psychrolib answers 1e-7 at and above boiling, and says nothing; here it must be refused.
  it("[B13] of saturated air has no value at boiling and above", () => {
    for (const t of [100, 120, 150]) {
      expect(() => saturationHumidity(t, SEA_LEVEL)).toThrow("vapour pressure = ");
      expect(psychrolib.GetSatHumRatio(t, PASCAL)).toBeLessThan(1e-6);
    }
    expect(saturationHumidity(99.9, SEA_LEVEL)).toBeGreaterThan(100);
    // Above 100 °C air that is not saturated is ordinary: 2 % at 150 °C, psychrolib 0.0645241.
    expect(Math.abs(humidityRatio(150, 0.02, SEA_LEVEL) / 0.0645241 - 1)).toBeLessThan(5e-4);
  });

  it("refuses percent for a share, negative vapour and odd pressures", () => {
    expect(() => humidityRatio(25, 50, SEA_LEVEL)).toThrow(
      "relative humidity = 50: expected 0 to 1",
    );
    expect(() => humidityRatio(25, -0.1, SEA_LEVEL)).toThrow("relative humidity = -0.1");
    expect(() => humidityFromVapourPressure(-0.01, 1)).toThrow("vapour pressure = -0.01");
    expect(() => humidityFromVapourPressure(1, 1)).toThrow("vapour pressure = 1");
    expect(() => humidityFromVapourPressure(0.01, 101.325)).toThrow("air pressure = 101.325");
  });
});

describe("wet bulb", () => {
  // ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, example 1, as used in the tests of psychrolib: 40 °C dry,
  // 20 °C wet: W 0.0065, h 56.7 kJ/kg, relative humidity 14 %.
  it("[B12] gives the handbook's first example", () => {
    const W = humidityFromWetBulb(40, 20, SEA_LEVEL);
    expect(Math.abs(W - 0.0065)).toBeLessThan(1e-4);
    expect(Math.abs(moistAirEnthalpy(40, W) - 56.7)).toBeLessThan(0.1);
    expect(Math.abs(W / humidityRatio(40, 0.14, SEA_LEVEL) - 1)).toBeLessThan(0.04);
  });

  it("agrees with psychrolib where that is right", () => {
    expect(
      Math.abs(
        humidityFromWetBulb(150, 60, SEA_LEVEL) /
          psychrolib.GetHumRatioFromTWetBulb(150, 60, PASCAL) -
          1,
      ),
    ).toBeLessThan(5e-4);
    for (const [t, W] of [
      [30, 0.01],
      [60, 0.05],
      [100, 0.1],
      [120, 0.1],
      [140, 0.1],
    ] as const) {
      const other = psychrolib.GetTWetBulbFromHumRatio(t, W, PASCAL);
      expect(Math.abs(wetBulb(t, W, SEA_LEVEL) - other)).toBeLessThan(0.004);
    }
  });

  // At 150 and 180 °C psychrolib's own search returns the dry bulb; its inverse, bisected below boiling, gives
  // 59.2267 and 60.8613 °C. The saturation curves differ by 0.01 %, which is worth 0.003 K.
  it.each([
    [150, 59.2267],
    [180, 60.8613],
  ])(
    "[B14] of hot exhaust at %d °C lies far below boiling, and goes back to the same humidity",
    (t, wet) => {
      const found = wetBulb(t, 0.1, SEA_LEVEL);
      expect(Math.abs(found - wet)).toBeLessThan(0.004);
      expect(Math.abs(humidityFromWetBulb(t, found, SEA_LEVEL) - 0.1)).toBeLessThan(1e-6);
    },
  );

  it("[B14] goes back to the same humidity everywhere", () => {
    for (const t of [20, 60, 99, 101, 150, 250, 350]) {
      for (const W of [0.02, 0.1, 1, 8]) {
        const saturated = t < 99.9 && W > saturationHumidity(t, SEA_LEVEL);
        if (saturated || (t > 150 && W < 0.05)) continue;
        expect(humidityFromWetBulb(t, wetBulb(t, W, SEA_LEVEL), SEA_LEVEL)).toBeCloseTo(W, 9);
      }
    }
  });

  it("is the dry bulb when the air is saturated", () => {
    expect(wetBulb(30, saturationHumidity(30, SEA_LEVEL), SEA_LEVEL)).toBeCloseTo(30, 9);
  });

  it("refuses what no air can be", () => {
    expect(() => wetBulb(20, 0.03, SEA_LEVEL)).toThrow(
      "humidity = 0.03: air of 20 °C is saturated",
    );
    expect(() => wetBulb(5, 0, SEA_LEVEL)).toThrow("has its wet bulb below freezing");
    expect(() => wetBulb(400, 0.1, SEA_LEVEL)).toThrow("dry-bulb temperature = 400");
    expect(() => humidityFromWetBulb(20, 21, SEA_LEVEL)).toThrow("wet-bulb temperature = 21");
    expect(() => humidityFromWetBulb(60, 10, SEA_LEVEL)).toThrow("is lower than perfectly dry air");
    expect(() => humidityFromWetBulb(Number.NaN, 10, SEA_LEVEL)).toThrow(
      "dry-bulb temperature = NaN",
    );
  });
});

describe("standardPressure", () => {
  // ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, table 1, as used in the tests of psychrolib; Pa.
  it.each([
    [0, 101325],
    [500, 95461],
    [1000, 89875],
  ])("[B16] at %d m is as tabulated", (altitude, pascal) => {
    expect(Math.abs(standardPressure(altitude) * 1e5 - pascal)).toBeLessThan(1);
  });

  it("refuses heights where nobody prints", () => {
    expect(() => standardPressure(9000)).toThrow("altitude = 9000: expected -500 to 5000 m");
  });
});
