/**
 * Sobol' indices: the share of a variance that one input causes alone, and with all it does together with
 * others.
 */

import { InputError } from "../problems/input-error.js";

/** An index with its sampling error. */
export interface Index {
  /** The estimate. */
  readonly value: number;
  /** Standard error of the estimate by sampling. */
  readonly error: number;
}

/** Indices of one input. */
export interface SobolIndices {
  /** First-order index: Var(E[f | x_i]) / Var(f). */
  readonly first: Index;
  /** Total index: E[Var(f | all but x_i)] / Var(f). */
  readonly total: Index;
}

/**
 * Estimates the indices of one input, or of a group of inputs, from two independent samples A and B and a
 * third, A with the input taken from B.
 *
 *     S  = mean(f_B (f_AB − f_A)) / V          first order
 *     T  = mean((f_A − f_AB)²) / (2 V)         total
 *
 * V is the variance of f_A and f_B together, and f is counted from their mean, which leaves the first-order
 * estimate unbiased and makes it steadier. Errors are those of the means, V being taken as known.
 *
 * @param fA - f on sample A
 * @param fB - f on sample B
 * @param fAB - f on A with the input from B
 * @returns both indices; NaN where f does not vary
 * @throws {@link InputError} when the samples differ in length or hold fewer than two
 * @see A. Saltelli et al., Computer Physics Communications 181 (2010) 259-270, table 2 (b) and (f), the latter
 *   after M. J. W. Jansen, Computer Physics Communications 117 (1999) 35-43
 */
export function sobolIndices(fA: Float64Array, fB: Float64Array, fAB: Float64Array): SobolIndices {
  const n = fA.length;
  if (!(n >= 2 && fB.length === n && fAB.length === n)) {
    throw new InputError("samples of Sobol' indices", n, "expected three of one length, 2 or more");
  }
  let sum = 0;
  for (let i = 0; i < n; i++) sum += fA[i]! + fB[i]!;
  const mean = sum / (2 * n);
  let squares = 0;
  for (let i = 0; i < n; i++) squares += (fA[i]! - mean) ** 2 + (fB[i]! - mean) ** 2;
  const variance = squares / (2 * n - 1);
  const first = new Float64Array(n);
  const total = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const step = fAB[i]! - fA[i]!;
    first[i] = ((fB[i]! - mean) * step) / variance;
    total[i] = (step * step) / (2 * variance);
  }
  return { first: meanOf(first), total: meanOf(total) };
}

function meanOf(numbers: Float64Array): Index {
  const n = numbers.length;
  const value = numbers.reduce((sum, number) => sum + number, 0) / n;
  const squares = numbers.reduce((sum, number) => sum + (number - value) ** 2, 0);
  return { value, error: Math.sqrt(squares / (n - 1) / n) };
}
