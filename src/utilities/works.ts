/**
 * Water works, effluent plant, oil heater, electric heat and compressor: plain conversions, each one
 * quantity or two.
 */

import { constant, derive, ONE, type Quantity } from "../numbers/quantity.js";
import { product, ratio, scaled } from "../steps/algebra.js";
import type { Conversion } from "./conversion.js";

/** Water works: pumping and softening. */
export interface WaterWorks {
  /** Electricity per water withdrawn. [kWh/m3] */
  readonly electricity: Quantity;
  /** Share of the water withdrawn that goes to the drain when softeners are regenerated. [-] */
  readonly reject: Quantity;
  /** Salt used for regeneration per softened water. [g/L] */
  readonly salt: Quantity;
}

/**
 * What one litre of process water takes: withdrawn = 1/(1 − reject).
 *
 * @param works - the water works
 * @returns flows at the fence per L
 */
export function waterConversions(works: WaterWorks): readonly Conversion[] {
  const drawn = derive(
    "withdrawn",
    "L/L",
    "1 / (1 − reject)",
    [works.reject],
    (r = 0) => 1 / (1 - r),
  );
  const rejected = derive(
    "reject",
    "L/L",
    "1/(1 − reject) − 1",
    [works.reject],
    (r = 0) => 1 / (1 - r) - 1,
  );
  const perLitre = scaled("works-power-per-litre", "kWh/L", works.electricity, 1e-3);
  return [
    { to: "water.withdrawn", rate: drawn },
    { to: "water.drained", rate: rejected },
    { to: "electricity", rate: product("works-power", perLitre, drawn) },
    { to: "salt", rate: works.salt },
  ];
}

/**
 * What one litre to the drain takes.
 *
 * @param electricity - effluent plant on site [kWh/m3]; absent for a municipal plant
 * @returns flows at the fence per L
 */
export function drainConversions(electricity: Quantity | undefined): readonly Conversion[] {
  const discharged: Conversion = { to: "water.discharged", rate: ONE };
  return electricity === undefined
    ? [discharged]
    : [
        discharged,
        { to: "electricity", rate: scaled("effluent-power", "kWh/L", electricity, 1e-3) },
      ];
}

/**
 * What one megajoule from the thermal-oil loop takes: fuel = 1 / (η (1 − loop loss)).
 *
 * @param fuel - fuel burned
 * @param efficiency - on net calorific value [-]
 * @param loss - loss of the loop [-]
 * @param pump - electricity of the pump [kWh/MJ]
 * @returns flows at the fence per MJ
 */
export function oilConversions(
  fuel: string,
  efficiency: Quantity,
  loss: Quantity,
  pump: Quantity,
): readonly Conversion[] {
  const rate = derive(
    "oil-heater-fuel",
    "MJ/MJ",
    "1 / (η (1 − loss))",
    [efficiency, loss],
    (eta = 1, l = 0) => 1 / (eta * (1 - l)),
  );
  return [
    { to: `fuel.${fuel}`, rate },
    { to: "electricity", rate: pump },
  ];
}

/**
 * What one megajoule of electric heat takes.
 *
 * @param efficiency - heat per electricity [-]
 * @returns kWh per MJ
 */
export function electricHeatConversions(efficiency: Quantity): readonly Conversion[] {
  const kwh = constant("megajoule", 1 / 3.6, "kWh/MJ", "1 MJ in kWh");
  return [{ to: "electricity", rate: ratio("electric-heat", "kWh/MJ", kwh, efficiency) }];
}
