/**
 * How a doubt is drawn: by its inverse distribution function, so that the same uniform number always stands
 * for the same rank, whatever the shape.
 */

import { InputError } from "../problems/input-error.js";
import { normalCdf, normalDensity, normalQuantile } from "./normal.js";
import { pertCdf, pertQuantile } from "./pert.js";
import { each, type Ranks } from "./ranks.js";
import type { Bounded, Lognormal, Normal, Spread } from "./spread.js";

/** Standard deviations beyond which a tail is below 10⁻¹⁷. */
const BEYOND = 8.5;

/** Width of a 95 % interval in standard deviations, 3.919928. */
const WIDTH_OF_95 = 2 * normalQuantile(0.975);

/**
 * The inverse distribution function of a spread.
 *
 * Normal and lognormal spreads are cut at their limits: u is mapped into [F(low), F(high)] first, so the
 * mass beyond a limit is spread over the inside and never heaped on the limit itself.
 *
 * @param spread - the doubt; a bounded one whose ends coincide is taken as held still
 * @returns a function of a probability above 0 and below 1
 * @throws {@link InputError} when the parameters are not in order
 */
export function quantileOf(spread: Spread): (u: number) => number {
  switch (spread.shape) {
    case "fixed": {
      const value = finite(spread.value);
      return () => value;
    }
    case "normal":
    case "lognormal":
      return truncated(spread);
    default:
      return bounded(spread);
  }
}

/**
 * Draws a spread.
 *
 * @param spread - the doubt
 * @param ranks - rank of each draw
 * @returns one value per rank, in their order
 * @throws {@link InputError} when the parameters are not in order
 */
export function draw(spread: Spread, ranks: Ranks): Float64Array {
  if (spread.shape === "normal" || spread.shape === "lognormal") {
    const [a, b] = standardLimits(checked(spread));
    // Limits that cut off less than a rounding: the scores need no way through probabilities.
    if (a < -BEYOND && b > BEYOND) return each(ranks.scores(), standing(spread));
  }
  return each(ranks.shares(), quantileOf(spread));
}

/**
 * Central 95 % interval of a spread, as it is drawn.
 *
 * @param spread - the doubt
 * @returns its 2.5 % and 97.5 % quantiles
 */
export function interval95(spread: Spread): [number, number] {
  const quantile = quantileOf(spread);
  return [quantile(0.025), quantile(0.975)];
}

/**
 * Median of a spread, as it is drawn: with a cut on one side it is not the value it was given by.
 *
 * @param spread - the doubt
 * @returns its 50 % quantile
 */
export function medianOf(spread: Spread): number {
  return quantileOf(spread)(0.5);
}

/**
 * Mean of a spread, as it is drawn, in closed form.
 *
 *     normal cut to a…b      µ + σ (φ(a) − φ(b)) / (Φ(b) − Φ(a))
 *     lognormal cut to a…b   median · exp(σ²/2) · (Φ(b − σ) − Φ(a − σ)) / (Φ(b) − Φ(a))
 *     triangular             (low + mode + high) / 3
 *     beta-PERT              (low + 4 mode + high) / 6
 *
 * @param spread - the doubt
 * @returns its mean
 * @throws {@link InputError} when the parameters are not in order
 */
export function meanOf(spread: Spread): number {
  switch (spread.shape) {
    case "fixed":
      return finite(spread.value);
    case "normal": {
      const [a, b] = standardLimits(checked(spread));
      const kept = normalCdf(b) - normalCdf(a);
      return spread.value + (spread.sd * (normalDensity(a) - normalDensity(b))) / kept;
    }
    case "lognormal": {
      const [a, b] = standardLimits(checked(spread));
      const sigma = Math.log(spread.gsd);
      const kept = normalCdf(b) - normalCdf(a);
      const shifted = normalCdf(b - sigma) - normalCdf(a - sigma);
      return (spread.value * Math.exp((sigma * sigma) / 2) * shifted) / kept;
    }
    default: {
      const { low, value, high } = ordered(spread);
      if (spread.shape === "uniform") return (low + high) / 2;
      return spread.shape === "triangular"
        ? (low + value + high) / 3
        : (low + 4 * value + high) / 6;
    }
  }
}

/**
 * Lognormal spread from a published 95 % interval.
 *
 *     GSD = (high / low)^(1 / 3.919928)
 *
 * The value is taken as the median, also when it is not the geometric middle of the interval.
 *
 * @param value - published value, above 0
 * @param low - 2.5 % end, above 0
 * @param high - 97.5 % end, above `low`
 * @param limits - physical limits
 * @returns the spread
 * @throws {@link InputError} when the value does not lie between the ends, or the ends are not in order
 * @see E. Limpert, W. A. Stahel and M. Abbt, BioScience 51 (2001) 341-352
 */
