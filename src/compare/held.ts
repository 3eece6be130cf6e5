/**
 * The share saved with some factors held at other values, all else as it was: S = 1 − (P/D)(A_D/A_P).
 * Only formulas that rest on what is held are worked out again, for one set of medians or for many draws.
 */

import { pairsOf } from "../account/account.js";
import { drawsOf, leafRange, workOut } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import type { Program } from "../account/program.js";
import { InputError } from "../problems/input-error.js";
import { NEGLIGIBLE } from "./compare.js";

/** Values of all nodes, draw by draw. */
export interface Columns {
  /** Number of draws, or of values side by side. */
  readonly count: number;
  /** Whether they are values side by side, each judged alone, and not draws of one. */
  readonly areApart: boolean;
  /** Values by number of the node. */
  readonly of: readonly Float64Array[];
}

/**
 * Shares saved with leaves at the values given, in the order of both lists asked for. A value is the same in all
 * draws, or one for each.
 */
export type Holding = (values: readonly (number | Float64Array)[]) => readonly Float64Array[];

/** Works shares saved out with leaves held. */
export interface Bench {
  /** Number of draws. */
  readonly count: number;
  /**
   * Prepares leaves to be held; undefined when none of the indicators hangs on them.
   */
  readonly hold: (leaves: readonly number[], ids: readonly IndicatorId[]) => Holding | undefined;
}

/**
 * All nodes with every leaf at its median.
 *
 * @param program - the program
 * @param count - how often side by side
 * @returns so many values for each node, all alike
 */
export function medianColumns(program: Program, count = 1): Columns {
  const medians = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const of = Array.from(medians, (value) => new Float64Array(count).fill(value));
  return { count, areApart: true, of };
}

/**
 * Nodes that some indicators hang on, draw by draw.
 *
 * @param program - the program
 * @param ids - the indicators
 * @param count - number of draws
 * @param seed - seed of the draws; a shorter row of draws begins a longer one
 * @returns values of these nodes; nothing for all others
 */
export function drawnColumns(
  program: Program,
  ids: readonly IndicatorId[],
  count: number,
  seed: number,
): Columns {
  const { nodes } = program;
  const wanted = new Set<number>();
  const want = (node: number): void => {
    if (wanted.has(node)) return;
    wanted.add(node);
    nodes.list[node]!.reads.forEach(want);
  };
  for (const { rates, pairs } of slotsOf(program, ids)) {
    const used = [...pairs.values()].flat();
    if (used.length > 0) [...rates.map(([rate]) => rate), ...used.flat()].forEach(want);
  }
  const of = nodes.list.map((_, node) => new Float64Array(wanted.has(node) ? count : 0));
  drawsOf(nodes, count, seed).each(wanted, (start, end, values) => {
    for (const node of wanted) of[node]!.set(values[node]!.subarray(0, end - start), start);
  });
  return { count, areApart: false, of };
}

interface Slot {
  readonly arm: "pigment" | "dye";
  readonly rates: readonly (readonly [node: number, amount: number])[];
  readonly pairs: ReadonlyMap<IndicatorId, readonly (readonly [number, number])[]>;
}

/**
 * Makes a bench.
 *
 * @param program - terms and conversions
 * @param ids - indicators that may be asked for
 * @param columns - values of all nodes
 * @param areas - accepted area of dye over that of pigment, one for each draw; 1 when absent
 * @returns the bench
 */
export function benchOf(
  program: Program,
  ids: readonly IndicatorId[],
  columns: Columns,
  areas?: Float64Array,
): Bench {
  const { count, areApart, of: base } = columns;
  const slots = slotsOf(program, ids);
  const all = new Map(ids.map((id) => [id, totals(slots, id, base, count)]));
  // Nodes without draws are read by nothing that was asked for.
  const behind = (leaves: readonly number[]): readonly number[] =>
    program.nodes.restingOn(leaves).filter((node) => base[node]!.length > 0);
  return {
    count,
    hold: (leaves, asked) => {
      const formulaNodes = behind(leaves);
      const moved = new Set([...leaves, ...formulaNodes]);
      const touched = asked.map((id) => slots.filter((slot) => hangsOn(slot, id, moved)));
      if (touched.every((list) => list.length === 0)) return undefined;
      const values = base.slice();
      for (const node of moved) values[node] = new Float64Array(count);
      const formulas = formulaNodes.flatMap((node) => {
        const { quantity, reads } = program.nodes.list[node]!;
        if (quantity.kind === "leaf") return [];
        return [{ quantity, out: values[node]!, reads: reads.map((read) => values[read]!) }];
      });
      const still = asked.map((id, k) => {
        const [whole, part] = [all.get(id)!, totals(touched[k]!, id, base, count)];
        return { pigment: less(whole.pigment, part.pigment), dye: less(whole.dye, part.dye) };
      });
      return (at) => {
        leaves.forEach((leaf, i) => {
          const value = at[i] ?? NaN;
          if (typeof value === "number") values[leaf]!.fill(value);
          else values[leaf]!.set(value);
        });
        try {
          for (const { out, quantity, reads } of formulas) workOut(out, quantity, reads, count);
        } catch (error) {
          // A value may lie inside its own limits and still ask of physics what cannot be.
          if (!(error instanceof InputError)) throw error;
          return asked.map(() => new Float64Array(count).fill(NaN));
        }
        return asked.map((id, k) => {
          const { pigment, dye } = totals(touched[k]!, id, values, count);
          const rest = still[k]!;
          const [p, d] = [added(pigment, rest.pigment), added(dye, rest.dye)];
          return areApart ? savingsApart(p, d, areas) : savingOf(p, d, areas);
        });
      };
    },
  };
}

