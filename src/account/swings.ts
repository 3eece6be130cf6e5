/**
 * One-at-a-time swings: what each factor at the low and the high end of its spread does to the saving,
 * all others at their medians.
 */

import { leafRange } from "./draws.js";
import type { IndicatorId } from "./indicators.js";
import type { Leaf } from "../numbers/quantity.js";
import { pairsOf } from "./account.js";
import type { Program } from "./program.js";

/** Effect of one factor on the saving of one indicator. */
export interface FactorSwing {
  /** Stream of the factor, or the factor itself when several machines share its default. */
  readonly factor: string;
  /** Unit. */
  readonly unit: string;
  /** What it is. */
  readonly words: string;
  /** Whether it came from the plant file. */
  readonly own: boolean;
  /** Low end and the saving there. */
  readonly low: { readonly value: number; readonly saving: number };
  /** High end and the saving there. */
  readonly high: { readonly value: number; readonly saving: number };
  /** Width of the swing. */
  readonly width: number;
}

/** Swings of one indicator. */
export interface Swings {
  /** Saving with everything at its median. */
  readonly base: number;
  /** Swings, widest first. */
  readonly factors: readonly FactorSwing[];
}

/**
 * Works out swings of the saving 1 − P/D.
 *
 * @param program - terms and conversions
 * @param ids - indicators
 * @returns swings by indicator
 */
export function swingsOf(
  program: Program,
  ids: readonly IndicatorId[],
): ReadonlyMap<IndicatorId, Swings> {
  const { nodes } = program;
  const ranges = nodes.leaves().map(({ leaf, at }) => ({ leaf, at, ...leafRange(leaf) }));
  const medians = new Map(ranges.map(({ at, median }) => [at, median]));
  const totals = totalsOf(program, ids);
  const still = nodes.evaluate((_, at) => medians.get(at) ?? NaN);
  const base = totals(still);
  // Owners of one default are moved together: their doubt is mostly the same ignorance.
  const groups = new Map<string, { leaf: Leaf; at: number; low: number; high: number }[]>();
  for (const { leaf, at, low, high } of ranges) {
    if (!(high > low)) continue;
    const name = leaf.common ?? leaf.id;
    groups.set(name, [...(groups.get(name) ?? []), { leaf, at, low, high }]);
  }
  const result = new Map<IndicatorId, FactorSwing[]>(ids.map((id) => [id, []]));
  for (const [factor, members] of groups) {
    const first = members[0];
    if (first === undefined) continue;
    const at = members.map((member) => member.at);
    const behind = nodes.restingOn(at).flatMap((node) => {
      const { quantity, reads } = nodes.list[node]!;
      return quantity.kind === "leaf" ? [] : [{ node, value: quantity.value, reads }];
    });
    const saving = (moved: readonly number[]): ReadonlyMap<IndicatorId, number> => {
      const values = still.slice();
      moved.forEach((value, i) => (values[at[i]!] = value));
      for (const { node, value, reads } of behind)
        values[node] = value(...reads.map((read) => values[read]!));
      return totals(values);
    };
    const low = saving(members.map((member) => member.low));
    const high = saving(members.map((member) => member.high));
    for (const id of ids) {
      const atLow = low.get(id) ?? NaN;
      const atHigh = high.get(id) ?? NaN;
      const width = Math.abs(atHigh - atLow);
      if (!(width > 1e-9)) continue;
      result.get(id)?.push({
        factor,
        unit: first.leaf.unit,
        words: first.leaf.words + whose(first.leaf),
        own: first.leaf.provenance === "plant",
        low: { value: first.low, saving: atLow },
        high: { value: first.high, saving: atHigh },
        width,
      });
    }
  }
  return new Map(
    ids.map((id) => [
      id,
      {
        base: base.get(id) ?? NaN,
        factors: (result.get(id) ?? []).sort(
          (a, b) => b.width - a.width || (a.factor < b.factor ? -1 : 1),
        ),
      },
    ]),
  );
}

// A number that the mill gave for one machine or route is told from others of its kind.
function whose(leaf: Leaf): string {
  const owner = /@ (?:machine|route|role) [^/]+\/(.+)$/.exec(leaf.id)?.[1];
  return leaf.provenance === "plant" && owner !== undefined ? ` (${owner.replace("/", ", ")})` : "";
}

// Saving for one set of node values. Flows are summed by outlet, arm and flow before conversions.
function totalsOf(
  program: Program,
  ids: readonly IndicatorId[],
): (values: Float64Array) => ReadonlyMap<IndicatorId, number> {
  const slots = new Map<string, number>();
  const outlets = new Map<unknown, number>();
  const slotArm: ("pigment" | "dye")[] = [];
  const slotPairs: (readonly (readonly [number, number])[])[][] = [];
  const terms = program.terms.flatMap((term) => {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) return [];
    const outlet = lotClass.outlets[term.arm];
    if (!outlets.has(outlet)) outlets.set(outlet, outlets.size);
    const key = `${outlets.get(outlet) ?? 0}|${term.arm}|${term.flow}`;
    let slot = slots.get(key);
    if (slot === undefined) {
      slot = slots.size;
      slots.set(key, slot);
      slotArm.push(term.arm);
      slotPairs.push(ids.map((id) => pairsOf(program, term, id)));
    }
    return [{ slot, rate: term.rate, amount }];
  });
  return (values) => {
    const flows = new Float64Array(slots.size);
    for (const { slot, rate, amount } of terms) flows[slot] = flows[slot]! + amount * values[rate]!;
    return new Map(
      ids.map((id, k) => {
        const total = { pigment: 0, dye: 0 };
        flows.forEach((flow, slot) => {
          for (const [rate, intensity] of slotPairs[slot]![k]!) {
            total[slotArm[slot]!] += flow * values[rate]! * values[intensity]!;
          }
        });
        return [id, 1 - total.pigment / total.dye];
      }),
    );
  };
}
