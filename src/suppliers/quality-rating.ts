/**
 * How well numbers are known: a rating of data, beside the quantities and never in them.
 *
 *     r = (TeR + TiR + GeR + P) / 4        each from 1, the best, to 5
 *
 * TeR likeness of the technology, TiR age, GeR place, P precision. Each is the mean over what adds to a quantity,
 * weighted by what it adds. Completeness stands beside them and is not in the mean.
 */

import { leafRange } from "../account/draws.js";
import { pairsOf } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import type { FactorSet, Quality } from "../factors/factor.js";
import { type Leaf, leavesOf } from "../numbers/quantity.js";
import { isBare } from "./bare-numbers.js";
import type { Candidate } from "./candidate.js";

/** Scores of a quantity. */
export interface QualityRating extends Quality {
  /** Mean of technology, time, place and precision. */
  readonly rating: number;
}

/** A part with its scores. */
export interface RatedPart extends Quality {
  /** What it adds, in any unit. */
  readonly share: number;
}

/** A setting that a house states of its own machine: it is of the place and the day, and checked by nobody. */
const STATED: Quality = { reliability: 4, completeness: 3, time: 1, place: 1, technology: 1 };

/** One without interval and source, which may be a guess as well. */
const BARE: Quality = { ...STATED, reliability: 5, completeness: 5 };

/** A factor that says nothing of itself. */
const UNKNOWN: Quality = { reliability: 5, completeness: 5, time: 5, place: 5, technology: 5 };

/**
 * Rating of parts.
 *
 * @param parts - parts with scores and shares
 * @returns weighted means and their rating; undefined where nothing adds
 */
export function qualityRating(parts: readonly RatedPart[]): QualityRating | undefined {
  const all = parts.reduce((sum, { share }) => sum + Math.abs(share), 0);
  if (!(all > 0)) return undefined;
  const mean = (score: keyof Quality): number =>
    parts.reduce((sum, part) => sum + Math.abs(part.share) * part[score], 0) / all;
  const [reliability, completeness] = [mean("reliability"), mean("completeness")];
  const [time, place, technology] = [mean("time"), mean("place"), mean("technology")];
  return {
    reliability,
    completeness,
    time,
    place,
    technology,
    rating: (technology + time + place + reliability) / 4,
  };
}

/**
 * Rating of what a supplier takes of one indicator.
 *
 * @param candidate - the supplier
 * @param id - the indicator
 * @param factors - factors with their scores
 * @returns the rating; undefined where it takes nothing
 */
export function supplierRating(
  candidate: Pick<Candidate, "program">,
  id: IndicatorId,
  factors: FactorSet,
): QualityRating | undefined {
  const { program } = candidate;
  const values = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const known = new Map<number, Quality>();
  const scored = (rate: number): Quality => {
    let found = known.get(rate);
    if (found === undefined) {
      const quantity = program.nodes.list[rate]?.quantity;
      const leaves = quantity === undefined ? [] : leavesOf(quantity);
      const parts = leaves
        .filter(({ provenance }) => provenance !== "constant")
        .map((leaf) => ({ share: 1, ...scoresOf(leaf, factors) }));
      // A rate that reads nothing multiplies what was logged.
      known.set(rate, (found = qualityRating(parts) ?? STATED));
    }
    return found;
  };
  return qualityRating(
    program.terms.flatMap((term): readonly RatedPart[] => {
      const amount = program.classes[term.lotClass]?.amounts[term.amount] ?? 0;
      const per = pairsOf(program, term, id).reduce(
        (sum, [a, b]) => sum + (values[a] ?? NaN) * (values[b] ?? NaN),
        0,
      );
      const share = amount * (values[term.rate] ?? NaN) * per;
      return share === 0 ? [] : [{ share, ...scored(term.rate) }];
    }),
  );
}

function scoresOf(leaf: Leaf, factors: FactorSet): Quality {
  if (leaf.provenance === "plant") return isBare(leaf) ? BARE : STATED;
  return factors.factors.get(leaf.factor)?.values[0]?.quality ?? UNKNOWN;
}
