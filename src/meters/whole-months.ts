/**
 * Months that a log holds from end to end. A meter counts all of a month; lots of half of one may not be set beside
 * it.
 */

import { daysOf } from "./months.js";

/** Days at either end of a month in which a house may simply not have printed. Common practice, no source. */
const QUIET = 7;

/** Days that lots are known of. */
export interface LogEnds {
  /** First day that was asked for; absent where the whole log was. */
  readonly from?: string | undefined;
  /** Last day that was asked for. */
  readonly to?: string | undefined;
  /** First and last day with a lot; absent where there are none. */
  readonly days?: readonly [string, string] | undefined;
}

/**
 * Tells months that lots are known of from end to end. A log that begins or ends within a week of the end of a month
 * is taken to hold all of it.
 *
 * @param ends - what was asked for, and what the log holds
 * @returns whether a month is whole
 */
export function wholeMonths(ends: LogEnds): (month: string) => boolean {
  const { from, to, days } = ends;
  const [first, last] = days ?? ["", "9999"];
  return (month) => {
    const [start, end] = [`${month}-01`, `${month}-${String(daysOf(month)).padStart(2, "0")}`];
    if ((from ?? "") > start || (to ?? "9999") < end) return false;
    const dayOf = (day: string): number => (day.startsWith(month) ? Number(day.slice(8)) : NaN);
    return !(dayOf(first) > QUIET) && !(dayOf(last) <= daysOf(month) - QUIET);
  };
}