// Terms that share outlet, arm and flow are one slot: their amounts times rates are added before conversions.
function slotsOf(program: Program, ids: readonly IndicatorId[]): readonly Slot[] {
  const outlets = new Map<unknown, number>();
  const slots = new Map<string, Omit<Slot, "rates"> & { readonly rates: Map<number, number> }>();
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) continue;
    const outlet = lotClass.outlets[term.arm];
    if (!outlets.has(outlet)) outlets.set(outlet, outlets.size);
    const key = `${outlets.get(outlet) ?? 0}|${term.arm}|${term.flow}`;
    let slot = slots.get(key);
    if (slot === undefined) {
      const pairs = new Map(ids.map((id) => [id, pairsOf(program, term, id)]));
      slots.set(key, (slot = { arm: term.arm, rates: new Map(), pairs }));
    }
    slot.rates.set(term.rate, (slot.rates.get(term.rate) ?? 0) + amount);
  }
  return [...slots.values()].map((slot) => ({ ...slot, rates: [...slot.rates] }));
}

function hangsOn({ rates, pairs }: Slot, id: IndicatorId, moved: ReadonlySet<number>): boolean {
  const of = pairs.get(id) ?? [];
  if (of.length === 0) return false;
  if (of.some(([rate, intensity]) => moved.has(rate) || moved.has(intensity))) return true;
  return rates.some(([rate]) => moved.has(rate));
}

function totals(
  slots: readonly Slot[],
  id: IndicatorId,
  values: readonly Float64Array[],
  count: number,
): Readonly<Record<"pigment" | "dye", Float64Array>> {
  const sums = { pigment: new Float64Array(count), dye: new Float64Array(count) };
  const flow = new Float64Array(count);
  for (const slot of slots) {
    const pairs = slot.pairs.get(id) ?? [];
    if (pairs.length === 0) continue;
    flow.fill(0);
    for (const [rate, amount] of slot.rates) {
      const of = values[rate]!;
      for (let i = 0; i < count; i++) flow[i] = flow[i]! + amount * of[i]!;
    }
    const sum = sums[slot.arm];
    for (const [rate, intensity] of pairs) {
      const [by, per] = [values[rate]!, values[intensity]!];
      for (let i = 0; i < count; i++) sum[i] = sum[i]! + flow[i]! * by[i]! * per[i]!;
    }
  }
  return sums;
}

function less(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value - b[i]!);
}

function added(a: Float64Array, b: Float64Array): Float64Array {
  for (let i = 0; i < a.length; i++) a[i] = a[i]! + b[i]!;
  return a;
}

// No share is formed where the dye route takes next to nothing, as on page one.
function isNothing(pigment: number, dye: number): boolean {
  return !(dye > NEGLIGIBLE * Math.max(Math.abs(pigment), Math.abs(dye)));
}

function savingOf(pigment: Float64Array, dye: Float64Array, areas?: Float64Array): Float64Array {
  const mean = (all: Float64Array): number => all.reduce((sum, one) => sum + one, 0) / all.length;
  if (isNothing(mean(pigment), mean(dye))) return pigment.fill(NaN);
  for (let i = 0; i < pigment.length; i++) {
    pigment[i] = 1 - (pigment[i]! / dye[i]!) * (areas?.[i] ?? 1);
  }
  return pigment;
}

// One ratio of areas, at the medians, stands for all values side by side.
function savingsApart(
  pigment: Float64Array,
  dye: Float64Array,
  areas?: Float64Array,
): Float64Array {
  const area = areas?.[0] ?? 1;
  return pigment.map((p, i) => (isNothing(p, dye[i]!) ? NaN : 1 - (p / dye[i]!) * area));
}
