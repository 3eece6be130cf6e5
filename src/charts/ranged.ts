import { InputError } from "../problems/input-error.js";
import { formatNumber } from "./number-format.js";

/** A value with its 95 % interval, if it has one. */
export interface Ranged {
  /** The value. */
  readonly value: number;
  /** Lower end. */
  readonly low?: number;
  /** Upper end. */
  readonly high?: number;
}

/** A value whose interval is known to have an extent. */
export interface Whisker {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/**
 * Looks whether a value has an interval that can be drawn.
 *
 * @param ranged - the value
 * @returns its ends, or nothing where one is absent or both are one
 */
export function whiskerOf(ranged: Ranged): Whisker | undefined {
  const { low, high } = ranged;
  return low !== undefined && high !== undefined && high > low ? { low, high } : undefined;
}

/**
 * Prints the interval of a value.
 *
 * @param ranged - the value
 * @param digits - decimals
 * @returns `41.0 to 52.3`, or nothing where there is no interval
 */
export function printedInterval(ranged: Ranged, digits: number): string | undefined {
  const whisker = whiskerOf(ranged);
  if (whisker === undefined) return undefined;
  return `${formatNumber(whisker.low, digits)} to ${formatNumber(whisker.high, digits)}`;
}

/**
 * Lets a number through that can be drawn.
 *
 * @param where - which number of which picture
 * @param value - the number
 * @returns the number
 * @throws {@link InputError} when it is not finite
 */
export function drawable(where: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw new InputError(where, value, "expected a finite number; leave out what is not known");
}
