/**
 * Water and steam in the units of the boiler house: °C, bar absolute, kJ/kg.
 *
 * After the IAPWS industrial formulation 1997, whose enthalpies agree with the scientific formulation to
 * about 0.2 kJ/kg in this range. Gauges read above air pressure: add 1.013 bar to a gauge reading.
 */

import { InputError, within } from "../problems/input-error.js";
import { liquidWater } from "./if97-region1.js";
import { steam } from "./if97-region2.js";
import { boilingPressure, boilingTemperature } from "./if97-region4.js";

const BAR_PER_MPA = 10;
const ZERO_CELSIUS = 273.15;

/** Lowest pressure at which liquid water can be. [bar] */
const TRIPLE_PRESSURE = 0.00611213;
const CRITICAL_PRESSURE = 220.64;
const CRITICAL_TEMPERATURE = 373.946;

/** Boiling pressure at 350 °C, where the equations for liquid and steam end. [bar] */
const HIGHEST_PRESSURE = 165.29;

/**
 * Pressure at which water boils.
 *
 * @param t - temperature, 0 to 373.946 [°C]
 * @returns saturation pressure [bar absolute]
 * @throws {@link InputError} outside that range
 */
export function saturationPressure(t: number): number {
  within("saturation temperature", t, 0, CRITICAL_TEMPERATURE, "°C");
  return BAR_PER_MPA * boilingPressure(t + ZERO_CELSIUS);
}

/**
 * Temperature at which water boils.
 *
 * @param p - pressure, 0.00611213 to 220.64 [bar absolute]
 * @returns saturation temperature [°C]
 * @throws {@link InputError} outside that range
 */
export function saturationTemperature(p: number): number {
  within("saturation pressure", p, TRIPLE_PRESSURE, CRITICAL_PRESSURE, "bar absolute");
  return boilingTemperature(p / BAR_PER_MPA) - ZERO_CELSIUS;
}

/**
 * Enthalpy of dry saturated steam, h_g.
 *
 * @param p - pressure, 0.00611213 to 165.29 [bar absolute]
 * @returns specific enthalpy, liquid at the triple point being zero [kJ/kg]
 * @throws {@link InputError} outside that range
 */
export function vapourEnthalpy(p: number): number {
  const mpa = steamPressure(p);
  return steam(mpa, boilingTemperature(mpa)).enthalpy;
}

/**
 * Enthalpy of boiling water, h_f.
 *
 * @param p - pressure, 0.00611213 to 165.29 [bar absolute]
 * @returns specific enthalpy, liquid at the triple point being zero [kJ/kg]
 * @throws {@link InputError} outside that range
 */
export function liquidEnthalpy(p: number): number {
  const mpa = steamPressure(p);
  return liquidWater(mpa, boilingTemperature(mpa)).enthalpy;
}

/**
 * Enthalpy of water that does not boil.
 *
 * @param p - pressure, from that of boiling to 1000 [bar absolute]
 * @param t - temperature, 0 to 350 [°C]
 * @returns specific enthalpy [kJ/kg]
 * @throws {@link InputError} outside that range, or when the water would be steam
 */
export function waterEnthalpy(p: number, t: number): number {
  within("water temperature", t, 0, 350, "°C");
  within("water pressure", p, TRIPLE_PRESSURE, 1000, "bar absolute");
  const boiling = saturationPressure(t);
  if (p < boiling * (1 - 1e-9)) {
    throw new InputError(
      "water pressure",
      p,
      `water of ${t} °C boils below ${boiling.toPrecision(3)} bar absolute; check gauge against absolute`,
    );
  }
  return liquidWater(p / BAR_PER_MPA, t + ZERO_CELSIUS).enthalpy;
}

/**
 * Enthalpy of steam that is saturated or hotter.
 *
 * @param p - pressure, 0.00611213 to 165.29 [bar absolute]
 * @param t - temperature, from that of boiling to 800 [°C]
 * @returns specific enthalpy [kJ/kg]
 * @throws {@link InputError} outside that range, or when the steam would be water
 */
export function steamEnthalpy(p: number, t: number): number {
  within("steam temperature", t, 0, 800, "°C");
  const mpa = steamPressure(p);
  const boiling = saturationTemperature(p);
  if (t < boiling - 1e-6) {
    throw new InputError(
      "steam temperature",
      t,
      `steam of ${p} bar absolute is not below ${boiling.toFixed(1)} °C; check gauge against absolute`,
    );
  }
  return steam(mpa, t + ZERO_CELSIUS).enthalpy;
}

function steamPressure(p: number): number {
  return (
    within("steam pressure", p, TRIPLE_PRESSURE, HIGHEST_PRESSURE, "bar absolute") / BAR_PER_MPA
  );
}
