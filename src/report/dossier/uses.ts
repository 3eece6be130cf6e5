/**
 * Where factors are used in a mill, and how much of the doubt they carry.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Program } from "../../account/program.js";
import type { Swings } from "../../account/swings.js";
import { leavesOf } from "../../numbers/quantity.js";

/** Where a factor is used. */
export interface FactorUse {
  /** Steps by route, `reactive · wash`, sorted. */
  readonly steps: readonly string[];
  /** Flows at machines whose terms read it, sorted. */
  readonly flows: readonly string[];
  /** Whether it turns flows at machines into flows at the fence or into indicators. */
  readonly conversion: boolean;
}

/**
 * Finds the uses of all factors.
 *
 * @param program - the program of a mill
 * @returns uses by id of the factor; factors that the mill does not use are left out
 */
export function usesOf(program: Program): ReadonlyMap<string, FactorUse> {
  const factorsOf = new Map<number, readonly string[]>();
  const found = new Map<string, { steps: Set<string>; flows: Set<string> }>();
  for (const term of program.terms) {
    let ids = factorsOf.get(term.rate);
    if (ids === undefined) {
      const quantity = program.nodes.list[term.rate]?.quantity;
      ids = quantity === undefined ? [] : leavesOf(quantity).map(({ factor }) => factor);
      factorsOf.set(term.rate, ids);
    }
    const route = program.classes[term.lotClass]?.arms[term.arm].route.name ?? "";
    for (const id of ids) {
      const use = found.get(id) ?? { steps: new Set(), flows: new Set() };
      use.steps.add(`${route} · ${term.role}`);
      use.flows.add(term.flow);
      found.set(id, use);
    }
  }
  const all = new Set(program.nodes.leaves().map(({ leaf }) => leaf.factor));
  return new Map(
    [...all].map((id) => {
      const use = found.get(id);
      return [
        id,
        {
          steps: [...(use?.steps ?? [])].sort(),
          flows: [...(use?.flows ?? [])].sort(),
          conversion: use === undefined,
        },
      ];
    }),
  );
}

/**
 * Share of each factor in the squared swings of a saving: width² / Σ width². It ranks; it is no share of a
 * variance.
 *
 * @param swings - swings by indicator
 * @param factor - id of the factor
 * @returns shares by indicator, those of all owners of one default added
 */
export function swingShares(
  swings: ReadonlyMap<IndicatorId, Swings>,
  factor: string,
): ReadonlyMap<IndicatorId, number> {
  return new Map(
    [...swings].map(([id, { factors }]) => {
      const square = (some: typeof factors): number =>
        some.reduce((sum, { width }) => sum + width * width, 0);
      const all = square(factors);
      // A stream is the id alone, or the id with its owner.
      const own = factors.filter(
        (swing) => swing.factor === factor || swing.factor.startsWith(`${factor} @`),
      );
      return [id, all > 0 ? square(own) / all : 0];
    }),
  );
}
