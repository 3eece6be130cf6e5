/**
 * Linear least squares by Householder reflections, which lose half as many digits on near-collinear columns
 * as the normal equations do.
 */

import { InputError } from "../problems/input-error.js";

/** A fit of y = β₀ + Σ βⱼ xⱼ. */
export interface LinearFit {
  /** β, the intercept first where there is one. */
  readonly coefficients: Float64Array;
  /** Standard errors of β: s √diag((XᵀX)⁻¹). */
  readonly errors: Float64Array;
  /** y − ŷ. */
  readonly residuals: Float64Array;
  /** Residual sum of squares. */
  readonly residualSquares: number;
  /** Standard deviation of the residuals, √(RSS/(n − p)). */
  readonly residualSd: number;
  /** 1 − RSS/TSS; TSS about the mean with an intercept, about zero without one. */
  readonly r2: number;
}

/** Columns whose part at right angles to those before is below this share of their length add nothing. */
const COLLINEAR = 1e-12;

/**
 * Fits a line or plane.
 *
 * @param columns - x₁, x₂, …, each of n numbers
 * @param y - n numbers
 * @param intercept - whether β₀ is fitted
 * @returns the fit
 * @throws {@link InputError} when lengths differ, there are no more numbers than coefficients, or columns
 *   are collinear
 * @see G. H. Golub, Numerical methods for solving linear least squares problems, Numer. Math. 7 (1965) 206-216
 */
export function leastSquares(
  columns: readonly Float64Array[],
  y: Float64Array,
  intercept = true,
): LinearFit {
  const n = y.length;
  const matrix = [
    ...(intercept ? [new Float64Array(n).fill(1)] : []),
    ...columns.map((column) => column.slice()),
  ];
  const p = matrix.length;
  for (const { length } of matrix) {
    if (length !== n) throw new InputError("column of a fit", length, `expected ${n} numbers`);
  }
  if (!(n > p)) throw new InputError("numbers to fit", n, `expected more than ${p}`);
  const rotated = y.slice();
  const diagonal = reflect(matrix, rotated);
  const coefficients = new Float64Array(p);
  for (let j = p - 1; j >= 0; j--) {
    let sum = rotated[j]!;
    for (let k = j + 1; k < p; k++) sum -= matrix[k]![j]! * coefficients[k]!;
    coefficients[j] = sum / diagonal[j]!;
  }
  const residuals = y.slice();
  if (intercept) for (let i = 0; i < n; i++) residuals[i] = residuals[i]! - coefficients[0]!;
  columns.forEach((column, k) => {
    const by = coefficients[k + (intercept ? 1 : 0)]!;
    for (let i = 0; i < n; i++) residuals[i] = residuals[i]! - by * column[i]!;
  });
  const residualSquares = squares(residuals, 0);
  const centre = intercept ? y.reduce((sum, value) => sum + value, 0) / n : 0;
  const residualSd = Math.sqrt(residualSquares / (n - p));
  return {
    coefficients,
    errors: errorsOf(matrix, diagonal, residualSd),
    residuals,
    residualSquares,
    residualSd,
    r2: 1 - residualSquares / squares(y, centre),
  };
}

// Turns the columns into an upper triangle, in place, and y with them; the diagonal is handed back apart,
// because its places hold the reflections.
function reflect(matrix: readonly Float64Array[], y: Float64Array): Float64Array {
  const n = y.length;
  const diagonal = new Float64Array(matrix.length);
  matrix.forEach((column, j) => {
    const whole = Math.sqrt(squares(column, 0));
    let length = 0;
    for (let i = j; i < n; i++) length += column[i]! ** 2;
    length = Math.sqrt(length);
    if (!(length > COLLINEAR * whole)) {
      throw new InputError("column of a fit", j, "expected one that those before do not give");
    }
    const alpha = column[j]! > 0 ? -length : length;
    diagonal[j] = alpha;
    column[j] = column[j]! - alpha;
    const half = -alpha * column[j];
    for (const other of [...matrix.slice(j + 1), y]) {
      let dot = 0;
      for (let i = j; i < n; i++) dot += column[i]! * other[i]!;
      const by = dot / half;
      for (let i = j; i < n; i++) other[i] = other[i]! - by * column[i]!;
    }
  });
  return diagonal;
}

// The rows of R⁻¹ give (XᵀX)⁻¹ = R⁻¹ R⁻ᵀ.
function errorsOf(
  matrix: readonly Float64Array[],
  diagonal: Float64Array,
  sd: number,
): Float64Array {
  const p = matrix.length;
  const errors = new Float64Array(p);
  const inverse = Array.from({ length: p }, () => new Float64Array(p));
  for (let j = 0; j < p; j++) {
    inverse[j]![j] = 1 / diagonal[j]!;
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += matrix[k]![i]! * inverse[k]![j]!;
      inverse[i]![j] = -sum / diagonal[i]!;
    }
  }
  inverse.forEach((row, i) => {
    errors[i] = sd * Math.sqrt(squares(row, 0));
  });
  return errors;
}

function squares(numbers: Float64Array, about: number): number {
  let sum = 0;
  for (const number of numbers) sum += (number - about) ** 2;
  return sum;
}
