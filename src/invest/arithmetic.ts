/**
 * Two ways to reckon money by the same formulas: doubles for draws, decimals for what is printed to the cent.
 */

import { Decimal } from "decimal.js";

/** Digits kept by decimals; a schedule of 40 years loses none that is printed. */
const DIGITS = 40;

const Exact = Decimal.clone({ precision: DIGITS, rounding: Decimal.ROUND_HALF_UP });

/** A number of decimal digits. */
export type Money = Decimal;

/** Arithmetic on numbers of one kind. */
export interface Arithmetic<T> {
  /** Takes a number over, digit by digit as it is written. */
  readonly of: (value: number) => T;
  /** a + b. */
  readonly plus: (a: T, b: T) => T;
  /** a − b. */
  readonly minus: (a: T, b: T) => T;
  /** a × b. */
  readonly times: (a: T, b: T) => T;
  /** a ÷ b. */
  readonly over: (a: T, b: T) => T;
  /** a to the power of an exponent. */
  readonly power: (a: T, exponent: number) => T;
  /** The nearest double. */
  readonly number: (a: T) => number;
}

/** Doubles, rounded only when printed. */
export const DOUBLES: Arithmetic<number> = {
  of: (value) => value,
  plus: (a, b) => a + b,
  minus: (a, b) => a - b,
  times: (a, b) => a * b,
  over: (a, b) => a / b,
  power: (a, exponent) => a ** exponent,
  number: (a) => a,
};

/** Decimals of 40 digits. */
export const DECIMALS: Arithmetic<Money> = {
  of: (value) => new Exact(value),
  plus: (a, b) => a.plus(b),
  minus: (a, b) => a.minus(b),
  times: (a, b) => a.times(b),
  over: (a, b) => a.div(b),
  power: (a, exponent) => a.pow(exponent),
  number: (a) => a.toNumber(),
};

/**
 * Adds up.
 *
 * @param math - arithmetic
 * @param parts - numbers
 * @returns their sum, 0 for none
 */
export function sumOf<T>(math: Arithmetic<T>, parts: readonly T[]): T {
  return parts.reduce((total, part) => math.plus(total, part), math.of(0));
}

/**
 * Rounds to the cent, a half away from zero as bills are.
 *
 * @param amount - money
 * @returns the same with two decimals
 */
export function toCent(amount: Money): Money {
  return amount.toDecimalPlaces(2, Decimal.ROUND_HALF_UP);
}
