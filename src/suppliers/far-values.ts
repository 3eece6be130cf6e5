/**
 * Settings that a house states and that lie far from those of the other houses, stated or left to defaults.
 */

import { leafRange } from "../account/draws.js";
import type { Program } from "../account/program.js";
import { quantile } from "../numbers/quantiles.js";
import { isOwned } from "./candidate.js";

/** Times, up or down, beyond which a value is far. [-] */
const FAR = 2;

/** Other houses that it takes to say what is usual. */
const OTHERS = 2;

/** A value far from the rest. */
export interface FarValue {
  /** Id of the setting. */
  readonly factor: string;
  /** Unit. */
  readonly unit: string;
  /** The value. */
  readonly value: number;
  /** Over the median of the others. [-] */
  readonly ratio: number;
}

/**
 * Finds values that are less than half, or more than twice, the median of the others.
 *
 * @param own - terms of the house
 * @param others - terms of the others
 * @returns the furthest first; undefined with fewer than two others
 */
export function farValues(
  own: Program,
  others: readonly Program[],
): readonly FarValue[] | undefined {
  if (others.length < OTHERS) return undefined;
  const usual = new Map<string, number[]>();
  for (const program of others)
    for (const { leaf } of program.nodes.leaves()) {
      if (leaf.provenance === "constant" || !isOwned(leaf)) continue;
      const values = usual.get(leaf.factor) ?? [];
      values.push(leafRange(leaf).median);
      usual.set(leaf.factor, values);
    }
  const found = new Map<string, FarValue>();
  for (const { leaf } of own.nodes.leaves()) {
    const values = usual.get(leaf.factor);
    if (leaf.provenance !== "plant" || !isOwned(leaf) || values === undefined) continue;
    const { factor, unit, spread } = leaf;
    const value = "value" in spread ? spread.value : leafRange(leaf).median;
    const ratio = value / quantile(Float64Array.from(values).sort(), 0.5);
    // Where others have 0 there is no ratio; a 0 where they have more is as far as can be.
    if (!(ratio >= 0 && ratio < Infinity) || (ratio >= 1 / FAR && ratio <= FAR)) continue;
    const known = found.get(factor);
    if (known === undefined || distance(ratio) > distance(known.ratio))
      found.set(factor, { factor, unit, value, ratio });
  }
  return [...found.values()].sort(
    (a, b) => distance(b.ratio) - distance(a.ratio) || (a.factor < b.factor ? -1 : 1),
  );
}

function distance(ratio: number): number {
  return Math.abs(Math.log(ratio));
}
