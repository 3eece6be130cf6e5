/**
 * Numbers of a plant file that stand there bare: no interval, and not a word where they are from. One such number
 * may move a house to the front, so it is drawn as widely as if it had been left to its default.
 */

import type { FactorSet } from "../factors/factor.js";
import { interval95 } from "../numbers/distributions.js";
import { normalQuantile } from "../numbers/normal.js";
import type { Leaf } from "../numbers/quantity.js";
import type { Spread } from "../numbers/spread.js";

/** Ratio of both ends where no default is at hand. [-] */
const OTHERWISE = 4;

/** Standard errors between the ends of a 95 % interval. */
const ACROSS = 2 * normalQuantile(0.975);

/**
 * Whether a number of the plant file has neither interval nor source.
 *
 * @param leaf - the number
 * @returns false for defaults, and for values with both ends or a source
 */
export function isBare(leaf: Leaf): boolean {
  const { id, provenance, source, spread, drawn } = leaf;
  return (
    provenance === "plant" &&
    id.includes(" @ ") &&
    drawn === undefined &&
    spread.shape !== "triangular" &&
    source.startsWith("plant.yaml")
  );
}

/**
 * A bare number with the doubt of the shipped default around it: the same ratio of both ends where they are above 0,
 * otherwise the same distance, within the plausible limits.
 *
 * @param leaf - the number
 * @param shipped - the reader's factors
 * @returns the number, drawn more widely; any other as it is
 */
export function widened(leaf: Leaf, shipped: FactorSet): Leaf {
  if (!isBare(leaf)) return leaf;
  const { spread: own } = leaf;
  const value = own.value;
  const factor = shipped.factors.get(leaf.factor);
  const [low, high] = ends(factor?.values[0]?.spread);
  const limits = factor?.plausible ?? [-Infinity, Infinity];
  const spread: Spread =
    value > 0 && low > 0
      ? { shape: "lognormal", value, gsd: (high / low) ** (1 / ACROSS), limits }
      : { shape: "normal", value, sd: (high - low) / ACROSS, limits };
  const [ownLow, ownHigh] = interval95(own);
  const [newLow, newHigh] = interval95(spread);
  return newHigh - newLow > ownHigh - ownLow ? { ...leaf, spread } : leaf;
}

function ends(spread: Spread | undefined): readonly [number, number] {
  if (spread === undefined || spread.shape === "fixed") return [1, OTHERWISE];
  return interval95(spread);
}
