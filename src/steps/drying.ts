/**
 * One balance for every machine that drives water off cloth with hot air: stenter, hot flue, oven,
 * tumbler; and for curing, where little water leaves and the air is a flow that runs by the hour.
 *
 *     Q = a (1.006 + 1.86 W₁)(t_e − t_h)(1 − ε) + w (2501 + 1.86 t_e − c_w t₁)
 *       + m (c + c_w X₂)(t₂ − t₁) + m [D(X₂) − D(X₁)] + standing kW × hours
 *
 * a dry air, w water driven off, m bone-dry cloth; 1 entry, 2 exit, e exhaust, h hall. In humidity mode
 * a = (w + v Q)/(W₂ − W₁), in flow mode a = G × hours; v is the vapour a direct burner adds, which only
 * carries its sensible heat because fuel is counted on net calorific value. Both are linear in w, m and
 * hours, so the whole splits into terms.
 *
 * Machine work other than this is electricity: fans, drives and extraction, kW × hours.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import {
  airHeatPerDryAir,
  burnerGain,
  dryAirPerWater,
  evaporationHeatPerWater,
} from "../physics/drying-balance.js";
import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { desorptionHeat } from "../physics/sorption.js";
import { product, scaled, total } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth, WaterPart } from "./cloth.js";
import type { StepFlow } from "./flows.js";
import { type HourPart, perHour } from "./hours.js";
import type { StepContext, StepResult } from "./step.js";
import type { Term } from "./term.js";

/** What a dryer is told besides its context. */
export interface DryerRun {
  /** Hours the machine runs. */
  readonly hours: readonly HourPart[];
  /** Moisture it leaves on the cloth. [kg/kg bone dry] */
  readonly moistureOut: Quantity;
  /** Temperature of the cloth at the exit, when it is not logged for lots. [°C] */
  readonly clothOut: Quantity;
  /** Whether a logged fixation temperature stands for `clothOut`. */
  readonly fixation: boolean;
  /** Exhaust temperature above the cloth temperature in fixation, or as a level otherwise. */
  readonly exhaust: { readonly approach: Quantity } | { readonly temperature: Quantity };
  /** How the air is ruled: by exhaust humidity [kg/kg] or by a flow [kg dry air/h]. */
  readonly air: { readonly humidity: Quantity } | { readonly flow: Quantity };
  /** Share of the exhaust's sensible heat given back to the incoming air. [-] */
  readonly recovery: Quantity;
  /** Loss through casing and ducts while hot. [kW] */
  readonly standing: Quantity;
  /** Electric power while running. [kW] */
  readonly power: Quantity;
  /** Hours hot and waiting per hour running. [-] */
  readonly idle: Quantity;
  /** Share of the running power drawn while waiting. [-] */
  readonly idlePower: Quantity;
  /** Where the heat comes from. */
  readonly heat: HeatSource;
}

/** Ways to heat a machine. */
export const HEAT_SOURCES = ["burner", "oil", "electric", "steam-coil"] as const;

/** A way to heat a machine. */
export type HeatSource = (typeof HEAT_SOURCES)[number];

const MASS = amountNamed("mass");
const KILO = 1e-3;
const HOUR_MJ = constant("kilowatt-hour", 3.6, "MJ/kWh");

/**
 * Flow that a heat source feeds from.
 *
 * @param source - the way of heating
 * @returns `heat.burner`, `heat.oil`, `heat.electric` or `heat.steam-coil`
 */
export function heatFlow(source: HeatSource): StepFlow {
  return `heat.${source}`;
}

/**
 * Dries or cures cloth by the balance above.
 *
 * @param context - the step
 * @param cloth - cloth as it comes in
 * @param run - settings of this machine and job
 * @returns terms for heat, electricity, evaporation and hours, and cloth at the exit
 */
export function dry(context: StepContext, cloth: Cloth, run: DryerRun): StepResult {
  const driven = drivenOff(context, cloth, run.moistureOut);
  const heat = heatTerms(context, cloth, run, driven);
  const hot = total("hot-hours", "1", ONE_HOUR, run.idle);
  const drawn = derive(
    "power-with-waiting",
    "1",
    "1 + idle × idle-power",
    [run.idle, run.idlePower],
    (idle = 0, share = 0) => 1 + idle * share,
  );
  const terms: Term[] = [
    ...heat.map((part) => ({ flow: heatFlow(run.heat), ...part })),
    ...perHour("standing-heat", run.hours, product("standing-loss", run.standing, HOUR_MJ, hot)).map(
      (part) => ({
        flow: heatFlow(run.heat),
        amount: part.amount,
        rate: fired(context, run, part.rate),
      }),
    ),
    ...perHour("power", run.hours, product("power-drawn", run.power, drawn)).map((part) => ({
      flow: "electricity" as const,
      ...part,
    })),
    ...driven.map((part) => ({ flow: "water.evaporated" as const, ...part })),
    ...perHour("held", run.hours, hot).map((part) => ({ flow: "machine.hours" as const, ...part })),
  ];
  return {
    terms,
    cloth: {
      water: [{ amount: MASS, rate: waterAt(context, run.moistureOut) }],
      temperature: run.clothOut,
      moisture: run.moistureOut,
    },
  };
}