export function lognormalFromInterval(
  value: number,
  low: number,
  high: number,
  limits: readonly [number, number],
): Lognormal {
  if (!(low > 0 && low < high && Number.isFinite(high))) {
    throw new InputError("lower end of a 95 % interval", low, `expected above 0 and below ${high}`);
  }
  if (!(value >= low && value <= high)) {
    throw new InputError("value with a 95 % interval", value, `expected from ${low} to ${high}`);
  }
  return checked({
    shape: "lognormal",
    value,
    gsd: Math.exp(Math.log(high / low) / WIDTH_OF_95),
    limits,
  });
}

/**
 * Probability that a spread puts beyond limits before it is cut: a measure of how ill the shape fits.
 *
 * @param spread - the doubt; its own limits are not looked at
 * @param limits - lower and upper limit
 * @returns probability from 0 to 1
 * @throws {@link InputError} when the parameters are not in order
 */
export function tailBeyond(spread: Spread, limits: readonly [number, number]): number {
  const [low, high] = limits;
  if (!(low <= high)) throw new InputError("lower limit", low, `expected no more than ${high}`);
  if (spread.shape === "fixed") return spread.value < low || spread.value > high ? 1 : 0;
  if (spread.shape === "normal" || spread.shape === "lognormal") {
    const [a, b] = standardLimits({ ...checked(spread), limits });
    return normalCdf(a) + normalCdf(-b);
  }
  return boundedCdf(spread, low) + (1 - boundedCdf(spread, high));
}

function truncated(spread: Normal | Lognormal): (u: number) => number {
  const [a, b] = standardLimits(checked(spread));
  const below = normalCdf(a);
  const above = normalCdf(-b);
  const kept = 1 - below - above;
  const [low, high] = spread.limits;
  const at = standing(spread);
  // Each half is counted from its own end, so that both tails keep their digits.
  const standard = (u: number): number =>
    u <= 0.5 ? normalQuantile(below + u * kept) : -normalQuantile(above + (1 - u) * kept);
  // The two comparisons can only undo a rounding of the last digit at a limit; no mass is moved.
  return (u) => Math.min(high, Math.max(low, at(standard(u))));
}

// Value that stands at a number of standard deviations.
function standing(spread: Normal | Lognormal): (z: number) => number {
  const { value } = spread;
  if (spread.shape === "normal") {
    const { sd } = spread;
    return (z) => value + sd * z;
  }
  const sigma = Math.log(spread.gsd);
  return (z) => value * Math.exp(sigma * z);
}

function standardLimits(spread: Normal | Lognormal): [number, number] {
  const [low, high] = spread.limits;
  if (spread.shape === "normal") {
    return [(low - spread.value) / spread.sd, (high - spread.value) / spread.sd];
  }
  const sigma = Math.log(spread.gsd);
  return [
    low > 0 ? Math.log(low / spread.value) / sigma : -Infinity,
    high > 0 ? Math.log(high / spread.value) / sigma : -Infinity,
  ];
}

function checked<T extends Normal | Lognormal>(spread: T): T {
  const { value, limits } = spread;
  const [low, high] = limits;
  if (spread.shape === "normal" && !(spread.sd > 0 && Number.isFinite(spread.sd))) {
    throw new InputError("standard deviation", spread.sd, "expected above 0; else call it fixed");
  }
  if (spread.shape === "lognormal" && !(spread.gsd > 1 && Number.isFinite(spread.gsd))) {
    throw new InputError(
      "geometric standard deviation",
      spread.gsd,
      "expected above 1; else call it fixed",
    );
  }
  if (spread.shape === "lognormal" && !(value > 0)) {
    throw new InputError("median of a lognormal spread", value, "expected above 0");
  }
  if (!(low < high && value >= low && value <= high && Number.isFinite(value))) {
    throw new InputError(
      "value of a spread",
      value,
      `expected between its limits, ${low} to ${high}`,
    );
  }
  return spread;
}

function bounded(spread: Bounded): (u: number) => number {
  const { low, value, high } = ordered(spread);
  const width = high - low;
  if (width === 0) return () => low;
  if (spread.shape === "uniform") return (u) => low + u * width;
  if (spread.shape === "pert") {
    const quantile = pertQuantile((value - low) / width);
    return (u) => low + width * quantile(u);
  }
  const turn = (value - low) / width;
  return (u) =>
    u < turn
      ? low + Math.sqrt(u * width * (value - low))
      : high - Math.sqrt((1 - u) * width * (high - value));
}

function boundedCdf(spread: Bounded, x: number): number {
  const { low, value, high } = ordered(spread);
  if (x >= high) return 1;
  if (x <= low) return 0;
  const width = high - low;
  if (spread.shape === "uniform") return (x - low) / width;
  if (spread.shape === "pert") return pertCdf((value - low) / width, (x - low) / width);
  return x <= value
    ? (x - low) ** 2 / (width * (value - low))
    : 1 - (high - x) ** 2 / (width * (high - value));
}

function ordered(spread: Bounded): Bounded {
  const { low, value, high } = spread;
  if (low <= value && value <= high && Number.isFinite(high - low)) return spread;
  throw new InputError(
    `most likely value of a ${spread.shape} spread`,
    value,
    `expected between its ends, ${low} to ${high}`,
  );
}

function finite(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new InputError("fixed value", value, "expected a finite number");
}
