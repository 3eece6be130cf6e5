import psychrometrics from "psychrolib";
import { describe, expect, it } from "vitest";
import { constant, ONE } from "../../src/numbers/quantity.js";
import type { Air, DryerRun } from "../../src/steps/dryer-run.js";
import { dryingHeat, firedIn } from "../../src/steps/drying-heat.js";
import { stenterCure } from "../../src/steps/stenter.js";
import { released } from "../../src/steps/water.js";
import { amountOf, clothAt, contextFor, LOT, part, type Told, valueOf } from "./context.js";

const kelvin = (value: number) => constant("temperature", value, "°C");
const number = (value: number, unit = "1") => constant("number", value, unit);

function runOf(air: Air, over: Partial<DryerRun> = {}): DryerRun {
  return {
    hours: [],
    moistureOut: number(0, "kg/kg"),
    clothOut: kelvin(25),
    air,
    standing: number(0, "kW"),
    power: number(0, "kW"),
    idle: number(0),
    idlePower: number(0),
    heat: "oil",
    ...over,
  };
}

/** Fibres without heat of their own, so that only water and air count. */
const WATER_ONLY = { dryShare: 1, heatCapacity: 0, regain: 0, wettingHeat: 0 };

/** Heat per kg of water for cloth at 25 °C in a hall of 25 °C. [MJ/kg] */
function perWater(W1: number, W2: number, tExhaust: number, recovery = 0): number {
  const context = contextFor(stenterCure, {
    cloth: WATER_ONLY,
    hall: { temperature: 25, humidity: W1 },
  });
  const cloth = clothAt(context, 1, 25);
  const air = {
    rise: number(W2 - W1, "kg/kg"),
    fan: number(0, "kg/h"),
    exhaust: kelvin(tExhaust),
    recovery: number(recovery),
  };
  const parts = dryingHeat(context, cloth, released(cloth, number(0, "kg/kg")), runOf(air));
  let sum = 0;
  for (const { amount, rate } of parts) sum += amountOf(amount, [LOT]) * valueOf(rate);
  return sum / 224;
}

describe("heat per water", () => {
  // Computed by hand from the enthalpy of moist air, liquid water 4.19 kJ/(kg K); printed to 10 kJ.
  it.each([
    [0.15, 130, 3.41],
    [0.1, 130, 3.83],
    [0.05, 130, 5.33],
    [0.04, 150, 6.94],
    [0.03, 150, 9.08],
  ])("is, with %d kg/kg at %d °C, %d MJ/kg", (W2, tExhaust, expected) => {
    expect(Math.abs(perWater(0.01, W2, tExhaust) - expected)).toBeLessThanOrEqual(0.005);
  });

  // The same by hand with round inputs, exact: 428.900 and 50.625 kJ per kg of dry air, 11.1111 kg of it.
  it("is 1.138446 kWh/kg from 25 °C and 0.010 to 150 °C and 0.100", () => {
    expect(Math.abs(perWater(0.01, 0.1, 150) / 3.6 - 1.138446)).toBeLessThanOrEqual(1e-6);
  });

  // Judge: the open psychrometric library after the ASHRAE handbook, for the enthalpies of both airs.
  it.each([
    [0.00988, 0.03, 150],
    [0.00988, 0.05, 120],
    [0.00988, 0.2, 150],
    [0.015, 0.08, 125],
  ])("agrees with the handbook's enthalpies for %d to %d kg/kg at %d °C", (W1, W2, tExhaust) => {
    psychrometrics.SetUnitSystem(psychrometrics.SI);
    const rise =
      psychrometrics.GetMoistAirEnthalpy(tExhaust, W2) - psychrometrics.GetMoistAirEnthalpy(25, W1);
    const expected = rise / 1e6 / (W2 - W1) - (4.186 * 25) / 1000;
    expect(perWater(W1, W2, tExhaust)).toBeCloseTo(expected, 9);
  });

  // The BREF on textiles, 2003, section 4.8.1: air heating can take up to 60 % of the energy when the
  // exhaust is not watched. 0.04 kg/kg at 150 °C is such a stenter.
  it("is mostly air when the exhaust is dry", () => {
    const vapour = (2501 + 1.86 * 150 - 4.186 * 25) / 1000;
    const share = 1 - vapour / perWater(0.01, 0.04, 150);
    expect(share).toBeGreaterThan(0.55);
    expect(share).toBeLessThan(0.65);
  });

  it("gives recovery its part of the air, and none of the vapour", () => {
    const none = perWater(0.01, 0.05, 130);
    const all = perWater(0.01, 0.05, 130, 1);
    expect(all).toBeCloseTo((2501 + 1.86 * 130 - 4.186 * 25) / 1000, 12);
    expect(perWater(0.01, 0.05, 130, 0.3)).toBeCloseTo(none - 0.3 * (none - all), 12);
  });
});