const ONE_HOUR = constant("running", 1, "1", "the running hour itself");

/**
 * Water on cloth of one moisture, per conditioned mass.
 *
 * @param context - the step, for the bone-dry share
 * @param moisture - kg water per kg bone dry
 * @returns kg water per kg conditioned
 */
export function waterAt(context: StepContext, moisture: Quantity): Quantity {
  return product("water-on-cloth", moisture, context.kind.dryShare);
}

/**
 * Water that leaves between two states of the cloth, part by part.
 *
 * @param context - the step
 * @param cloth - cloth as it comes in
 * @param moistureOut - moisture it leaves with
 * @returns kg of water per amount; the parts add up to what is driven off
 */
export function drivenOff(
  context: StepContext,
  cloth: Cloth,
  moistureOut: Quantity,
): readonly WaterPart[] {
  const left = waterAt(context, moistureOut);
  const own = cloth.water.filter((part) => part.amount === MASS);
  const others = cloth.water.filter((part) => part.amount !== MASS);
  const rate = derive(
    "water-driven-off",
    "kg/kg",
    "water in − water left",
    [left, ...own.map((part) => part.rate)],
    (out = 0, ...water) => water.reduce((sum, part) => sum + part, 0) - out,
  );
  return [{ amount: MASS, rate }, ...others];
}

function heatTerms(
  context: StepContext,
  cloth: Cloth,
  run: DryerRun,
  driven: readonly WaterPart[],
): readonly WaterPart[] {
  const logged = run.fixation && context.takes("fixTemp");
  const exhaust = exhaustAt(run, run.clothOut);
  // A logged temperature enters as a level; what is left of a formula after its slope is its value at 0 °C.
  const base = constant("zero-celsius", 0, "°C", "0 °C");
  const atZero = exhaustAt(run, base);
  const result: { amount: WaterPart["amount"]; rate: Quantity }[] = [];

  for (const part of driven) {
    if (logged && part.amount === MASS) {
      result.push(
        { amount: amountNamed("mass"), rate: waterHeat(context, cloth, run, part.rate, atZero) },
        { amount: amountNamed("mass·fixTemp"), rate: waterSlope(context, run, part.rate) },
        {
          amount: amountNamed("mass[no fixTemp]"),
          rate: product("vapour-to-setting", waterSlope(context, run, part.rate), run.clothOut),
        },
      );
    } else {
      result.push({
        amount: part.amount,
        rate: waterHeat(context, cloth, run, part.rate, exhaust),
      });
    }
  }

  const slope = clothSlope(context, run);
  if (logged) {
    result.push(
      { amount: MASS, rate: clothHeat(context, cloth, run, base) },
      { amount: amountNamed("mass·fixTemp"), rate: slope },
      { amount: amountNamed("mass[no fixTemp]"), rate: product("cloth-to-setting", slope, run.clothOut) },
    );
  } else {
    result.push({ amount: MASS, rate: clothHeat(context, cloth, run, run.clothOut) });
  }

  if ("flow" in run.air) result.push(...airByTheHour(context, run, run.air.flow, logged));
  return result.map((part) => ({ amount: part.amount, rate: fired(context, run, part.rate) }));
}

// Heat per unit of a water part: the vapour itself and, in humidity mode, the air that carries it.
function waterHeat(
  context: StepContext,
  cloth: Cloth,
  run: DryerRun,
  water: Quantity,
  exhaust: Quantity,
): Quantity {
  const vapour = derive(
    "heat-per-water",
    "MJ/kg",
    "(2501 + 1.86 t_e − c_w t₁) / 1000",
    [exhaust, cloth.temperature],
    (tExhaust = 0, tIn = 0) => KILO * evaporationHeatPerWater(tExhaust, tIn),
  );
  if ("flow" in run.air) return product("drying-heat", water, vapour);
  const air = derive(
    "air-per-water",
    "MJ/kg",
    "(1.006 + 1.86 W₁)(t_e − t_h)(1 − ε) / (1000 (W₂ − W₁))",
    [context.hall.humidity, run.air.humidity, exhaust, context.hall.temperature, run.recovery],
    (W1 = 0, W2 = 0, tExhaust = 0, tHall = 0, recovery = 0) =>
      KILO * dryAirPerWater(W1, W2) * airHeatPerDryAir(W1, tExhaust, tHall) * (1 - recovery),
  );
  return product("drying-heat", water, total("heat-with-air", "MJ/kg", vapour, air));
}

// Rise of the vapour's heat with the logged temperature: 1.86 kJ/(kg K).
function waterSlope(context: StepContext, run: DryerRun, water: Quantity): Quantity {
  return scaled("vapour-slope", "MJ/(kg °C)", water, KILO * 1.86);
}

