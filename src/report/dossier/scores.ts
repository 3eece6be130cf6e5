/**
 * What the five quality scores say of a value, and what they do to its spread.
 */

import type { Factor, FactorValue, Quality } from "../../factors/factor.js";
import { spreadOf } from "../../factors/spread-of.js";
import { gsdFromScores } from "../../numbers/pedigree.js";
import type { Spread } from "../../numbers/spread.js";

/** One of the five scores. */
export interface ScoreLine {
  /** Name of the score. */
  readonly name: keyof Quality;
  /** From 1, best, to 5. */
  readonly score: number;
  /** What that score means. */
  readonly means: string;
  /** What it alone does to the span of a 95 % interval: upper end over value. [-] */
  readonly factor: number;
}

/** Scores of a value. */
export interface Scores {
  /** The five, in the usual order. */
  readonly lines: readonly ScoreLine[];
  /** Square of the geometric standard deviation that all five stand for: the span × / ÷ of 95 %. [-] */
  readonly span: number;
  /** Spread that they alone would make; undefined where scores cannot serve, such as for 0. */
  readonly alone: Spread | undefined;
  /** Whether they made the spread in force; otherwise an interval stands beside the value. */
  readonly inForce: boolean;
}

const BEST: Quality = { reliability: 1, completeness: 1, time: 1, place: 1, technology: 1 };

const MEANINGS: Readonly<Record<keyof Quality, readonly string[]>> = {
  reliability: [
    "measured and verified",
    "measured, or verified",
    "partly a good estimate",
    "estimate by an expert",
    "guess",
  ],
  completeness: [
    "all sites, long enough",
    "most sites",
    "some sites",
    "one site",
    "number of sites unknown",
  ],
  time: [
    "less than 3 years old",
    "less than 6 years old",
    "less than 10 years old",
    "less than 15 years old",
    "older",
  ],
  place: [
    "from the place itself",
    "from a larger area around it",
    "from a similar area",
    "from an area a little like it",
    "place unknown",
  ],
  technology: [
    "this machine and process",
    "same process, elsewhere",
    "same process, other technology",
    "related process",
    "related process, in the lab",
  ],
};

const NAMES = ["reliability", "completeness", "time", "place", "technology"] as const;

/**
 * Reads the scores of a value.
 *
 * @param factor - the factor
 * @param value - the value
 * @returns each score with its meaning and effect, and what all of them do
 */
export function scoresOf(factor: Factor, value: FactorValue): Scores {
  const { quality } = value;
  const judged = spreadOf({
    value: value.spread.value,
    unit: factor.unit,
    plausible: factor.plausible,
    spread: undefined,
    quality,
  });
  const alone = "spread" in judged ? judged.spread : undefined;
  return {
    lines: NAMES.map((name) => ({
      name,
      score: quality[name],
      means: MEANINGS[name][quality[name] - 1] ?? "",
      factor: gsdFromScores({ ...BEST, [name]: quality[name] }, 1) ** 2,
    })),
    span: gsdFromScores(quality) ** 2,
    alone,
    inForce: alone !== undefined && JSON.stringify(alone) === JSON.stringify(value.spread),
  };
}