describe("binding heat of the last water", () => {
  function heat(X1: number, X2: number): number {
    const context = contextFor(stenterCure, {
      cloth: { dryShare: 1, heatCapacity: 0 },
      hall: { temperature: 25 },
    });
    const cloth = clothAt(context, X1, 25);
    const run = runOf("still", { moistureOut: number(X2, "kg/kg") });
    const parts = dryingHeat(context, cloth, released(cloth, run.moistureOut), run);
    let sum = 0;
    for (const { amount, rate } of parts) sum += amountOf(amount, [LOT]) * valueOf(rate);
    return (1000 * sum) / 224 - (X1 - X2) * (2501 + 1.86 * 25 - 4.186 * 25);
  }

  // Morton and Hearle, Physical Properties of Textile Fibres, table 8.1: wetting cotton from bone dry sets
  // 46 J/g free, so drying it through takes that much more.
  it("is the heat of wetting when cloth is dried through", () => {
    expect(heat(0.6, 0)).toBeCloseTo(46, 9);
  });

  // The same, section 8.3: about 1250 J per g of water at zero regain.
  it("is 1250 kJ per kg for the very last of it", () => {
    expect(heat(1e-5, 0) / 1e-5 / 1250).toBeCloseTo(1, 3);
  });

  it("is the same when cloth comes from a pad, wetter than any lot needs to bind water", () => {
    const context = contextFor(stenterCure, { cloth: { heatCapacity: 0 } });
    const run = runOf("still", { moistureOut: number(0, "kg/kg") });
    const padded = {
      water: [part("mass", 0.07), part("mass[no pickup]", 0.7)],
      temperature: kelvin(25),
    };
    const parts = dryingHeat(context, padded, released(padded, run.moistureOut), run);
    let sum = 0;
    for (const { amount, rate } of parts) sum += amountOf(amount, [LOT]) * valueOf(rate);
    const vapour = 0.77 * (2501 + 1.86 * 25 - 4.186 * 25);
    expect((1000 * sum) / 224 - vapour).toBeCloseTo(46 / 1.075, 9);
  });

  it("is nothing above saturation", () => {
    expect(heat(0.6, 0.08)).toBeCloseTo(0, 9);
  });
});

describe("burner firing into the machine", () => {
  const told: Told = { hall: { temperature: 25, humidity: 0.01 }, burnerEfficiency: 0.99 };
  const context = contextFor(stenterCure, told);
  const fired = (air: Air, heat: DryerRun["heat"] = "burner") =>
    valueOf(firedIn(context, runOf(air, { heat, clothOut: kelvin(160) }), ONE));

  // By hand: 0.045 kg/MJ × 1.86 × (170 − 25) kJ/kg = 12.14 kJ/MJ.
  it("heats its own vapour at a flow", () => {
    const air = { flow: number(5000, "kg/h"), approach: kelvin(10), recovery: number(0) };
    expect(fired(air)).toBeCloseTo(1 / (1 - 0.0121365) / 0.99, 9);
  });

  // By hand: 0.045 × (1.0246 × 100 / 0.09 + 1.86 × 100) = 59.60 kJ/MJ.
  it("brings air along for its own vapour at a humidity", () => {
    const air = {
      rise: number(0.09, "kg/kg"),
      exhaust: kelvin(125),
      recovery: number(0),
      fan: number(0, "kg/h"),
    };
    expect(fired(air)).toBeCloseTo(1 / (1 - 0.0596) / 0.99, 9);
  });

  it("leaves fuel unburnt and nothing more where no air is moved", () => {
    expect(fired("still")).toBeCloseTo(1 / 0.99, 12);
  });

  it.each(["oil", "electric", "steam-coil"] as const)("is not %s", (heat) => {
    expect(
      fired(
        {
          rise: number(0.09, "kg/kg"),
          exhaust: kelvin(125),
          recovery: ONE,
          fan: number(0, "kg/h"),
        },
        heat,
      ),
    ).toBe(1);
  });
});
