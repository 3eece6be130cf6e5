/**
 * Logged settings beside the settings taken where nothing was logged. A logged mean outside the interval of
 * the setting casts doubt on the lots without a log.
 */

import { leavesOf } from "../numbers/quantity.js";
import { datedStream } from "../plant/dated.js";
import { AMOUNTS } from "../steps/amounts.js";
import { leafRange } from "./draws.js";
import type { Program } from "./program.js";

/** A setting that lots log differently from what the open lots are given. */
export interface Disagreement {
  /** Route of the lots. */
  readonly route: string;
  /** Stream of the setting, with the day it is from where the plant file changed it. */
  readonly setting: string;
  /** Unit. */
  readonly unit: string;
  /** Mean of the logged values, weighted by mass. */
  readonly logged: number;
  /** Low end of the setting's interval. */
  readonly low: number;
  /** High end of the setting's interval. */
  readonly high: number;
}

/** Settings that can be held against the log: ending of the factor, weighted sum, weight without a log. */
const COMPARABLE = [
  { ending: "pad.pickup", weighted: "mass·pickup", open: "mass[no pickup]" },
  { ending: ".fix-temperature", weighted: "mass·fixTemp", open: "mass[no fixTemp]" },
] as const;

/**
 * Finds logged means outside the interval of the setting used for the lots without a log.
 *
 * @param program - the program
 * @returns one entry a route and setting
 */
export function disagreements(program: Program): readonly Disagreement[] {
  const place = new Map(AMOUNTS.map((amount, i) => [amount.name, i]));
  const found: Disagreement[] = [];
  for (const { ending, weighted, open } of COMPARABLE) {
    const sums = new Map<string, { weighted: number; mass: number; open: number; at: number }>();
    program.classes.forEach(({ key, amounts }, at) => {
      const of = (name: string): number => amounts[place.get(name) ?? -1] ?? 0;
      // Before and after a change of the plant file the setting may be another.
      const group = JSON.stringify([key.route, key.settings]);
      const before = sums.get(group) ?? { weighted: 0, mass: 0, open: 0, at };
      sums.set(group, {
        weighted: before.weighted + of(weighted),
        mass: before.mass + of("mass") - of(open),
        open: before.open + of(open),
        at: before.at,
      });
    });
    for (const sum of sums.values()) {
      const own = program.classes[sum.at]?.key;
      if (own === undefined || !(sum.mass > 0) || !(sum.open > 0)) continue;
      const leaf = program.terms
        .filter((term) => term.lotClass === sum.at && term.arm === own.own)
        .flatMap((term) => {
          const quantity = program.nodes.list[term.rate]?.quantity;
          return AMOUNTS[term.amount]?.name === open && quantity !== undefined
            ? leavesOf(quantity)
            : [];
        })
        .find(({ factor }) => factor.endsWith(ending));
      if (leaf === undefined) continue;
      const { low, high } = leafRange(leaf);
      const logged = sum.weighted / sum.mass;
      if (!(logged >= low && logged <= high)) {
        const setting = datedStream(leaf);
        found.push({ route: own.route, setting, unit: leaf.unit, logged, low, high });
      }
    }
  }
  return found;
}
