/**
 * How numbers, intervals, shares and days are printed, the same in texts, tables and traces.
 */

import { formatNumber } from "../charts/number-format.js";
import { InputError } from "../problems/input-error.js";

// Charts print the same numbers, so they share one way of writing them.
export { formatNumber };

const NO_BREAK = "\u00a0";

/** Most significant digits that are ever printed. */
const MOST_DIGITS = 3;

/** Share of itself by which an end of an interval may be off when printed; more asks for another place. [-] */
const MOST_ROUNDING = 0.25;

/** An end below this share of the half width is as good as zero, and may print as zero. [-] */
const NEXT_TO_NOTHING = 0.05;

/**
 * Finds the decimals with which a number is printed: at most three significant digits, and none that
 * the interval does not carry. The last place printed is that of the first digit of the interval's
 * half width, one more where that digit is 1 or 2: there a whole place would hide up to half of it; and
 * one more where an end would change by more than a quarter of itself, as 0.5 does when it prints as 1.
 *
 * @param value - the number
 * @param low - lower end of its interval; absent for a number without one
 * @param high - upper end of its interval
 * @returns decimals; negative ones round to tens, hundreds and so on
 * @throws {@link InputError} when a number is not finite
 * @see JCGM 100:2008 (GUM) 7.2.6, which allows two digits of the uncertainty at most
 */
export function digitsFor(value: number, low?: number, high?: number): number {
  const width = low === undefined || high === undefined ? 0 : finite("interval", high - low);
  const carried = placeOf(Math.abs(width) / 2);
  const significant = finite("value", value) === 0 ? 0 : MOST_DIGITS - 1 - exponent(value);
  if (carried === undefined) return value === 0 ? 0 : significant;
  const place =
    carried + (distorts(low ?? 0, carried, width) || distorts(high ?? 0, carried, width) ? 1 : 0);
  return value === 0 ? place : Math.min(significant, place);
}

// Whether an end, printed with so many decimals, says something else than it is.
function distorts(end: number, decimals: number, width: number): boolean {
  const size = Math.abs(end);
  if (!(size > (NEXT_TO_NOTHING * Math.abs(width)) / 2)) return false;
  const step = 10 ** -decimals;
  return Math.abs(Math.round(size / step) * step - size) > MOST_ROUNDING * size;
}

function placeOf(halfWidth: number): number | undefined {
  if (halfWidth === 0) return undefined;
  const leading = halfWidth.toExponential(1);
  const place = 0 - Number(leading.slice(leading.indexOf("e") + 1));
  return leading.startsWith("1") || leading.startsWith("2") ? place + 1 : place;
}

// Power of ten of the first digit once rounded: 99.96 counts as 100.
function exponent(value: number): number {
  const written = value.toExponential(MOST_DIGITS - 1);
  return Number(written.slice(written.indexOf("e") + 1));
}

function finite(where: string, value: number): number {
  if (Number.isFinite(value)) return value;
  throw new InputError(
    `report.${where}`,
    value,
    "expected a finite number; a figure that is not known has to be said in words",
  );
}

/**
 * Prints an interval: `−48.0 to −35.1`.
 *
 * @param low - lower end
 * @param high - upper end
 * @param decimals - decimals of both ends
 * @returns the interval in print
 * @throws {@link InputError} when an end is not finite, or the lower lies above the upper
 */
export function formatInterval(low: number, high: number, decimals: number): string {
  if (!(low <= high)) {
    throw new InputError("report.interval", low, `expected a lower end up to ${high}; swap them`);
  }
  return `${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}`;
}

/**
 * Prints a share as percent: `41 %`.
 *
 * @param share - share [-], 0.41 for 41 %
 * @param decimals - decimals of the percentage
 * @returns the percentage in print
 * @throws {@link InputError} when the share is not finite
 */
export function formatPercent(share: number, decimals = 0): string {
  return `${formatNumber(share * 100, decimals)}${NO_BREAK}%`;
}

/** Smallest chance that is printed as a number. [-] */
const SMALLEST_CHANCE = 0.001;

/** Fewest draws for which the rule of three holds well enough. */
const FEWEST_DRAWS = 30;

/**
 * Prints how many of the draws showed something. Draws cannot show that a thing never or always
 * happens: none of n draws leaves room for a chance up to 3/n (with 95 % confidence, the rule of
 * three), so 0 prints as `< 0.1 %` and all as `> 99.9 %`, or wider where the draws are few.
 *
 * @param count - draws that showed it
 * @param draws - all draws
 * @returns the share in print; never 0 % and never 100 %
 * @throws {@link InputError} when there are fewer than 30 draws, or more counted than drawn
 * @see B. D. Jovanovic, P. S. Levy, A look at the rule of three, The American Statistician 51, 1997
 */
export function formatShareOfDraws(count: number, draws: number): string {
  if (!(Number.isInteger(draws) && draws >= FEWEST_DRAWS)) {
    throw new InputError("report.draws", draws, `expected at least ${FEWEST_DRAWS} draws`);
  }
  if (!(Number.isInteger(count) && count >= 0 && count <= draws)) {
    throw new InputError("report.count", count, `expected a whole number from 0 to ${draws}`);
  }
  const rare = Math.min(count, draws - count) / draws;
  const least = Math.max(rare === 0 ? roundedUp(3 / draws) : 0, SMALLEST_CHANCE);
  if (rare < least) {
    const decimals = Math.max(0, digitsOfPercent(least));
    return count * 2 <= draws
      ? `<${NO_BREAK}${formatPercent(least, decimals)}`
      : `>${NO_BREAK}${formatPercent(1 - least, decimals)}`;
  }
  return formatPercent(count / draws, rare < 0.01 ? 1 : 0);
}

// To one digit, upwards, so that the printed bound holds.
function roundedUp(share: number): number {
  const step = 10 ** Math.floor(Math.log10(share) + 1e-12);
  return Math.ceil(share / step - 1e-9) * step;
}

function digitsOfPercent(share: number): number {
  return -Math.floor(Math.log10(share * 100) + 1e-12);
}

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

const ISO = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/;

/**
 * Prints a day or month: `4 July 2025`, `July 2025`.
 *
 * @param iso - day or month as ISO 8601 has it, such as `2025-07-04` or `2025-07`
 * @returns the day in words
 * @throws Error when the text is no day of the calendar
 */
export function formatDate(iso: string): string {
  const [, year = "", month = "", day] = ISO.exec(iso) ?? [];
  const name = MONTHS[Number(month) - 1];
  if (name === undefined || !(day === undefined || isDay(iso))) {
    throw new Error(`date "${iso}": expected a day as YYYY-MM-DD or a month as YYYY-MM`);
  }
  return day === undefined
    ? `${name}${NO_BREAK}${year}`
    : `${Number(day)}${NO_BREAK}${name}${NO_BREAK}${year}`;
}

function isDay(iso: string): boolean {
  const time = Date.parse(`${iso}T00:00:00Z`);
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(iso);
}
