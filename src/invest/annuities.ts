/**
 * Equal payments: how large, how many, and what they are worth.
 *
 *     pv (1 + i)^n + payment ((1 + i)^n − 1)/i + fv = 0,  payments at the end of each period
 */

import { type Arithmetic, DECIMALS, type Money, sumOf, toCent } from "./arithmetic.js";

/**
 * Payment that pays a sum off.
 *
 * @param math - arithmetic
 * @param rate - rate per period [-]
 * @param periods - number of periods
 * @param sum - sum received at the start
 * @returns payment per period, of the other sign
 */
export function payment<T>(math: Arithmetic<T>, rate: T, periods: number, sum: T): T {
  const base = math.plus(math.of(1), rate);
  const worth = sumOf(
    math,
    Array.from({ length: periods }, (_, i) => math.power(base, -(i + 1))),
  );
  return math.minus(math.of(0), math.over(sum, worth));
}

/**
 * Sum at the start that payments and a sum at the end are worth.
 *
 * @param rate - rate per period [-], not 0
 * @param periods - number of periods
 * @param each - payment per period
 * @param end - sum at the end
 * @returns present sum, of the other sign
 */
export function presentSum(rate: number, periods: number, each: number, end = 0): number {
  const back = (1 + rate) ** -periods;
  return -(each * ((1 - back) / rate) + end * back);
}

/**
 * Number of payments that pay a sum off.
 *
 * @param rate - rate per period [-], not 0
 * @param each - payment per period
 * @param sum - sum at the start, of the other sign
 * @returns number of periods
 */
export function periodsOf(rate: number, each: number, sum: number): number {
  return -Math.log(1 + (sum * rate) / each) / Math.log(1 + rate);
}

/**
 * Rate by which one sum grows into another.
 *
 * @param periods - number of periods
 * @param from - sum at the start
 * @param to - sum at the end
 * @returns rate per period [-]
 */
export function growthBetween(periods: number, from: number, to: number): number {
  return (to / from) ** (1 / periods) - 1;
}

/**
 * Periods in which one sum grows into another.
 *
 * @param rate - rate per period [-]
 * @param from - sum at the start
 * @param to - sum at the end
 * @returns number of periods
 */
export function periodsBetween(rate: number, from: number, to: number): number {
  return Math.log(to / from) / Math.log(1 + rate);
}

/**
 * Rate per year of a rate that is charged in parts of a year.
 *
 * @param nominal - rate per year as it is quoted [-]
 * @param parts - parts a year
 * @returns effective rate per year [-]
 */
export function effectiveRate(nominal: number, parts: number): number {
  return (1 + nominal / parts) ** parts - 1;
}

/**
 * Rate as it is quoted when charged in parts of a year.
 *
 * @param effective - effective rate per year [-]
 * @param parts - parts a year
 * @returns quoted rate per year [-]
 */
export function quotedRate(effective: number, parts: number): number {
  return parts * ((1 + effective) ** (1 / parts) - 1);
}

/** A year of a loan, to the cent. */
export interface LoanYear {
  /** Number of the year. */
  readonly year: number;
  /** Interest paid. */
  readonly interest: Money;
  /** Debt paid back. */
  readonly repaid: Money;
  /** Debt left at the end of the year. */
  readonly left: Money;
}

/**
 * A loan of equal yearly payments, each rounded to the cent; the last one settles what roundings left.
 *
 * @param sum - sum lent
 * @param rate - interest per year [-]
 * @param years - number of years
 * @returns year by year; what is repaid adds up to the sum
 */
export function loanSchedule(sum: number, rate: number, years: number): readonly LoanYear[] {
  const lent = toCent(DECIMALS.of(sum));
  const yearly = toCent(payment(DECIMALS, DECIMALS.of(rate), years, lent).neg());
  let left = lent;
  return Array.from({ length: years }, (_, i) => {
    const interest = toCent(left.times(rate));
    const repaid = i + 1 === years ? left : yearly.minus(interest);
    left = left.minus(repaid);
    return { year: i + 1, interest, repaid, left };
  });
}
