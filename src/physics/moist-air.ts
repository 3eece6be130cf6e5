/**
 * Moist air as a mixture of perfect gases, and the saturation pressure of water from IAPWS-IF97.
 *
 * Humidity W is kg water per kg dry air. The handbook's own fit of the saturation pressure differs from
 * the one used here by up to 0.02 %.
 */

import { InputError, within } from "../problems/input-error.js";
import { saturationPressure, saturationTemperature } from "./steam.js";

/** Heat capacity of liquid water, as the wet-bulb equation of the handbook has it. [kJ/(kg K)] */
export const WATER_HEAT_CAPACITY = 4.186;

/** Heat capacity of dry air. [kJ/(kg K)] */
export const AIR_HEAT_CAPACITY = 1.006;

/** Heat capacity of water vapour in air. [kJ/(kg K)] */
export const VAPOUR_HEAT_CAPACITY = 1.86;

/** Enthalpy of water vapour at 0 °C, liquid water at 0 °C being zero. [kJ/kg] */
export const VAPOUR_ENTHALPY_AT_ZERO = 2501;

/** Molar mass of water over that of dry air. [-] */
const MASS_RATIO = 0.621945;

const HIGHEST_AIR_TEMPERATURE = 350;
const AIR_PRESSURE_RANGE = [0.5, 1.2] as const;

/**
 * Enthalpy of moist air, zero for dry air and for liquid water at 0 °C.
 *
 *     h = 1.006 t + W (2501 + 1.86 t)
 *
 * Against IF97 the vapour's part is 0.1 % low at 150 °C and 0.2 % low at 200 °C.
 *
 * @param t - dry-bulb temperature [°C]
 * @param W - humidity [kg/kg dry air]
 * @returns enthalpy [kJ/kg dry air]
 * @see ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, eq. 30
 */
export function moistAirEnthalpy(t: number, W: number): number {
  return AIR_HEAT_CAPACITY * t + W * (VAPOUR_ENTHALPY_AT_ZERO + VAPOUR_HEAT_CAPACITY * t);
}

/**
 * Humidity that goes with a partial pressure of vapour.
 *
 *     W = 0.621945 p_v / (p − p_v)
 *
 * @param vapourPressure - partial pressure of the vapour, below `p` [bar]
 * @param p - pressure of the air, 0.5 to 1.2 [bar absolute]
 * @returns humidity [kg/kg dry air]
 * @throws {@link InputError} outside those ranges
 * @see ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, eq. 20
 */
export function humidityFromVapourPressure(vapourPressure: number, p: number): number {
  within("air pressure", p, ...AIR_PRESSURE_RANGE, "bar absolute");
  if (!(vapourPressure >= 0 && vapourPressure < p)) {
    throw new InputError(
      "vapour pressure",
      vapourPressure,
      `expected from 0 to below the air pressure, ${p} bar; air at or above boiling has no limit of humidity`,
    );
  }
  return (MASS_RATIO * vapourPressure) / (p - vapourPressure);
}

/**
 * Humidity of saturated air.
 *
 * @param t - temperature, from 0 to below boiling [°C]
 * @param p - pressure of the air, 0.5 to 1.2 [bar absolute]
 * @returns humidity [kg/kg dry air]
 * @throws {@link InputError} at and above boiling, where air takes up any amount of vapour
 */
export function saturationHumidity(t: number, p: number): number {
  return humidityRatio(t, 1, p);
}

/**
 * Humidity of air of known relative humidity.
 *
 * @param t - dry-bulb temperature, from 0 [°C]
 * @param relativeHumidity - vapour pressure over saturation pressure, 0 to 1 [-]
 * @param p - pressure of the air, 0.5 to 1.2 [bar absolute]
 * @returns humidity [kg/kg dry air]
 * @throws {@link InputError} outside those ranges, or when so much vapour would be above the air pressure
 */
