/**
 * Doubt from quality scores, for values that were published without an interval.
 */

import { InputError } from "../problems/input-error.js";

/** Five scores from 1 (best) to 5. */
export interface QualityScores {
  /** How the value was come by. */
  readonly reliability: number;
  /** How many sites and how long. */
  readonly completeness: number;
  /** Years between the value and its use. */
  readonly time: number;
  /** Distance between the place of the value and of its use. */
  readonly place: number;
  /** Likeness of the machine and process. */
  readonly technology: number;
}

// Contributions to the square of the geometric standard deviation, score 1 first. Place 4 and technology 2
// are blank in the expert set of 2005 and taken from the table that followed it.
const FACTORS: Readonly<Record<keyof QualityScores, readonly number[]>> = {
  reliability: [1, 1.05, 1.1, 1.2, 1.5],
  completeness: [1, 1.02, 1.05, 1.1, 1.2],
  time: [1, 1.03, 1.1, 1.2, 1.5],
  place: [1, 1.01, 1.02, 1.05, 1.1],
  technology: [1, 1.05, 1.2, 1.5, 2],
};

const INDICATORS = ["reliability", "completeness", "time", "place", "technology"] as const;

/**
 * Geometric standard deviation that five scores stand for.
 *
 *     GSD² = exp √(ln² U_b + Σ ln² Uᵢ)
 *
 * The factors are contributions to GSD², the span of a 95 % interval, and come from expert judgement, not
 * from data. Another published set states GSD itself; the two must never be mixed.
 *
 * @param quality - the scores, whole numbers from 1 to 5
 * @param basicFactor - U_b, doubt left when every score is 1: 1.05 for energy, materials and carbon dioxide
 * @returns GSD, not its square; at least √U_b [-]
 * @throws {@link InputError} when a score is not a whole number from 1 to 5, or the basic factor is below 1
 * @see R. Frischknecht et al., Int. J. LCA 10 (2005) 3-9; B. P. Weidema and M. S. Wesnæs, J. Cleaner
 *   Production 4 (1996) 167-174 for the scores. The factors are from memory, agreed with (ln U / 2)² as
 *   printed in the variance table of 2013.
 */
export function gsdFromScores(quality: QualityScores, basicFactor = 1.05): number {
  if (!(basicFactor >= 1 && Number.isFinite(basicFactor))) {
    throw new InputError("basic factor of doubt", basicFactor, "expected 1 or more");
  }
  let squares = Math.log(basicFactor) ** 2;
  for (const indicator of INDICATORS) {
    const score = quality[indicator];
    const factor = FACTORS[indicator][score - 1];
    if (factor === undefined) {
      throw new InputError(
        `quality score ${indicator}`,
        score,
        "expected a whole number from 1 (best) to 5",
      );
    }
    squares += Math.log(factor) ** 2;
  }
  return Math.exp(Math.sqrt(squares) / 2);
}
