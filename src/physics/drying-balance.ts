/**
 * The pieces of one balance for every machine that dries with hot air.
 *
 *     Q = a A (1 − ε) + w B + …          A heat per kg dry air, B heat per kg water evaporated
 *     a = (w + v Q) / (W₂ − W₁)          dry air that carries off the water and the burner's own vapour
 *     v Q also leaves at exhaust temperature and brings 1.86 (t_e − t_h) per kg with it
 *
 * With Q on both sides the balance stays linear: everything else is multiplied by one gain. All heats in kJ.
 */

import { InputError, within } from "../problems/input-error.js";
import {
  AIR_HEAT_CAPACITY,
  VAPOUR_ENTHALPY_AT_ZERO,
  VAPOUR_HEAT_CAPACITY,
  WATER_HEAT_CAPACITY,
} from "./moist-air.js";

/** Exhaust wetter than this is not met in machines open at both ends. [kg/kg dry air] */
const WETTEST_EXHAUST = 0.25;

const KJ_PER_MJ = 1000;

/**
 * Heat to turn water on the cloth into vapour in the exhaust.
 *
 *     B = 2501 + 1.86 t_e − 4.186 t₁
 *
 * @param tExhaust - exhaust temperature t_e [°C]
 * @param tClothIn - cloth temperature at the entry t₁ [°C]
 * @returns heat [kJ/kg water]
 */
export function evaporationHeatPerWater(tExhaust: number, tClothIn: number): number {
  return VAPOUR_ENTHALPY_AT_ZERO + VAPOUR_HEAT_CAPACITY * tExhaust - WATER_HEAT_CAPACITY * tClothIn;
}

/**
 * Heat to bring hall air, with the vapour it holds already, to exhaust temperature.
 *
 *     A = (1.006 + 1.86 W₁)(t_e − t_h)
 *
 * @param W1 - humidity of the hall air [kg/kg dry air]
 * @param tExhaust - exhaust temperature t_e [°C]
 * @param tHall - temperature of the hall air t_h [°C]
 * @returns heat [kJ/kg dry air]
 */
export function airHeatPerDryAir(W1: number, tExhaust: number, tHall: number): number {
  return (AIR_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * W1) * (tExhaust - tHall);
}

/**
 * Dry air that carries off one kilogram of water.
 *
 *     1 / (W₂ − W₁)
 *
 * @param W1 - humidity of the hall air, from 0 [kg/kg dry air]
 * @param W2 - humidity of the exhaust, above `W1` and at most 0.25 [kg/kg dry air]
 * @returns dry air [kg/kg water]
 * @throws {@link InputError} outside those ranges
 */
export function dryAirPerWater(W1: number, W2: number): number {
  within("hall humidity", W1, 0, WETTEST_EXHAUST, "kg per kg dry air");
  if (!(W2 > W1 && W2 <= WETTEST_EXHAUST)) {
    throw new InputError(
      "exhaust humidity",
      W2,
      `expected above the hall's ${W1} and at most ${WETTEST_EXHAUST} kg per kg dry air; no drier air can take up water`,
    );
  }
  return 1 / (W2 - W1);
}

/**
 * Factor by which the vapour of a burner firing into the machine raises its heat.
 *
 *     exhaust kept at a humidity   1 / (1 − v [A (1 − ε) / (W₂ − W₁) + 1.86 (t_e − t_h)])
 *     exhaust kept at a flow       1 / (1 − v · 1.86 (t_e − t_h))
 *
 * The first counts the air that must be brought along to keep the exhaust no wetter, the second not.
 *
 * @param vapour - v, vapour raised by burning the fuel; 0 when the flue gas stays outside [kg/MJ net]
 * @param airHeat - A, heat per kg dry air, from {@link airHeatPerDryAir} [kJ/kg dry air]
 * @param rise - W₂ − W₁ when the exhaust is kept at a humidity, undefined when at a flow [kg/kg dry air]
 * @param recovery - ε, share of the air's heat won back from the exhaust, from 0 to 1 [-]
 * @param tExhaust - exhaust temperature t_e [°C]
 * @param tHall - temperature of the hall air t_h [°C]
 * @returns gain, 1 or more [-]
 * @throws {@link InputError} outside those ranges, or when the burner could not even heat its own vapour and air
 */
export function burnerGain(
  vapour: number,
  airHeat: number,
  rise: number | undefined,
  recovery: number,
  tExhaust: number,
  tHall: number,
): number {
  within("burner vapour", vapour, 0, 0.2, "kg per MJ net");
  within("heat recovery", recovery, 0, 1, "as a share");
  let perVapour = VAPOUR_HEAT_CAPACITY * (tExhaust - tHall);
  if (rise !== undefined) {
    if (!(rise > 0)) {
      throw new InputError("rise of humidity", rise, "expected above 0 kg per kg dry air");
    }
    perVapour += (airHeat * (1 - recovery)) / rise;
  }
  const share = (vapour / KJ_PER_MJ) * perVapour;
  if (share < 1) return 1 / (1 - share);
  throw new InputError(
    "rise of humidity",
    rise ?? Number.NaN,
    "is so small that the burner's heat would not suffice for its own vapour; check the exhaust humidity",
  );
}
