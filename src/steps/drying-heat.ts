/**
 * Heat of the drying balance, split into terms: vapour, cloth and air, each linear in what lots log. A
 * logged fixation temperature enters as a level: the formula at 0 °C plus its slope times the temperature.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import {
  airHeatPerDryAir,
  burnerGain,
  evaporationHeatPerWater,
} from "../physics/drying-balance.js";
import { VAPOUR_HEAT_CAPACITY, WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { desorptionHeat } from "../physics/sorption.js";
import { product, scaled, total } from "./algebra.js";
import { type Amount, amountNamed } from "./amounts.js";
import type { Cloth, WaterPart } from "./cloth.js";
import type { Air, DryerRun } from "./dryer-run.js";
import { drawnFrom } from "./heat-source.js";
import type { StepContext } from "./step.js";
import { moistureOf } from "./water.js";

/** Heat of a part: MJ = amount × rate. */
interface HeatPart {
  readonly amount: Amount;
  readonly rate: Quantity;
}

/** A rate that rises with the cloth temperature: its value at 0 °C, its slope, its value at the setting. */
interface Rising {
  readonly zero: Quantity;
  readonly slope: Quantity;
  readonly set: Quantity;
}

const KILO = 1e-3;
const MASS = amountNamed("mass");
const ZERO_CELSIUS = constant("zero-celsius", 0, "°C", "0 °C");
const WET = constant("wet", 10, "kg/kg", "moisture at which all further water is free");

/**
 * Heat to dry or cure cloth, without standing losses and before any burner.
 *
 * @param context - the step
 * @param cloth - cloth as it comes in
 * @param driven - water driven off
 * @param run - settings, with the moisture that is really left
 * @returns MJ per amount; the parts add up
 */
export function dryingHeat(
  context: StepContext,
  cloth: Cloth,
  driven: readonly WaterPart[],
  run: DryerRun,
): readonly HeatPart[] {
  const logged = run.air === "still" || "flow" in run.air ? context.takes("fixTemp") : false;
  const perMass = (rising: Rising): readonly HeatPart[] =>
    logged
      ? [
          { amount: MASS, rate: rising.zero },
          { amount: amountNamed("mass·fixTemp"), rate: rising.slope },
          {
            amount: amountNamed("mass[no fixTemp]"),
            rate: product("to-setting", rising.slope, run.clothOut),
          },
        ]
      : [{ amount: MASS, rate: rising.set }];
  return [
    ...driven.flatMap(({ amount, rate }) => {
      const vapour = vapourHeat(context, cloth, run, rate);
      // Liquor of the pad has no amount with temperatures: its vapour is taken at the setting.
      return amount === MASS ? perMass(vapour) : [{ amount, rate: vapour.set }];
    }),
    ...perMass(clothHeat(context, cloth, run)),
    ...airByTheHour(context, run, logged),
  ];
}

/**
 * What a source must give so that the machine gets the heat: a burner firing into the machine adds vapour
 * that is heated and, in humidity mode, needs more air, and leaves a little fuel unburnt. The gain is taken
 * at the temperature set, also for lots that logged another: 10 °C move it by less than 0.1 %.
 *
 * @param context - the step
 * @param run - settings
 * @param needed - heat needed per unit of amount
 * @returns heat drawn per unit of amount
 */
export function firedIn(context: StepContext, run: DryerRun, needed: Quantity): Quantity {
  const { air } = run;
  const drawn = drawnFrom(context, run.heat, needed);
  if (run.heat !== "burner" || air === "still") return drawn;
  const gain = derive(
    "burner-gain",
    "1",
    "rise" in air
      ? "1 / (1 − v [(1.006 + 1.86 W₁)(t_e − t_h)(1 − ε)/rise + 1.86 (t_e − t_h)])"
      : "1 / (1 − v · 1.86 (t_e − t_h))",
    [
      context.burnerVapour,
      context.hall.humidity,
      exhaustAt(air, run.clothOut),
      context.hall.temperature,
      air.recovery,
      ...("rise" in air ? [air.rise] : []),
    ],
    (vapour = 0, W1 = 0, tExhaust = 0, tHall = 0, recovery = 0, rise?: number) =>
      burnerGain(vapour, airHeatPerDryAir(W1, tExhaust, tHall), rise, recovery, tExhaust, tHall),
  );
  return product("fired", drawn, gain);
}

function exhaustAt(air: Air, clothOut: Quantity): Quantity {
  if (air === "still") return clothOut;
  if ("rise" in air) return air.exhaust;
  return total("exhaust-temperature", "°C", clothOut, air.approach);
}

