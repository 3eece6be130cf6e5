/**
 * Numbers of the plant file as spreads.
 */

import type { Spread } from "../numbers/spread.js";
import type { GivenNumber } from "./schema.js";

/**
 * Doubt taken for a number that the mill gives without an interval: ± 5 % at 95 %, a round figure for a
 * reading off a panel or a data sheet (own convention, printed in the report's method).
 */
const PLAIN_DOUBT = 0.05;

/**
 * Turns a number of the plant file into a spread inside its physical limits.
 *
 * @param given - the number, or value with ends
 * @param limits - physical limits
 * @returns triangular between given ends; fixed when exact or zero; otherwise normal, ± 5 % at 95 %
 */
export function givenSpread(given: GivenNumber, limits: readonly [number, number]): Spread {
  const { value, low, high, exact } =
    typeof given === "number"
      ? { value: given, low: undefined, high: undefined, exact: false }
      : { low: undefined, high: undefined, exact: false, ...given };
  if (exact === true || (low !== undefined && low === high)) return { shape: "fixed", value };
  if (low !== undefined && high !== undefined) return { shape: "triangular", low, value, high };
  if (value === 0) return { shape: "fixed", value };
  return { shape: "normal", value, sd: (PLAIN_DOUBT / 1.959964) * Math.abs(value), limits };
}

/**
 * Checks a number of the plant file against limits, and its ends against it.
 *
 * @param given - the number
 * @param limits - physical limits
 * @returns what is wrong in words, or undefined
 */
export function givenFault(
  given: GivenNumber,
  limits: readonly [number, number],
): string | undefined {
  const { value, low, high } =
    typeof given === "number" ? { value: given, low: undefined, high: undefined } : given;
  for (const end of [value, low, high]) {
    if (end !== undefined && !(end >= limits[0] && end <= limits[1])) {
      return `a value from ${limits[0]} to ${limits[1]}`;
    }
  }
  if ((low === undefined) !== (high === undefined)) return "both low and high, or neither,";
  if ((low ?? value) > value || (high ?? value) < value) return "low ≤ value ≤ high";
  return undefined;
}
