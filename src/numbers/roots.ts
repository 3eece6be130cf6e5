/**
 * Zeros of a function of one number: a bracketed search, and the zeros along a row of points.
 */

/** How a row of values goes. */
export type Course = "level" | "rises" | "falls" | "bends";

/** A point of a curve. */
export interface Point {
  /** Place. */
  readonly x: number;
  /** Value there; not a number where none can be formed. */
  readonly y: number;
}

/** Steps after which a search is given up; halving alone would need fewer for doubles. */
const MOST_STEPS = 200;

/**
 * Finds the zero between two places at which a function has different signs.
 *
 * Each step tries the parabola through the last three points, lying down, or the secant through two, and
 * halves the bracket where that would leave it or gains too little: never slower than halving by much, and
 * faster by far on smooth curves. A change of sign without a zero, as at a pole, is told apart by the value:
 * at a zero it is smaller than at both ends.
 *
 * @param of - the function; continuous between the ends
 * @param ends - both ends, in any order
 * @param tolerance - half the width of the bracket that is good enough, in the unit of the place; the
 *   resolution of doubles is added
 * @returns the zero; undefined where the signs are alike, a value is no number, or nothing is zero there
 * @see R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, chapter 4
 */
export function rootBetween(
  of: (x: number) => number,
  ends: readonly [number, number],
  tolerance = 0,
): number | undefined {
  let [other, best] = ends;
  let [otherY, bestY] = [of(other), of(best)];
  if (otherY === 0) return other;
  if (bestY === 0) return best;
  if (!(otherY * bestY < 0)) return undefined;
  const least = Math.min(Math.abs(otherY), Math.abs(bestY));
  // `best` and `across` hold the zero between them; `other` is where the search stood before.
  let [across, acrossY] = [other, otherY];
  let step = best - other;
  let before = step;
  for (let tries = 0; tries < MOST_STEPS; tries++) {
    if (Math.abs(acrossY) < Math.abs(bestY)) {
      [other, best, across] = [best, across, best];
      [otherY, bestY, acrossY] = [bestY, acrossY, bestY];
    }
    const near = 2 * Number.EPSILON * Math.abs(best) + tolerance / 2;
    const half = (across - best) / 2;
    if (bestY === 0 || !(Math.abs(half) > near)) return Math.abs(bestY) <= least ? best : undefined;
    const guess = stepTo([other, otherY], [best, bestY], [across, acrossY]);
    const isUsable =
      Math.abs(before) >= near &&
      Math.abs(otherY) > Math.abs(bestY) &&
      guess * half > 0 &&
      Math.abs(guess) < Math.min(1.5 * Math.abs(half) - near / 2, Math.abs(before) / 2);
    [before, step] = isUsable ? [step, guess] : [half, half];
    [other, otherY] = [best, bestY];
    best += Math.abs(step) > near ? step : Math.sign(half) * near;
    bestY = of(best);
    if (Number.isNaN(bestY)) return undefined;
    if (bestY * acrossY > 0) {
      [across, acrossY] = [other, otherY];
      before = step = best - other;
    }
  }
  return undefined;
}

// Step from the best point to the zero of the secant, or of the parabola x(y) through three points.
function stepTo(
  [a, aY]: readonly [number, number],
  [b, bY]: readonly [number, number],
  [c, cY]: readonly [number, number],
): number {
  if (a === c) return (-bY * (b - a)) / (bY - aY);
  const [toA, toC] = [bY / aY, bY / cY];
  const ratio = aY / cY;
  const over = toA * (2 * ((c - b) / 2) * ratio * (ratio - toC) - (b - a) * (toC - 1));
  return -over / ((ratio - 1) * (toC - 1) * (toA - 1));
}

/**
 * Finds the zeros along a row of points, one for each change of sign. Two zeros between neighbours leave no
 * change of sign and are not seen, so points should lie close where a curve bends.
 *
 * @param points - points by rising place; those without a value part the row
 * @param of - the function they were taken from
 * @param tolerance - as for `rootBetween`
 * @returns zeros by rising place; a stretch of zeros gives each of its points
 */
export function rootsAlong(
  points: readonly Point[],
  of: (x: number) => number,
  tolerance = 0,
): readonly number[] {
  return points.flatMap(({ x, y }, i) => {
    if (y === 0) return [x];
    const next = points[i + 1];
    if (next === undefined || !(y * next.y < 0)) return [];
    const root = rootBetween(of, [x, next.x], tolerance);
    return root === undefined ? [] : [root];
  });
}

/**
 * Says how the values of a row go.
 *
 * @param values - values in order; those that are no numbers are passed over
 * @param slack - change that counts as none
 * @returns whether they stay level, only rise, only fall, or bend
 */
export function courseOf(values: readonly number[], slack = 0): Course {
  const known = values.filter((value) => !Number.isNaN(value));
  let [rises, falls] = [false, false];
  for (let i = 1; i < known.length; i++) {
    const change = known[i]! - known[i - 1]!;
    if (change > slack) rises = true;
    if (change < -slack) falls = true;
  }
  if (rises && falls) return "bends";
  return rises ? "rises" : falls ? "falls" : "level";
}
