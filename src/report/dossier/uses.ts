/**
 * Where factors are used in a mill, and how much of the doubt they carry.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Program } from "../../account/program.js";
import type { Swings } from "../../account/swings.js";

/** Where a factor is used. */
export interface FactorUse {
  /** Steps by route, `reactive · wash`, sorted, each with the flows whose terms read the factor. */
  readonly steps: ReadonlyMap<string, readonly string[]>;
  /** Number of those terms. */
  readonly terms: number;
  /** Conversions of a flow at a machine to one at the fence, `steam.open to fuel.natural-gas`, sorted. */
  readonly conversions: readonly string[];
  /** Indicators whose intensities read it, in the order of the report. */
  readonly indicators: readonly IndicatorId[];
  /** Places of the plant file that give a value of the mill's own in its stead, sorted. */
  readonly given: readonly string[];
}

/** Words of each indicator that a dossier names. */
interface Found {
  readonly steps: Map<string, Set<string>>;
  terms: number;
  readonly conversions: Set<string>;
  readonly indicators: Set<IndicatorId>;
  readonly given: Set<string>;
}

/**
 * Finds the uses of all factors.
 *
 * @param program - the program of a mill
 * @returns uses by id of the factor; factors that nothing in the program reads are left out
 */
export function usesOf(program: Program): ReadonlyMap<string, FactorUse> {
  const found = new Map<string, Found>();
  const behind = factorsBehind(program);
  const each = (node: number, act: (use: Found) => void): void => {
    for (const id of behind[node] ?? []) {
      let use = found.get(id);
      if (use === undefined) {
        use = {
          steps: new Map(),
          terms: 0,
          conversions: new Set(),
          indicators: new Set(),
          given: new Set(),
        };
        found.set(id, use);
      }
      act(use);
    }
  };
  for (const { lotClass, arm, role, flow, rate } of program.terms) {
    const step = `${program.classes[lotClass]?.arms[arm].route.name ?? ""} · ${role}`;
    each(rate, (use) => {
      use.terms += 1;
      const flows = use.steps.get(step) ?? new Set();
      use.steps.set(step, flows.add(flow));
    });
  }
  for (const outlet of new Set(program.classes.flatMap(({ outlets }) => Object.values(outlets)))) {
    for (const [flow, list] of outlet.fence) {
      for (const { to, node } of list) {
        each(node, ({ conversions }) => conversions.add(`${flow} to ${to}`));
      }
    }
    for (const [indicator, intensities] of outlet.indicators) {
      for (const node of intensities.values()) {
        each(node, ({ indicators }) => indicators.add(indicator));
      }
    }
  }
  for (const { leaf, at } of program.nodes.leaves()) {
    if (leaf.provenance === "plant") each(at, ({ given }) => given.add(leaf.source));
  }
  return new Map([...found].map(([id, use]) => [id, sorted(use)]));
}

// Factors that each node rests on, at first hand or further off; arguments stand before formulas.
function factorsBehind({ nodes }: Program): readonly ReadonlySet<string>[] {
  const behind: ReadonlySet<string>[] = [];
  for (const { quantity, reads } of nodes.list) {
    behind.push(
      new Set(
        quantity.kind === "leaf"
          ? [quantity.factor]
          : reads.flatMap((read) => [...(behind[read] ?? [])]),
      ),
    );
  }
  return behind;
}

function sorted(use: Found): FactorUse {
  return {
    steps: new Map([...use.steps].sort().map(([step, flows]) => [step, [...flows].sort()])),
    terms: use.terms,
    conversions: [...use.conversions].sort(),
    indicators: [...use.indicators],
    given: [...use.given].sort(),
  };
}

/**
 * Share of each factor in the squared swings of a saving: width² / Σ width². It ranks; it is no share of a
 * variance.
 *
 * @param swings - swings by indicator
 * @returns shares by id of the factor, then indicator, those of all owners of one default added; the largest
 *   first
 */
export function swingShares(
  swings: ReadonlyMap<IndicatorId, Swings>,
): ReadonlyMap<string, ReadonlyMap<IndicatorId, number>> {
  const shares = new Map<string, Map<IndicatorId, number>>();
  for (const [indicator, { factors }] of swings) {
    const all = factors.reduce((sum, { width }) => sum + width * width, 0);
    if (!(all > 0)) continue;
    for (const { factor, width } of factors) {
      // A stream is the id alone, or the id with its owner.
      const id = factor.split(" @ ", 1)[0] ?? factor;
      const own = shares.get(id) ?? new Map<IndicatorId, number>();
      shares.set(id, own.set(indicator, (own.get(indicator) ?? 0) + (width * width) / all));
    }
  }
  const largest = (own: ReadonlyMap<IndicatorId, number>): number => Math.max(...own.values());
  return new Map([...shares].sort(([, a], [, b]) => largest(b) - largest(a)));
}
