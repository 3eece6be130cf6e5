/**
 * What money of later years is worth at the start, and the measures made of it. Year 0 is the start and is not
 * discounted; year t is counted at its end, or in its middle where that is chosen.
 *
 *     NPV = CF₀ + Σ CFₜ / (1 + r)^t        end of the year
 *     NPV = CF₀ + Σ CFₜ / (1 + r)^(t − ½)  middle of the year
 */

import { InputError } from "../problems/input-error.js";
import { type Arithmetic, sumOf } from "./arithmetic.js";

/** When in a year its money counts. */
export type Timing = "end-year" | "mid-year";

/**
 * Time at which the money of a year counts.
 *
 * @param year - number of the year, 0 for the start
 * @param timing - end or middle of the year
 * @returns years from the start
 */
export function timeOf(year: number, timing: Timing): number {
  return timing === "mid-year" && year > 0 ? year - 0.5 : year;
}

/**
 * Present value of flows by year.
 *
 * @param math - arithmetic
 * @param rate - discount rate per year [-], above −1
 * @param flows - money by year, from year 0 on
 * @param timing - end or middle of the year
 * @returns present value
 * @throws {@link InputError} when the rate is −1 or less
 */
export function presentValue<T>(
  math: Arithmetic<T>,
  rate: T,
  flows: readonly T[],
  timing: Timing = "end-year",
): T {
  const base = baseOf(math, rate);
  return sumOf(
    math,
    flows.map((flow, year) => math.over(flow, math.power(base, timeOf(year, timing)))),
  );
}

function baseOf<T>(math: Arithmetic<T>, rate: T): T {
  if (!(math.number(rate) > -1))
    throw new InputError("discount rate", math.number(rate), "expected above −1");
  return math.plus(math.of(1), rate);
}

/** Money on a day. */
export interface DatedFlow {
  /** Day as ISO 8601. */
  readonly day: string;
  /** Money. */
  readonly amount: number;
}

const MS_PER_DAY = 86_400_000;

/**
 * Years of 365 days from the first day to each, leap years included.
 *
 * @param flows - money on days, the first of them the start
 * @returns years and money
 */
export function yearsOf(
  flows: readonly DatedFlow[],
): readonly { readonly at: number; readonly amount: number }[] {
  const start = Date.parse(flows[0]?.day ?? "");
  return flows.map(({ day, amount }) => ({
    at: (Date.parse(day) - start) / MS_PER_DAY / 365,
    amount,
  }));
}

/**
 * Present value of flows on days: Σ CFᵢ / (1 + r)^(days/365).
 *
 * @param rate - discount rate per year [-]
 * @param flows - money on days, the first of them the start
 * @returns present value on the first day
 */
export function datedPresentValue(rate: number, flows: readonly DatedFlow[]): number {
  return yearsOf(flows).reduce((sum, { at, amount }) => sum + amount / (1 + rate) ** at, 0);
}

/**
 * Present worth of 1 a year for some years, growing by e from the first year on:
 * Σ (1 + e)^t / (1 + r)^t, or with t − ½ for both in the middle of the year.
 *
 * @param math - arithmetic
 * @param rate - discount rate per year [-]
 * @param years - number of years
 * @param growth - growth per year [-]
 * @param timing - end or middle of the year
 * @returns present worth; the number of years when growth and rate are alike
 */
export function uniformWorth<T>(
  math: Arithmetic<T>,
  rate: T,
  years: number,
  growth: T = math.of(0),
  timing: Timing = "end-year",
): T {
  const ratio = math.over(math.plus(math.of(1), growth), baseOf(math, rate));
  const each = Array.from({ length: years }, (_, i) => math.power(ratio, timeOf(i + 1, timing)));
  return sumOf(math, each);
}

/**
 * Equal yearly money that is worth as much as a sum at the start, for options of unequal lives:
 * EAC = PV / Σ (1 + r)^−t.
 *
 * @param math - arithmetic
 * @param rate - discount rate per year [-]
 * @param worth - present value
 * @param years - number of years
 * @param timing - end or middle of the year
 * @returns money per year
 */
export function equivalentAnnual<T>(
  math: Arithmetic<T>,
  rate: T,
  worth: T,
  years: number,
  timing: Timing = "end-year",
): T {
  return math.over(worth, uniformWorth(math, rate, years, math.of(0), timing));
}

/**
 * Modified rate of return: outlays brought to the start at one rate, incomes to the end at another.
 *
 *     MIRR = (FV of incomes / −PV of outlays)^(1/n) − 1
 *
 * @param flows - money by year, from year 0 on
 * @param finance - rate at which outlays are financed [-]
 * @param reinvest - rate at which incomes are put to use [-]
 * @returns the rate; undefined without an outlay or without an income
 */
export function modifiedReturn(
  flows: readonly number[],
  finance: number,
  reinvest: number,
): number | undefined {
  const n = flows.length - 1;
  let [out, back] = [0, 0];
  flows.forEach((flow, year) => {
    if (flow < 0) out -= flow / (1 + finance) ** year;
    else back += flow * (1 + reinvest) ** (n - year);
  });
  return out > 0 && back > 0 ? (back / out) ** (1 / n) - 1 : undefined;
}

/**
 * Present value of what comes back for each unit of what is laid out at the start.
 *
 * @param math - arithmetic
 * @param outlay - money laid out, above 0
 * @param worth - net present value, the outlay taken off
 * @returns the index; above 1 where the net present value is above 0
 */
export function profitabilityIndex<T>(math: Arithmetic<T>, outlay: T, worth: T): T {
  return math.over(math.plus(worth, outlay), outlay);
}

/**
 * Years until running sums of flows stay at or above zero, straight between two years.
 *
 * @param flows - money by year from year 0 on, discounted or not
 * @returns years; 0 where nothing is ever laid out, undefined where it does not come back
 */
export function paybackOf(flows: readonly number[]): number | undefined {
  let sum = 0;
  const sums = flows.map((flow) => (sum += flow));
  const last = sums.findLastIndex((total) => total < 0);
  if (last < 0) return 0;
  const next = sums[last + 1];
  if (next === undefined) return undefined;
  const before = sums[last] ?? 0;
  return last + before / (before - next);
}

/**
 * Money of later years without what inflation adds: (1 + nominal) = (1 + real)(1 + inflation).
 *
 * @param nominal - nominal rate [-]
 * @param inflation - inflation [-]
 * @returns real rate [-]
 */
export function realRate(nominal: number, inflation: number): number {
  return (1 + nominal) / (1 + inflation) - 1;
}

/**
 * Rate in money of the day: (1 + nominal) = (1 + real)(1 + inflation).
 *
 * @param real - real rate [-]
 * @param inflation - inflation [-]
 * @returns nominal rate [-]
 */
export function nominalRate(real: number, inflation: number): number {
  return (1 + real) * (1 + inflation) - 1;
}
