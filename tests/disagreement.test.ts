import { describe, expect, it } from "vitest";
import { ends } from "./tools/shipped-factors.js";

// Where published sources, or a source and common practice, give different figures for one thing, the doubt of
// the default holds them all.
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
