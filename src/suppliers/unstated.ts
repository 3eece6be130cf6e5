/**
 * Settings that a supplier left to defaults. For places they count at the end at which the supplier takes more:
 * the plausible limit where any supplier of the comparison states the setting, for then it was there to be said;
 * otherwise the end of the default's interval, the same for all. The value itself is shown with its whole interval.
 */

import { leafRange } from "../account/draws.js";
import { pairsOf } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import type { Nodes } from "../account/nodes.js";
import type { Program, ProgramTerm } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import { interval95 } from "../numbers/distributions.js";
import type { Leaf } from "../numbers/quantity.js";
import { isOwned } from "./candidate.js";

/** A setting that was left to its default. */
export interface Unstated {
  /** Id of the factor. */
  readonly factor: string;
  /** Whose it is: machine, site or step of a route. */
  readonly owner: string;
  /** What it is. */
  readonly words: string;
  /** Unit. */
  readonly unit: string;
  /** Median of the default. */
  readonly typical: number;
  /** Value it counts at. */
  readonly counted: number;
  /** What the total rises by when it alone counts so, in the indicator's unit. */
  readonly rise: number;
}

/**
 * Ends of a setting, for those that count as if nothing had been said of them.
 *
 * @param leaf - the setting
 * @returns both ends; undefined for what is held by nobody
 */
export type Ends = (leaf: Leaf) => readonly [number, number] | undefined;

/** Settings left unsaid, for one indicator. */
export interface Unsaid {
  /** Settings, those that raise the total most first. */
  readonly settings: readonly Unstated[];
  /** The same program with those settings held at the end at which more is taken. */
  readonly program: Program;
}

/**
 * Finds settings left to defaults and holds each at the end at which more is taken, all else at its median.
 * Owners of one default are moved one by one.
 *
 * @param program - terms of the lots as they were printed
 * @param counts - whether a term is counted
 * @param ids - indicators
 * @param endsOf - ends of a setting that is moved
 * @returns settings and program by indicator
 */
export function unsaidOf(
  program: Program,
  counts: (term: ProgramTerm) => boolean,
  ids: readonly IndicatorId[],
  endsOf: Ends,
): ReadonlyMap<IndicatorId, Unsaid> {
  const { nodes } = program;
  const totals = totalsOf(program, counts, ids);
  const medians = new Map(nodes.leaves().map(({ leaf, at }) => [at, leafRange(leaf)]));
  const still = nodes.evaluate((_, at) => medians.get(at)?.median ?? NaN);
  const base = totals(still);
  const open = nodes.leaves().flatMap(({ leaf, at }) => {
    const { median } = medians.get(at)!;
    const [low = 0, high = 0] = endsOf(leaf) ?? [];
    return high > low ? [{ leaf, at, median, low, high }] : [];
  });
  const readers = readersOf(nodes);
  const found = new Map<IndicatorId, Map<number, Unstated>>(ids.map((id) => [id, new Map()]));
  for (const { leaf, at, median, low, high } of open) {
    const behind = restingOn(readers, nodes, at);
    const moved = (value: number): readonly number[] => {
      const values = still.slice();
      values[at] = value;
      for (const { node, formula, reads } of behind)
        values[node] = formula(...reads.map((read) => values[read]!));
      return totals(values);
    };
    const [atLow, atHigh] = [moved(low), moved(high)];
    ids.forEach((id, k) => {
      const counted = atLow[k]! > atHigh[k]! ? low : high;
      const rise = Math.max(atLow[k]!, atHigh[k]!) - base[k]!;
      if (!(Math.abs(atLow[k]! - atHigh[k]!) > 0)) return;
      const { factor, words, unit } = leaf;
      found
        .get(id)
        ?.set(at, { factor, owner: ownerOf(leaf), words, unit, typical: median, counted, rise });
    });
  }
  const place = new Map(nodes.leaves().map(({ leaf, at }) => [leaf, at]));
  return new Map(
    ids.map((id) => {
      const settings = found.get(id) ?? new Map<number, Unstated>();
      const held = nodes.with((leaf) => {
        const setting = settings.get(place.get(leaf) ?? -1);
        return setting === undefined ? leaf : heldAt(leaf, setting.counted);
      });
      return [
        id,
        {
          settings: [...settings.values()].sort(
            (a, b) => b.rise - a.rise || (a.factor < b.factor ? -1 : 1),
          ),
          program: { ...program, nodes: held },
        },
      ];
    }),
  );
}

/**
 * Ends of settings left to defaults: of the default's interval, widened by the plausible limits and by all that was
 * stated where any supplier states the setting. Nothing that could have been stated lies beyond them, so that
 * no house gains by keeping it to itself.
 *
 * @param programs - programs of all suppliers
 * @param shipped - the reader's factors, for plausible limits
 * @returns ends by setting; none for what a supplier stated
 */
