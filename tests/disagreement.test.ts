import { describe, expect, it } from "vitest";
import { airHeatPerDryAir, evaporationHeatPerWater } from "../src/physics/drying-balance.js";
import { humidityRatio } from "../src/physics/moist-air.js";
import { interval95 } from "../src/numbers/distributions.js";
import { ends, newest } from "./tools/shipped-factors.js";

// Where published sources, or a source and common practice, give different figures for one thing, the doubt of
// the default holds them all: its bounds where it has bounds, else its 95 % interval.
const TOPICS: readonly (readonly [factor: string, low: number, high: number, who: string])[] = [
  // L/kg. Handbook table for printing of cotton 8 to 16, reference document of 2003 for continuous washing
  // after reactive dyeing 10 to 15, US print after-washing 110 (13.2 gal/lb); all from memory.
  ["wash-range.fresh-water", 8, 110, "handbook table; BREF on textiles 2003; US fact sheets"],
  // Share fixed. US EPA 1995 60 to 90 %; Smith, in a review, 50 to 80 %; mills in Finland about 60 %.
  [
    "substance.reactive-dye.fixed",
    0.5,
    0.9,
    "US EPA 1995; Smith 2003; Kalliala and Talvenmaa 2000",
  ],
  // Share fixed, US EPA 1995.
  ["substance.acid-dye.fixed", 0.8, 0.93, "US EPA 1995"],
  ["substance.disperse-dye.fixed", 0.8, 0.92, "US EPA 1995"],
  // kg/kg. Reference document of 2003, section 4.8.1: commonly found 0.05, best 0.10 to 0.15.
  ["stenter-dry.exhaust-humidity", 0.05, 0.15, "BREF on textiles 2003"],
  // °C of the worked ratios of stenter heat, 3.4 to 9.1 MJ per kg of water.
  ["stenter-dry.exhaust-temperature", 130, 150, "worked from moist-air enthalpies"],
  // s. 8 to 12 minutes is common practice, no source; 15 to 20 stands in texts on star and loop steamers.
  ["steamer.dwell", 480, 1200, "common practice; texts on steamers"],
  // kJ/(kg K). Morton and Hearle 1.03; other tables about 1.3.
  ["fibre.polyester.heat-capacity", 1.03, 1.3, "Morton and Hearle 2008; other tables"],
  // kg/kg. Equilibrium 7 to 8 %, commercial 8.5 %.
  ["fibre.cotton.regain", 0.07, 0.085, "Morton and Hearle 2008; commercial regain"],
  // Share of steam lost between boiler and users: general guides 5 to 15 %, from memory.
  ["boiler.line-loss", 0.05, 0.15, "general guides"],
  // L/m², 5 to 30 g/m² from memory; no open paper with figures was found.
  ["printer.ink-laydown", 0.005, 0.03, "from memory"],
];

describe("the doubt of a default", () => {
  it.each(TOPICS)("%s spans what sources say, %d to %d (%s)", (factor, low, high) => {
    const [from, to] = ends(factor);
    expect(from).toBeLessThanOrEqual(low * 1.0001);
    expect(to).toBeGreaterThanOrEqual(high * 0.9999);
  });
});

// g CO2e/kWh in 2024, of Ember's yearly data (CC BY 4.0) and of another open set of yearly intensities; places
// that have both for one year.
const GRIDS: readonly (readonly [place: string, ember: number, other: number])[] = [
  ["ITA", 287.75, 316],
  ["PRT", 111.8, 149],
  ["TUR", 469.7, 437],
  ["ESP", 146.15, 153],
  ["DEU", 342.06, 379],
  ["GBR", 215.79, 200],
  ["USA", 383.55, 420],
  ["IND", 708.96, 613],
  ["BGD", 694.63, 602],
  ["PAK", 398.61, 291],
  ["VNM", 486.13, 441],
  ["CHN", 557.5, 535],
  ["MAR", 577.65, 573],
  ["EGY", 574.5, 454],
];

describe("the doubt of a grid", () => {
  it.each(GRIDS)("%s spans both open sets, %d and %d g/kWh", (place, ember, other) => {
    const { spread, year } = newest(`grid.${place}.intensity`);
    const [low, high] = interval95(spread);
    expect(year).toBe(2024);
    for (const grams of [ember, other]) {
      expect(low).toBeLessThanOrEqual(grams / 1000);
      expect(high).toBeGreaterThanOrEqual(grams / 1000);
    }
  });
});

describe("the heat of a stenter", () => {
  // No setting of its own: it follows from exhaust and hall. Lowest and highest, without recovery, in MJ/kg.
  const heat = (end: 0 | 1): number => {
    const other = end === 0 ? 1 : 0;
    const exhaust = ends("stenter-dry.exhaust-temperature")[end];
    const hall = ends("hall.temperature")[end];
    const damp = humidityRatio(hall, ends("hall.relative-humidity")[end], 1.01325);
    const rise = ends("stenter-dry.exhaust-humidity")[other] - damp;
    const air = airHeatPerDryAir(damp, exhaust, hall) / rise;
    return (evaporationHeatPerWater(exhaust, hall) + air) / 1000;
  };

  it("spans per water driven off what the moist-air balance gives for exhausts found in mills", () => {
    // Worked by hand from enthalpies of moist air, 25 °C and 0.010 kg/kg in: 3.41 MJ/kg at 0.15 kg/kg and
    // 130 °C, 5.33 at 0.05 and 130 °C, 9.08 at 0.03 and 150 °C. Common practice, no source: 3.6 to 6.5.
    expect(heat(0)).toBeLessThanOrEqual(3.41);
    expect(heat(1)).toBeGreaterThanOrEqual(9.08);
  });

  it("spans per cloth what is printed for drying on stenters", () => {
    // Carbon Trust 1997, as reprinted by Lawrence Berkeley National Laboratory in 2010: 2.5 to 7.5 GJ per tonne
    // of cloth, from memory. Cloth comes from a squeeze; heating it and the casing's loss come on top.
    const water = (end: 0 | 1): number =>
      ends("squeeze.moisture-out")[end] - ends("stenter-dry.moisture-out")[end === 0 ? 1 : 0];
    expect(water(0) * heat(0)).toBeLessThanOrEqual(2.5);
    expect(water(1) * heat(1)).toBeGreaterThanOrEqual(7.5);
  });
});
