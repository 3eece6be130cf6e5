/**
 * Data reconciliation: numbers that were found apart from each other are moved until they obey balances, the
 * doubtful ones most.
 *
 *     minimise (x̂ − x)ᵀ S⁻¹ (x̂ − x)  where  A x̂ = 0
 *     x̂ = x − S Aᵀ (A S Aᵀ)⁻¹ A x,    Ŝ = S − S Aᵀ (A S Aᵀ)⁻¹ A S
 */

import { InputError } from "../problems/input-error.js";
import { normalQuantile } from "./normal.js";
import { chiSquareTail } from "./tails.js";

/** A matrix by rows. */
export type Matrix = readonly Float64Array[];

/** Numbers reconciled. */
export interface Reconciled {
  /** The numbers moved. */
  readonly values: Float64Array;
  /** Their covariance. */
  readonly covariance: Matrix;
  /** Standardised move of each: (x̂ − x) / √(S − Ŝ)ᵢᵢ; 0 where nothing could move. */
  readonly scores: Float64Array;
  /** Weighted sum of squared moves, χ² with one degree of freedom a balance where the doubts are right. */
  readonly sum: number;
  /** Chance of a sum as large as this, where the doubts are right. */
  readonly chance: number;
}

/** A score beyond this is a gross error, or a doubt stated too small: one right reading in twenty passes it. */
export const GROSS = normalQuantile(0.975);

/**
 * Reconciles numbers with balances.
 *
 * @param values - x
 * @param covariance - S, symmetric, positive on the balances
 * @param balances - A, one row a balance, as many columns as numbers
 * @returns the numbers moved, with tests
 * @throws {@link InputError} when sizes differ, or balances say the same or concern numbers without doubt
 * @see VDI 2048 part 1, for the tests, from memory; S. Narasimhan and C. Jordache, Data Reconciliation and
 *   Gross Error Detection (2000), chapter 1, for an example
 */
export function reconcile(values: Float64Array, covariance: Matrix, balances: Matrix): Reconciled {
  const n = values.length;
  const { gain, spread } = gainOf(covariance, balances);
  const gaps = balances.map((row) => dotOf(row, values));
  const moved = values.slice();
  for (let i = 0; i < n; i++)
    for (let r = 0; r < gaps.length; r++) moved[i] = moved[i]! - gain[i]![r]! * gaps[r]!;
  // S − Ŝ = G (A S Aᵀ) Gᵀ = G A S.
  const across = balances.map((row) => rowTimes(row, covariance));
  const removed = gain.map((row) => rowTimes(row, across));
  const reduced = covariance.map((row, i) => row.map((value, j) => value - removed[i]![j]!));
  const scores = values.map((value, i) => {
    const variance = removed[i]![i]!;
    return variance > 1e-12 * covariance[i]![i]! ? (moved[i]! - value) / Math.sqrt(variance) : 0;
  });
  const solved = solveWith(spread, Float64Array.from(gaps));
  const sum = dotOf(solved, Float64Array.from(gaps));
  return {
    values: moved,
    covariance: reduced,
    scores,
    sum,
    chance: chiSquareTail(sum, balances.length),
  };
}

/**
 * Share of each gap by which each number moves, G = S Aᵀ (A S Aᵀ)⁻¹.
 *
 * @param covariance - S
 * @param balances - A
 * @returns the gain, a row for each number; and the Cholesky factor of A S Aᵀ
 * @throws {@link InputError} when sizes differ or A S Aᵀ is singular
 */
export function gainOf(
  covariance: Matrix,
  balances: Matrix,
): { readonly gain: Matrix; readonly spread: Matrix } {
  for (const row of [...covariance, ...balances]) {
    if (row.length !== covariance.length)
      throw new InputError("numbers of a balance", row.length, `expected ${covariance.length}`);
  }
  const across = balances.map((row) => rowTimes(row, covariance));
  const spread = cholesky(
    across.map((row) => Float64Array.from(balances, (other) => dotOf(row, other))),
  );
  const gain = covariance.map((_, i) =>
    solveWith(
      spread,
      Float64Array.from(across, (row) => row[i]!),
    ),
  );
  return { gain, spread };
}

// Lower triangle L with L Lᵀ = M.
function cholesky(matrix: Matrix): Matrix {
  const lower = matrix.map((row) => new Float64Array(row.length));
  matrix.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      let sum = row[j]!;
      for (let k = 0; k < j; k++) sum -= lower[i]![k]! * lower[j]![k]!;
      if (i !== j) lower[i]![j] = sum / lower[j]![j]!;
      else if (sum > 1e-12 * row[i]!) lower[i]![i] = Math.sqrt(sum);
      else
        throw new InputError(
          "balance",
          i,
          "expected one with doubt that those before do not say already",
        );
    }
  });
  return lower;
}

function solveWith(lower: Matrix, right: Float64Array): Float64Array {
  const x = right.slice();
  const n = x.length;
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - lower[i]![k]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - lower[k]![i]! * x[k]!;
    x[i] = x[i]! / lower[i]![i]!;
  }
  return x;
}

function rowTimes(row: Float64Array, matrix: Matrix): Float64Array {
  const out = new Float64Array(matrix[0]?.length ?? 0);
  row.forEach((by, k) => {
    if (by === 0) return;
    const other = matrix[k]!;
    for (let j = 0; j < out.length; j++) out[j] = out[j]! + by * other[j]!;
  });
  return out;
}

function dotOf(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