export function endsCounted(programs: readonly Program[], shipped: FactorSet): Ends {
  const stated = new Map<string, readonly [number, number]>();
  for (const { leaf } of programs.flatMap(({ nodes }) => nodes.leaves())) {
    if (leaf.provenance !== "plant" || !isOwned(leaf)) continue;
    const { low, high } = leafRange(leaf);
    stated.set(leaf.factor, hull(stated.get(leaf.factor) ?? [low, high], [low, high]));
  }
  return (leaf) => {
    if (leaf.provenance !== "default" || !isOwned(leaf)) return undefined;
    const { low, high } = leafRange(leaf);
    const known = stated.get(leaf.factor);
    const limits = shipped.factors.get(leaf.factor)?.plausible;
    if (known === undefined) return [low, high];
    return hull(hull([low, high], known), limits ?? known);
  };
}

function hull(
  a: readonly [number, number],
  b: readonly [number, number],
): readonly [number, number] {
  return [Math.min(a[0], b[0]), Math.max(a[1], b[1])];
}

/**
 * Ends of every setting as if nothing had been said of it: those of the shipped default, or of what was said
 * where that lies further out.
 *
 * @param shipped - the reader's factors
 * @returns ends by setting
 */
export function endsUnsaid(shipped: FactorSet): Ends {
  return (leaf) => {
    if (leaf.provenance === "constant" || !isOwned(leaf)) return undefined;
    const own = leafRange(leaf);
    const spread = shipped.factors.get(leaf.factor)?.values[0]?.spread;
    if (spread === undefined) return [own.low, own.high];
    const [low, high] = interval95(spread);
    return [Math.min(low, own.low), Math.max(high, own.high)];
  };
}

// The stream is named factor @ owner; what was printed ends it.
function ownerOf({ id }: Leaf): string {
  const owner = id.split(" @ ")[1] ?? "";
  return owner.replace(/ of [0-9a-f]{16}$/, "").replace(/ \(shipped route.*\)$/, "");
}

function heldAt(leaf: Leaf, value: number): Leaf {
  const { bond: _bond, common: _common, ...rest } = leaf;
  return { ...rest, spread: { shape: "fixed", value } };
}

interface Resting {
  readonly node: number;
  readonly formula: (...numbers: number[]) => number;
  readonly reads: readonly number[];
}

// Formulas that read a leaf, at first hand or further off, in the order of the list.
function restingOn(
  readers: readonly (readonly number[])[],
  nodes: Nodes,
  leaf: number,
): readonly Resting[] {
  const moved = new Set<number>();
  const open = [leaf];
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const reader of readers[at] ?? [])
      if (!moved.has(reader)) {
        moved.add(reader);
        open.push(reader);
      }
  return [...moved]
    .sort((a, b) => a - b)
    .flatMap((node): readonly Resting[] => {
      const { quantity, reads } = nodes.list[node]!;
      return quantity.kind === "leaf" ? [] : [{ node, formula: quantity.value, reads }];
    });
}

function readersOf(nodes: Nodes): readonly (readonly number[])[] {
  const readers: number[][] = nodes.list.map(() => []);
  nodes.list.forEach(({ reads }, node) => {
    for (const read of reads) readers[read]!.push(node);
  });
  return readers;
}

// Totals for one set of values; terms of one rate, class and flow are one.
function totalsOf(
  program: Program,
  counts: (term: ProgramTerm) => boolean,
  ids: readonly IndicatorId[],
): (values: Float64Array) => readonly number[] {
  const slots = new Map<
    string,
    {
      readonly pairs: readonly (readonly (readonly [number, number])[])[];
      readonly rates: Map<number, number>;
    }
  >();
  for (const term of program.terms) {
    const amount = program.classes[term.lotClass]?.amounts[term.amount] ?? 0;
    if (amount === 0 || !counts(term)) continue;
    const key = `${term.lotClass}|${term.flow}`;
    let slot = slots.get(key);
    if (slot === undefined)
      slots.set(
        key,
        (slot = { pairs: ids.map((id) => pairsOf(program, term, id)), rates: new Map() }),
      );
    slot.rates.set(term.rate, (slot.rates.get(term.rate) ?? 0) + amount);
  }
  const list = [...slots.values()]
    .filter(({ pairs }) => pairs.some((one) => one.length > 0))
    .map(({ pairs, rates }) => ({ pairs, rates: [...rates] }));
  return (values) => {
    const totals = ids.map(() => 0);
    for (const { pairs, rates } of list) {
      let flow = 0;
      for (const [rate, amount] of rates) flow += amount * values[rate]!;
      pairs.forEach((one, k) => {
        for (const [a, b] of one) totals[k] = totals[k]! + flow * values[a]! * values[b]!;
      });
    }
    return totals;
  };
}