// The vapour itself and, in humidity mode, the air that carries it; per unit of a water part.
function vapourHeat(context: StepContext, cloth: Cloth, run: DryerRun, water: Quantity): Rising {
  const at = (clothOut: Quantity): Quantity => {
    const exhaust = exhaustAt(run.air, clothOut);
    const vapour = derive(
      "heat-per-water",
      "MJ/kg",
      "(2501 + 1.86 t_e − c_w t₁) / 1000",
      [exhaust, cloth.temperature],
      (tExhaust = 0, tIn = 0) => KILO * evaporationHeatPerWater(tExhaust, tIn),
    );
    return product("drying-heat", water, withAir(context, run.air, exhaust, vapour));
  };
  return {
    zero: at(ZERO_CELSIUS),
    slope: scaled("vapour-slope", "MJ/(kg °C)", water, KILO * VAPOUR_HEAT_CAPACITY),
    set: at(run.clothOut),
  };
}

function withAir(context: StepContext, air: Air, exhaust: Quantity, vapour: Quantity): Quantity {
  if (air === "still" || "flow" in air) return vapour;
  const heat = derive(
    "air-per-water",
    "MJ/kg",
    "(1.006 + 1.86 W₁)(t_e − t_h)(1 − ε) / (1000 rise)",
    [context.hall.humidity, air.rise, exhaust, context.hall.temperature, air.recovery],
    (W1 = 0, rise = 1, tExhaust = 0, tHall = 0, recovery = 0) =>
      (KILO * airHeatPerDryAir(W1, tExhaust, tHall) * (1 - recovery)) / rise,
  );
  return total("heat-with-air", "MJ/kg", vapour, heat);
}

// Heat taken up by the cloth and the water that stays, with the heat that binds the last water.
function clothHeat(context: StepContext, cloth: Cloth, run: DryerRun): Rising {
  const { dryShare, heatCapacity, wettingHeat, sorptionHeat } = context.kind;
  const before = moistureOf(context, cloth) ?? WET;
  const slope = derive(
    "cloth-heat-slope",
    "MJ/(kg °C)",
    "m (c + c_w X₂) / 1000",
    [heatCapacity, dryShare, run.moistureOut],
    (capacity = 0, dry = 0, out = 0) => KILO * (capacity + WATER_HEAT_CAPACITY * out * dry),
  );
  const at = (clothOut: Quantity): Quantity =>
    derive(
      "cloth-heat",
      "MJ/kg",
      "m (c + c_w X₂)(t₂ − t₁) / 1000 + m (D(X₂) − D(X₁)) / 1000",
      [
        slope,
        clothOut,
        cloth.temperature,
        dryShare,
        run.moistureOut,
        before,
        wettingHeat,
        sorptionHeat,
      ],
      (rise = 0, t2 = 0, t1 = 0, dry = 0, out = 0, into = 0, wetting = 0, sorption = 0) =>
        rise * (t2 - t1) +
        KILO *
          dry *
          (desorptionHeat(out, wetting, sorption) - desorptionHeat(into, wetting, sorption)),
    );
  return { zero: at(ZERO_CELSIUS), slope, set: at(run.clothOut) };
}

// Flow mode: G × hours × (1.006 + 1.86 W₁)(t_e − t_h)(1 − ε). Set-up runs at the temperature set.
function airByTheHour(context: StepContext, run: DryerRun, logged: boolean): readonly HeatPart[] {
  const { air } = run;
  if (air === "still" || "rise" in air) return [];
  const slope = derive(
    "air-heat-slope",
    "MJ/(h °C)",
    "G (1.006 + 1.86 W₁)(1 − ε) / 1000",
    [air.flow, context.hall.humidity, air.recovery],
    (G = 0, W1 = 0, recovery = 0) => KILO * G * airHeatPerDryAir(W1, 1, 0) * (1 - recovery),
  );
  const rise = (clothOut: Quantity): Quantity =>
    derive(
      "exhaust-above-hall",
      "°C",
      "t_e − t_h",
      [exhaustAt(air, clothOut), context.hall.temperature],
      (tExhaust = 0, tHall = 0) => tExhaust - tHall,
    );
  const set = product("air-heat", slope, rise(run.clothOut));
  const zero = product("air-heat-at-zero", slope, rise(ZERO_CELSIUS));
  return run.hours.flatMap(({ amount, rate, warm, unlogged }) =>
    logged && warm !== undefined && unlogged !== undefined
      ? [
          { amount, rate: product("air-heat", zero, rate) },
          { amount: warm, rate: product("air-heat", slope, rate) },
          { amount: unlogged, rate: product("air-heat", slope, rate, run.clothOut) },
        ]
      : [{ amount, rate: product("air-heat", set, rate) }],
  );
}
