/**
 * Settings and factors that can be turned one at a time, each with the range it may be turned over.
 */

import { leafRange } from "../account/draws.js";
import type { Program } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import type { Leaf } from "../numbers/quantity.js";

/** A setting or factor, with all owners that have the same value of it. */
export interface Turned {
  /** Stream of the number, or the factor itself where several machines share its default. */
  readonly factor: string;
  /** Its first leaf, for unit and words. */
  readonly leaf: Leaf;
  /** Nodes of its leaves. */
  readonly at: readonly number[];
  /** Median as it is drawn. */
  readonly today: number;
  /** 95 % interval as it is drawn; both ends alike where there is no doubt. */
  readonly interval: readonly [number, number];
  /** Plausible range; undefined where neither the factor nor the number itself gives one. */
  readonly range: readonly [number, number] | undefined;
}

/** Highest value tried of a number without a plausible range, such as a price, in values of today. */
const TIMES_TODAY = 10;

/** Limits as wide as this say nothing. */
const BOUNDLESS = 1e8;

/**
 * Lists what can be turned. Owners that share a default and its median are turned together; constants are left
 * out, for they are definitions.
 *
 * @param program - the program
 * @param factors - factors in force, for plausible ranges
 * @returns settings and factors in the order of the program
 */
export function turnedOf(program: Program, factors: FactorSet): readonly Turned[] {
  const groups = new Map<string, Turned & { readonly at: number[] }>();
  for (const { leaf, at } of program.nodes.leaves()) {
    if (leaf.provenance === "constant") continue;
    const { median, low, high } = leafRange(leaf);
    const factor = leaf.common ?? leaf.id;
    const known = groups.get(`${factor}|${median}`);
    if (known !== undefined) {
      known.at.push(at);
      continue;
    }
    groups.set(`${factor}|${median}`, {
      factor,
      leaf,
      at: [at],
      today: median,
      interval: [low, high],
      range: rangeOf(leaf, median, factors),
    });
  }
  return [...groups.values()];
}

function rangeOf(
  leaf: Leaf,
  today: number,
  factors: FactorSet,
): readonly [number, number] | undefined {
  const plausible = factors.factors.get(leaf.factor)?.plausible;
  const limits = plausible ?? ("limits" in leaf.spread ? leaf.spread.limits : undefined);
  if (limits !== undefined && limits[0] < limits[1] && limits[1] - limits[0] < BOUNDLESS)
    return limits;
  return today > 0 ? [0, TIMES_TODAY * today] : undefined;
}

/**
 * Values from the lower to the upper end of a range, today's among them: evenly below it, and above it by equal
 * factors, for plausible ranges reach far up.
 *
 * @param range - both ends
 * @param today - the value of today
 * @param each - number of steps on either side
 * @returns values by size, without doubles
 */
export function stepsOver(
  range: readonly [number, number],
  today: number,
  each: number,
): readonly number[] {
  const [low, high] = range;
  const middle = Math.min(high, Math.max(low, today));
  const steps = Array.from({ length: each }, (_, i) => i);
  const below = steps.map((i) => low + ((middle - low) * i) / each);
  const above = steps.map((i) =>
    middle > 0
      ? middle * (high / middle) ** ((i + 1) / each)
      : middle + (high - middle) * ((i + 1) / each) ** 2,
  );
  // The last is the end itself, to the last bit.
  const all = [...below, middle, ...above.slice(0, -1), high];
  return [...new Set(all)].sort((a, b) => a - b);
}
