/**
 * Logarithms of numbers over draws: their middles, and how they go together.
 */

import type { Matrix } from "../numbers/reconcile.js";

/**
 * Mean of the logarithms of draws.
 *
 * @param draws - numbers above 0
 * @returns the mean
 */
export function logMean(draws: Float64Array): number {
  let sum = 0;
  for (const value of draws) sum += Math.log(value);
  return sum / draws.length;
}

/**
 * Covariance of the logarithms of draws.
 *
 * @param columns - draws of each number, above 0
 * @param means - means of their logarithms
 * @returns the matrix
 */
export function logCovariance(columns: readonly Float64Array[], means: Float64Array): Matrix {
  const centred = columns.map((column, j) => column.map((value) => Math.log(value) - means[j]!));
  return centred.map((a) =>
    Float64Array.from(centred, (b) => {
      let sum = 0;
      for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
      return sum / (a.length - 1);
    }),
  );
}
