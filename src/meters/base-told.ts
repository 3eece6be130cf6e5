/**
 * What a regression tells of a base load that was known in wide limits before. The months are used once, for what
 * they say beyond their sum: how consumption goes with production.
 *
 *     base = a − Σ wₘ Lₘ,      posterior ∝ lognormal(base) × normal(a − Σ wₘ Lₘ; base, error)
 *
 * a is the intercept with what goes by degree days, wₘ the share by which it hangs on each month, Lₘ what lots take in that month by the model.
 * Goods differ from month to month, so Σ wₘ Lₘ is not 0 where the model is not right in each of them; how far it
 * strays is drawn.
 */

import { leastSquares } from "../numbers/least-squares.js";

/** Steps by which what was known before is weighed, up to {@link ENDS} standard deviations on either side. */
const STEPS = 600;
const ENDS = 6;

/** Below this share of the base, its error is as good as one of the logarithm. */
const SHARP = 0.05;

/** A base that all of the prior misses by so many errors contradicts it. */
const APART = 4;

/** Lognormal doubt. */
export interface LogDoubt {
  /** Mean of the logarithm. */
  readonly mean: number;
  /** Its standard deviation. */
  readonly sd: number;
}

/**
 * Share by which what runs without lots hangs on each point of a fit.
 *
 * @param columns - what the fit goes by
 * @param counts - how often each coefficient counts, the intercept first: months, and the sum of degree days
 * @returns weights w, Σ count × coefficient = Σ w y
 */
export function baseWeights(
  columns: readonly Float64Array[],
  counts: readonly number[],
): Float64Array {
  const n = columns[0]?.length ?? 0;
  return Float64Array.from({ length: n }, (_, at) => {
    const one = new Float64Array(n);
    one[at] = 1;
    return leastSquares(columns, one).coefficients.reduce(
      (sum, value, j) => sum + (counts[j] ?? 0) * value,
      0,
    );
  });
}

/**
 * Weighs a base known in wide limits by what a regression found.
 *
 * @param before - doubt before
 * @param found - base by regression
 * @param error - its standard error
 * @returns doubt after; undefined where the regression contradicts all of it
 */
export function toldBase(before: LogDoubt, found: number, error: number): LogDoubt | undefined {
  if (found > 0 && error < SHARP * found) {
    const [own, other] = [1 / before.sd ** 2, (found / error) ** 2];
    const all = own + other;
    return { mean: (own * before.mean + other * Math.log(found)) / all, sd: 1 / Math.sqrt(all) };
  }
  let [all, sum, squares, nearest] = [0, 0, 0, Infinity];
  for (let at = -STEPS; at <= STEPS; at++) {
    const z = (ENDS * at) / STEPS;
    const log = before.mean + before.sd * z;
    const miss = Math.abs(Math.exp(log) - found) / error;
    nearest = Math.min(nearest, miss);
    const weight = Math.exp(-(miss ** 2 + z ** 2) / 2);
    all += weight;
    sum += weight * log;
    squares += weight * log ** 2;
  }
  if (!(nearest <= APART && all > 0)) return undefined;
  const mean = sum / all;
  return { mean, sd: Math.sqrt(Math.max(0, squares / all - mean ** 2)) };
}
