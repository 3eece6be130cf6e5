/**
 * What is printed about a set of draws: quantiles, mean, share below a threshold.
 */

import { InputError } from "../problems/input-error.js";

/**
 * One quantile, by selection on a copy.
 *
 *     h = (n − 1) p,   q = x₍⌊h⌋₎ + (h − ⌊h⌋) (x₍⌊h⌋₊₁₎ − x₍⌊h⌋₎)     x₍₀₎ the smallest
 *
 * @param values - the draws, in any order; at least one
 * @param p - probability from 0 (the smallest) to 1 (the largest)
 * @returns the quantile, type 7
 * @throws {@link InputError} when there are no values, one is not a number, or `p` lies outside 0 to 1
 * @see R. J. Hyndman and Y. Fan, Sample quantiles in statistical packages, American Statistician 50 (1996) 361-365
 */
export function quantile(values: Float64Array, p: number): number {
  return quantiles(values, [p])[0]!;
}

/**
 * Several quantiles of the same values at the price of little more than one.
 *
 * @param values - the draws, in any order; at least one
 * @param ps - probabilities from 0 to 1, in any order
 * @returns the quantiles, in the order of `ps`
 * @throws {@link InputError} as {@link quantile}
 */
export function quantiles(values: Float64Array, ps: readonly number[]): number[] {
  const sorted = numbersOnly(values).slice();
  const results = new Array<number>(ps.length).fill(Number.NaN);
  const order = ps.map((_, index) => index).sort((a, b) => ps[a]! - ps[b]!);
  let settled = 0;
  for (const index of order) {
    const p = ps[index]!;
    if (!(p >= 0 && p <= 1)) {
      throw new InputError("quantile", p, "expected a probability from 0 to 1");
    }
    const place = (sorted.length - 1) * p;
    const below = Math.floor(place);
    select(sorted, below, settled);
    const lower = sorted[below]!;
    const share = place - below;
    results[index] =
      share === 0 ? lower : lower + share * (smallestFrom(sorted, below + 1) - lower);
    settled = below;
  }
  return results;
}

/**
 * Arithmetic mean, summed with a running correction.
 *
 * @param values - at least one
 * @returns their mean
 * @throws {@link InputError} when there are no values or one is not a number
 * @see A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974) 39-51
 */
export function mean(values: Float64Array): number {
  let sum = 0;
  let lost = 0;
  for (const value of numbersOnly(values)) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return (sum + lost) / values.length;
}

/**
 * Share of the values below a threshold.
 *
 * @param values - at least one
 * @param threshold - a value equal to it does not count as below
 * @returns from 0 to 1
 * @throws {@link InputError} when there are no values or one is not a number
 */
export function fractionBelow(values: Float64Array, threshold: number): number {
  let below = 0;
  for (const value of numbersOnly(values)) if (value < threshold) below++;
  return below / values.length;
}

function numbersOnly(values: Float64Array): Float64Array {
  if (values.length === 0) {
    throw new InputError("number of values", 0, "expected at least one value");
  }
  for (const value of values) {
    if (Number.isNaN(value)) throw new InputError("draws", value, "expected numbers only");
  }
  return values;
}

// Hoare's selection: afterwards nothing before `rank` is larger and nothing behind it smaller.
// All that stands before `from` must be no larger already.
function select(values: Float64Array, rank: number, from: number): void {
  let left = from;
  let right = values.length - 1;
  while (left < right) {
    const pivot = middleOfThree(values[left]!, values[(left + right) >>> 1]!, values[right]!);
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i > j) break;
      const moved = values[i]!;
      values[i++] = values[j]!;
      values[j--] = moved;
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else return;
  }
}

function middleOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

function smallestFrom(values: Float64Array, from: number): number {
  let smallest = values[from]!;
  for (let i = from + 1; i < values.length; i++) {
    if (values[i]! < smallest) smallest = values[i]!;
  }
  return smallest;
}
