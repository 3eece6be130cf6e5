/**
 * Units as they are printed: one style for all tables.
 */

import type { Leaf } from "../../numbers/quantity.js";
import { formatNumber } from "../format.js";

/**
 * A unit with its exponents and indices set as such.
 *
 * @param unit - unit of a factor, such as `m2/h`, `kWh/Nm3` or `kg CO2e/kWh`
 * @returns the unit in print, such as `m²/h`
 */
function unitWords(unit: string): string {
  return unit
    .replaceAll(
      /(?<![A-Za-z])(N?)m([23])(?!\w)/g,
      (_, norm: string, power: string) => `${norm}m${power === "2" ? "²" : "³"}`,
    )
    .replaceAll("CO2", "CO₂");
}

/**
 * Full unit of a price: `EUR/kWh`, never the currency alone.
 *
 * @param factor - setting, such as `tariffs.water`
 * @param currency - its currency
 * @returns the unit per which it is charged
 */
export function priceUnit(factor: string, currency: string): string {
  const [, what = ""] = factor.split(".");
  const per: Readonly<Record<string, string>> = {
    electricity: "kWh",
    fuel: "kWh",
    steam: "kWh",
    water: "m³",
    effluent: "m³",
    ink: "L",
    labour: "h",
  };
  return per[what] === undefined ? currency : `${currency}/${per[what]}`;
}

/**
 * Unit of a number in the table of factors.
 *
 * @param leaf - the number
 * @returns its unit in print; `1` for a bare ratio
 */
export function leafUnit(leaf: Leaf): string {
  return leaf.factor.startsWith("tariffs.")
    ? priceUnit(leaf.factor, leaf.unit)
    : unitWords(leaf.unit);
}

/**
 * Unit in which the amount of a priced flow is printed, and the factor from the account's unit.
 *
 * @param flow - flow at the fence
 * @returns unit and printed amount per amount of the account
 */
export function amountScale(flow: string): { readonly unit: string; readonly scale: number } {
  if (flow.startsWith("fuel.") || flow === "steam.bought") return { unit: "kWh", scale: 1 / 3.6 };
  if (flow.startsWith("water.")) return { unit: "L", scale: 1 };
  if (flow === "machine.hours") return { unit: "s", scale: 3600 };
  if (flow === "ink") return { unit: "mL", scale: 1000 };
  return { unit: "kWh", scale: 1 };
}

/**
 * A value with its unit, three significant digits.
 *
 * @param value - the value
 * @param unit - its unit
 * @returns the text
 */
export function valueText(value: number, unit: string): string {
  const size = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  const text = formatNumber(value, Math.min(6, 2 - size));
  return unit === "1" ? text : `${text} ${unitWords(unit)}`;
}
