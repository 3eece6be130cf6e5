/**
 * Three published ways to ask whether one route takes less than the other, on paired draws d = dye − pigment.
 *
 *     share of draws     k/N of the draws have d > 0                        says nothing of how much
 *     paired difference  t = d̄ / (s/√N)                                     grows with N, whatever d is
 *     modified test      t = (|d̄|/s − δ₀) √N, one-sided, δ₀ = 0.2 usual     asks for a difference worth naming
 *
 * Draws are no sample of mills: with draws enough any difference has a large t. Only the modified test asks
 * whether it is larger than δ₀ standard deviations.
 *
 * @see R. Heijungs and R. Kleijn, Int. J. Life Cycle Assessment 6 (2001) 141-148, for the share of draws
 * @see P. J. G. Henriksson et al., PLoS ONE 10 (2015) e0121221, for paired differences
 * @see R. Heijungs, P. J. G. Henriksson and J. B. Guinée, Entropy 18 (2016) 361, for the modified test
 */

import { normalCdf } from "../numbers/normal.js";

/** Which route takes less by a method. */
export type Finding = "pigment" | "dye" | "open";

/** Answers of all three methods to one indicator. */
export interface Methods {
  /** Share of draws. */
  readonly share: {
    /** Draws in which pigment takes less. */
    readonly less: number;
    /** Draws in which the dye route takes less. */
    readonly more: number;
    /** Number of draws. */
    readonly count: number;
    /** The route that takes less in 95 % of the draws or more. */
    readonly finding: Finding;
  };
  /** Paired difference. */
  readonly paired: {
    /** Mean of dye minus pigment. */
    readonly mean: number;
    /** Its standard deviation over draws. */
    readonly sd: number;
    /** t; infinite where all draws differ alike. */
    readonly t: number;
    /** The route that takes less by a two-sided test at 5 %. */
    readonly finding: Finding;
  };
  /** Modified test. */
  readonly modified: {
    /** Least difference worth naming, in standard deviations. */
    readonly least: number;
    /** t; negative where the difference is smaller. */
    readonly t: number;
    /** The route that takes less by a one-sided test at 5 %. */
    readonly finding: Finding;
  };
}

/** Share of draws from which an order counts as discernible (Heijungs and Kleijn 2001). */
const DISCERNIBLE = 0.95;

/** Error of the first kind allowed by both tests. */
const ALLOWED = 0.05;

/** Standard deviations that a difference must have at least to be named: small by Cohen's scale. */
export const LEAST_DIFFERENCE = 0.2;

/**
 * Asks all three methods. Tests take the normal distribution for Student's, which holds for some hundred draws
 * on.
 *
 * @param pigment - draws of the pigment route
 * @param dye - draws of the dye route, paired with them
 * @param least - least difference worth naming, δ₀ [standard deviations]
 * @returns their answers; open in all where a draw is no number or there are fewer than two
 */
export function methodsOf(
  pigment: Float64Array,
  dye: Float64Array,
  least: number = LEAST_DIFFERENCE,
): Methods {
  const count = pigment.length;
  const differences = dye.map((value, i) => value - (pigment[i] ?? NaN));
  const mean = differences.reduce((sum, value) => sum + value, 0) / count;
  const squares = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const sd = Math.sqrt(squares / (count - 1));
  const less = counted(differences, 1);
  const more = counted(differences, -1);
  const effect = mean / sd;
  const paired = effect * Math.sqrt(count);
  const modified = (Math.abs(effect) - least) * Math.sqrt(count);
  return {
    share: {
      less,
      more,
      count,
      finding: towards(less - more, Math.max(less, more) / count >= DISCERNIBLE),
    },
    paired: {
      mean,
      sd,
      t: paired,
      finding: towards(mean, 2 * tail(Math.abs(paired)) < ALLOWED),
    },
    modified: {
      least,
      t: modified,
      finding: towards(mean, tail(modified) < ALLOWED),
    },
  };
}

// Nothing is found where no number came out.
function tail(t: number): number {
  return Number.isNaN(t) ? NaN : normalCdf(-t);
}

function counted(differences: Float64Array, sign: number): number {
  return differences.reduce((sum, value) => sum + (sign * value > 0 ? 1 : 0), 0);
}

function towards(difference: number, isFound: boolean): Finding {
  if (!isFound || !(difference !== 0)) return "open";
  return difference > 0 ? "pigment" : "dye";
}
