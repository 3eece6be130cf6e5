/**
 * Which vintage of a factor holds in a month, as far as was known on a day.
 */

import type { Factor, FactorValue } from "./factor.js";

/** The value that holds, and whether it is younger than what it is used for. */
export interface ValueInForce {
  /** The vintage. */
  readonly value: FactorValue;
  /** Whether the month is older than every vintage, so that the oldest had to serve. */
  readonly early: boolean;
}

/**
 * Finds the newest value with `from` on or before the first of the month and `entered` on or before the day
 * of the report. A month older than every value takes the oldest.
 *
 * A correction has the `from` of what it corrects and a later `entered`: reports dated before it keep the
 * old figure, later ones take the new.
 *
 * @param factor - the factor, its vintages newest first
 * @param month - month of the lots, such as `2026-03`
 * @param asOf - day of the report, such as `2026-11-25`
 * @returns the value; undefined when none had been entered by then
 */
export function valueInForce(
  factor: Factor,
  month: string,
  asOf: string,
): ValueInForce | undefined {
  const known = factor.values.filter((value) => value.entered <= asOf);
  const first = `${month}-01`;
  const value = known.find(({ from }) => from <= first);
  if (value !== undefined) return { value, early: false };
  // Of several entries for the oldest start, the one entered last comes first.
  const start = known.at(-1)?.from;
  const oldest = known.find(({ from }) => from === start);
  return oldest === undefined ? undefined : { value: oldest, early: true };
}