function clothSlope(context: StepContext, run: DryerRun): Quantity {
  return derive(
    "cloth-heat-slope",
    "MJ/(kg °C)",
    "m (c + c_w X₂) / 1000",
    [context.kind.heatCapacity, context.kind.dryShare, run.moistureOut],
    (capacity = 0, dryShare = 0, moisture = 0) =>
      KILO * (capacity + WATER_HEAT_CAPACITY * moisture * dryShare),
  );
}

// Heat taken up by the cloth and the water that stays, with the heat that binds the last water.
function clothHeat(
  context: StepContext,
  cloth: Cloth,
  run: DryerRun,
  clothOut: Quantity,
): Quantity {
  const { dryShare, heatCapacity, wettingHeat, sorptionHeat } = context.kind;
  const wet = cloth.moisture ?? constant("wet", 10, "kg/kg", "too wet to bind water");
  return derive(
    "cloth-heat",
    "MJ/kg",
    "[m (c + c_w X₂)(t₂ − t₁) + m (D(X₂) − D(X₁))] / 1000",
    [
      heatCapacity,
      dryShare,
      run.moistureOut,
      wet,
      clothOut,
      cloth.temperature,
      wettingHeat,
      sorptionHeat,
    ],
    (capacity = 0, dryShare = 0, out = 0, into = 0, t2 = 0, t1 = 0, wetting = 0, sorption = 0) =>
      KILO *
      ((capacity + WATER_HEAT_CAPACITY * out * dryShare) * (t2 - t1) +
        dryShare *
          (desorptionHeat(out, wetting, sorption) - desorptionHeat(into, wetting, sorption))),
  );
}

// Flow mode: G × hours × (1.006 + 1.86 W₁)(t_e − t_h)(1 − ε).
function airByTheHour(
  context: StepContext,
  run: DryerRun,
  flow: Quantity,
  logged: boolean,
): readonly WaterPart[] {
  const perDegree = derive(
    "air-heat-per-hour",
    "MJ/(h °C)",
    "G (1.006 + 1.86 W₁)(1 − ε) / 1000",
    [flow, context.hall.humidity, run.recovery],
    (G = 0, W1 = 0, recovery = 0) => KILO * G * airHeatPerDryAir(W1, 1, 0) * (1 - recovery),
  );
  const rise = (t2: Quantity): Quantity =>
    derive(
      "exhaust-above-hall",
      "°C",
      "t_e − t_h",
      [exhaustAt(run, t2), context.hall.temperature],
      (tExhaust = 0, tHall = 0) => tExhaust - tHall,
    );
  const steady = product("air-heat", perDegree, rise(run.clothOut));
  const zero = product("air-heat-at-zero", perDegree, rise(constant("zero-celsius", 0, "°C", "0 °C")));
  return run.hours.flatMap((part) =>
    logged && part.warm !== undefined && part.unlogged !== undefined
      ? [
          { amount: part.amount, rate: product("air-heat", zero, part.rate) },
          { amount: part.warm, rate: product("air-heat-slope", perDegree, part.rate) },
          {
            amount: part.unlogged,
            rate: product("air-heat-to-setting", perDegree, part.rate, run.clothOut),
          },
        ]
      : [{ amount: part.amount, rate: product("air-heat", steady, part.rate) }],
  );
}

function exhaustAt(run: DryerRun, clothOut: Quantity): Quantity {
  return "temperature" in run.exhaust
    ? run.exhaust.temperature
    : total("exhaust-temperature", "°C", clothOut, run.exhaust.approach);
}

// A direct burner adds vapour that needs more air, and a little of its fuel goes unburnt.
function fired(context: StepContext, run: DryerRun, rate: Quantity): Quantity {
  if (run.heat !== "burner") return rate;
  const exhaust = exhaustAt(run, run.clothOut);
  const humidity = "humidity" in run.air ? run.air.humidity : undefined;
  const gain = derive(
    "burner-gain",
    "1",
    "1 / (η_b (1 − v [(1.006 + 1.86 W₁)(t_e − t_h)(1 − ε)/(W₂ − W₁) + 1.86 (t_e − t_h)]))",
    [
      context.burnerVapour,
      context.hall.humidity,
      exhaust,
      context.hall.temperature,
      run.recovery,
      context.burnerEfficiency,
      ...(humidity === undefined ? [] : [humidity]),
    ],
    (vapour = 0, W1 = 0, tExhaust = 0, tHall = 0, recovery = 0, efficiency = 1, W2 = NaN) =>
      burnerGain(
        vapour,
        airHeatPerDryAir(W1, tExhaust, tHall),
        Number.isNaN(W2) ? undefined : W2 - W1,
        recovery,
        tExhaust,
        tHall,
      ) / efficiency,
  );
  return product("fired", rate, gain);
}
