/**
 * Doubt of the sample: a stratum of few lots says little of what the supplier takes there in general.
 *
 *     x = x_lots · exp(z · c / √n)        n = (Σ a)² / Σ (a_j² / n_j)
 *
 * z a standard normal score, c scatter from lot to lot, n effective number of lots, a_j area and n_j lots of
 * group j. One large lot among small ones counts for little more than one.
 */

import type { Group } from "../ledger/ledger.js";
import { ranksOf } from "../numbers/ranks.js";
import { placeOf } from "./strata.js";

/** Scatter from lot to lot of what a square metre takes, one standard deviation (own assumption, no source). [-] */
export const LOT_SCATTER = 0.2;

/**
 * Effective number of lots, from the areas of groups whose lots are taken as equal.
 *
 * @param groups - groups of one stratum
 * @returns from 1 up to the number of lots; 0 without area
 * @see L. Kish, Survey Sampling, 1965, for the effective size of a sample with unequal weights
 */
export function effectiveLots(groups: readonly Pick<Group, "lots" | "amounts">[]): number {
  const at = placeOf("accepted");
  let all = 0;
  let squares = 0;
  for (const { lots, amounts } of groups) {
    const area = amounts[at] ?? 0;
    if (!(area > 0 && lots > 0)) continue;
    all += area;
    squares += (area * area) / lots;
  }
  return squares > 0 ? (all * all) / squares : 0;
}

/**
 * Effective number of lots behind a value at a mix: as many lots as would leave the same doubt, were they shared out
 * as the mix is.
 *
 *     n = (Σ w)² / Σ (w² / n_k)
 *
 * @param weights - weight of each stratum
 * @param effective - effective number of lots of each; strata without lots are left out
 * @returns number of lots; 0 where there are none
 */
export function effectiveAtMix(weights: readonly number[], effective: readonly number[]): number {
  let all = 0;
  let squares = 0;
  weights.forEach((weight, k) => {
    const lots = effective[k] ?? 0;
    if (!(lots > 0)) return;
    all += weight;
    squares += (weight * weight) / lots;
  });
  return squares > 0 ? (all * all) / squares : 0;
}

/**
 * Draws of the factor by which a stratum may differ from its lots.
 *
 * @param lots - effective number of lots
 * @param seed - seed of the draws
 * @param stream - name of the stratum at this supplier
 * @param count - number of draws
 * @returns factors with a median of 1
 */
export function sampleFactors(
  lots: number,
  seed: number,
  stream: string,
  count: number,
): Float64Array {
  const scatter = LOT_SCATTER / Math.sqrt(Math.max(1, lots));
  return ranksOf(seed, stream, count)
    .scores()
    .map((score) => Math.exp(scatter * score));
}