export function humidityRatio(t: number, relativeHumidity: number, p: number): number {
  within("relative humidity", relativeHumidity, 0, 1, "as a share, not in percent");
  return humidityFromVapourPressure(relativeHumidity * saturationPressure(t), p);
}

/**
 * Humidity from the readings of a psychrometer.
 *
 *     W = [(2501 − 2.326 t*) W_s(t*) − 1.006 (t − t*)] / (2501 + 1.86 t − 4.186 t*)
 *
 * @param t - dry-bulb temperature, up to 350 [°C]
 * @param wet - wet-bulb temperature t*, from 0, no higher than `t` and below boiling [°C]
 * @param p - pressure of the air, 0.5 to 1.2 [bar absolute]
 * @returns humidity [kg/kg dry air]
 * @throws {@link InputError} outside those ranges, or when no air is so dry
 * @see ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, eq. 33
 */
export function humidityFromWetBulb(t: number, wet: number, p: number): number {
  within("dry-bulb temperature", t, 0, HIGHEST_AIR_TEMPERATURE, "°C");
  within("wet-bulb temperature", wet, 0, t, "°C (no higher than the dry bulb)");
  const W = psychrometer(t, wet, p);
  if (W >= 0) return W;
  throw new InputError(
    "wet-bulb temperature",
    wet,
    `is lower than perfectly dry air of ${t} °C would give; check that the wick is wet and both bulbs agree`,
  );
}

/**
 * Wet-bulb temperature of moist air, also above 100 °C: always below boiling, which is where the search ends.
 *
 * @param t - dry-bulb temperature, 0 to 350 [°C]
 * @param W - humidity, no more than saturated [kg/kg dry air]
 * @param p - pressure of the air, 0.5 to 1.2 [bar absolute]
 * @returns wet-bulb temperature; {@link humidityFromWetBulb} brings it back to `W` [°C]
 * @throws {@link InputError} outside those ranges, when the air is above saturation, or when its wet bulb would freeze
 */
export function wetBulb(t: number, W: number, p: number): number {
  within("dry-bulb temperature", t, 0, HIGHEST_AIR_TEMPERATURE, "°C");
  within("humidity", W, 0, 10, "kg per kg dry air");
  within("air pressure", p, ...AIR_PRESSURE_RANGE, "bar absolute");
  // At boiling the saturation humidity is without bound; this far below it, it is above 100 kg/kg.
  const boiling = saturationTemperature(p) - 0.1;
  let low = 0;
  let high = Math.min(t, boiling);
  if (psychrometer(t, high, p) < W * (1 - 1e-12)) {
    throw new InputError(
      "humidity",
      W,
      `air of ${t} °C is saturated with ${saturationHumidity(high, p).toPrecision(4)} kg per kg dry air`,
    );
  }
  if (psychrometer(t, low, p) > W) {
    throw new InputError(
      "humidity",
      W,
      `air of ${t} °C and so dry has its wet bulb below freezing`,
    );
  }
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (psychrometer(t, middle, p) < W) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Air pressure of the standard atmosphere.
 *
 *     p = 1.01325 (1 − 2.25577e-5 z)^5.2559
 *
 * @param altitude - height above the sea, −500 to 5000 [m]
 * @returns pressure [bar absolute]
 * @throws {@link InputError} outside that range
 * @see ASHRAE Handbook: Fundamentals (SI), 2017, ch. 1, eq. 3
 */
export function standardPressure(altitude: number): number {
  within("altitude", altitude, -500, 5000, "m");
  return 1.01325 * (1 - 2.25577e-5 * altitude) ** 5.2559;
}

function psychrometer(t: number, wet: number, p: number): number {
  const heat = (VAPOUR_ENTHALPY_AT_ZERO - 2.326 * wet) * saturationHumidity(wet, p);
  return (
    (heat - AIR_HEAT_CAPACITY * (t - wet)) /
    (VAPOUR_ENTHALPY_AT_ZERO + VAPOUR_HEAT_CAPACITY * t - WATER_HEAT_CAPACITY * wet)
  );
}
