/**
 * A reading in the units of the computation: litres, kWh on net heating value, kg of steam.
 */

import { isVolume } from "../plant/judge-meters.js";
import type { MeterText } from "../plant/meter-part.js";
import { type Refusal, unitFactor } from "../units/convert.js";
import type { Target } from "../units/unit-table.js";

/** What is known of gas and steam where the plant file does not say. */
export interface MeterConditions {
  /** Net per gross heating value of the gas. */
  readonly netPerGross: number;
  /** Enthalpy of steam above water of 0 °C. [kJ/kg] */
  readonly steamEnthalpy: number;
}

const TARGET: Readonly<Record<MeterText["quantity"], Target>> = {
  water: "L",
  effluent: "L",
  electricity: "kWh",
  gas: "kWh",
  steam: "kg",
  condensate: "kg",
  cod: "g/L",
};

/** 0 °C and 15 °C. [K] */
const [ZERO, FIFTEEN] = [273.15, 288.15];

/** Pressure that normal and standard volumes are given at. [bar] */
const ATMOSPHERE = 1.01325;

/**
 * Size of a unit of a meter.
 *
 * @param meter - the meter
 * @param unit - unit as written in the row
 * @param conditions - of gas and steam
 * @returns factor to L, kWh net, kg or g/L; or why there is none
 */
export function amountPerUnit(
  meter: MeterText,
  unit: string,
  conditions: MeterConditions,
): number | Refusal {
  const { quantity } = meter;
  const times = meter.multiplier ?? 1;
  if (quantity === "gas") {
    const energy = isVolume(unit) ? heatOfVolume(meter, unit) : unitFactor(unit, "kWh");
    if (typeof energy !== "number") return energy;
    return energy * times * (meter.basis === "gross" ? conditions.netPerGross : 1);
  }
  const direct = unitFactor(unit, TARGET[quantity]);
  if (typeof direct === "number") return direct * times;
  if (quantity !== "steam" && quantity !== "condensate") return direct;
  const heat = unitFactor(unit, "MJ");
  // Steam counted as heat: kg = kJ / (kJ/kg).
  return typeof heat === "number" && quantity === "steam"
    ? (1000 * heat * times) / (meter.enthalpy ?? conditions.steamEnthalpy)
    : direct;
}

function heatOfVolume(meter: MeterText, unit: string): number | Refusal {
  const { volume, heating_value } = meter;
  const letter = unit.trim().charAt(0).toLowerCase();
  const basis = letter === "n" ? "normal" : letter === "s" ? "standard" : volume;
  if (heating_value === undefined || basis === undefined)
    return {
      reason: `${unit} of gas is no amount of heat without heating value and conditions`,
      remedy: "Give `heating_value` and `volume` at the meter in plant.yaml.",
    };
  return heating_value * normalVolume(basis);
}

/**
 * Normal cubic metres (0 °C, 1.01325 bar) in a cubic metre.
 *
 * @param basis - of the cubic metre
 * @returns V_n / V = (p / 1.01325 bar) (273.15 K / T)
 */
export function normalVolume(basis: NonNullable<MeterText["volume"]>): number {
  if (basis === "normal") return 1;
  if (basis === "standard") return ZERO / FIFTEEN;
  return (basis.pressure / ATMOSPHERE) * (ZERO / (ZERO + basis.temperature));
}
