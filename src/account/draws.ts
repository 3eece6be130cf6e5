/**
 * Draws of every leaf and every quantity, each worked out once.
 */

import { draw, interval95, medianOf } from "../numbers/distributions.js";
import { mixed, type Ranks, ranksOf } from "../numbers/ranks.js";
import type { Derived, Leaf } from "../numbers/quantity.js";
import type { Nodes } from "./nodes.js";

/** Sees the values of a block of draws: from `start` to `end`, by number of the node. */
export type BlockVisit = (start: number, end: number, values: readonly Float64Array[]) => void;

/** Draws by number of the node. */
export interface Draws {
  /** Number of draws. */
  readonly count: number;
  /** All draws of one node. */
  readonly of: (node: number) => Float64Array;
  /**
   * Works nodes out block by block. Blocks stay in the processor's cache and are written over, so that
   * memory does not grow with nodes times draws. At most the first `most` draws are taken; all when absent.
   */
  readonly each: (needed: Iterable<number>, visit: BlockVisit, most?: number) => void;
}

/**
 * Keeps the draws of a leaf for the next that asks for the same leaf, seed and count.
 *
 * @param leaf - the leaf
 * @param seed - seed of the draws
 * @param count - number of draws
 * @param make - draws it, where nothing was kept
 * @returns draws, not to be changed
 */
export type DrawKeep = (
  leaf: Leaf,
  seed: number,
  count: number,
  make: () => Float64Array,
) => Float64Array;

/** Draws worked out in one go. */
export const BLOCK = 500;

/**
 * Prepares draws. Every stream hangs on the seed and its own name only, so that adding a factor moves no
 * other draw.
 *
 * @param nodes - what is drawn
 * @param count - number of draws
 * @param seed - seed of the report
 * @param keep - keeps leaves for draws of other programs; nothing is kept when left out
 * @returns the draws
 */
export function drawsOf(nodes: Nodes, count: number, seed: number, keep?: DrawKeep): Draws {
  // What is kept elsewhere would live as long as the nodes if it were kept here too.
  const leaves = keep === undefined ? leafShelf(nodes, seed) : new Map<number, Float64Array>();
  // Streams that several leaves read are kept; the rest would only fill memory.
  const streams = new Map<string, Ranks>();
  const kept = (stream: string): Ranks => {
    let found = streams.get(stream);
    if (found === undefined) streams.set(stream, (found = ranksOf(seed, stream, count)));
    return found;
  };
  const leafDraws = (at: number, leaf: Leaf): Float64Array => {
    if (leaf.drawn !== undefined && leaf.drawn.length < count)
      throw new RangeError(`${leaf.id} has ${leaf.drawn.length} draws, not ${count}.`);
    let found = leaf.drawn ?? leaves.get(at);
    if (found === undefined || found.length < count) {
      const make = (): Float64Array =>
        draw(leaf.spread, ranksOfLeaf(leaf, ranksOf(seed, leaf.id, count), kept));
      if (leaf.spread.shape === "fixed") found = new Float64Array(count).fill(leaf.spread.value);
      else found = keep === undefined ? make() : keep(leaf, seed, count, make);
      leaves.set(at, found);
    }
    return found;
  };
  const { still, fixed } = stillNodes(nodes);
  const each = (needed: Iterable<number>, visit: BlockVisit, most = count): void => {
    const wanted = closure(nodes, needed);
    const values: Float64Array[] = nodes.list.map(() => NOTHING);
    const moving = wanted.filter((at) => !still[at]);
    for (const at of wanted) {
      if (still[at] || nodes.list[at]?.quantity.kind === "derived") {
        values[at] = block().fill(fixed[at]!);
      }
    }
    const leafBlocks = moving.flatMap((at) => {
      const { quantity } = nodes.list[at]!;
      return quantity.kind === "leaf" ? [{ at, all: leafDraws(at, quantity) }] : [];
    });
    for (const { at } of leafBlocks) values[at] = block();
    const formulas = moving.flatMap((at) => {
      const { quantity, reads } = nodes.list[at]!;
      if (quantity.kind === "leaf") return [];
      return [{ quantity, out: values[at]!, reads: reads.map((read) => values[read]!) }];
    });
    const last = Math.min(count, most);
    for (let start = 0; start < last; start += BLOCK) {
      const end = Math.min(last, start + BLOCK);
      for (const { at, all } of leafBlocks) values[at]!.set(all.subarray(start, end));
      for (const { quantity, out, reads } of formulas) {
        workOut(out, quantity, reads, end - start);
      }
      visit(start, end, values);
    }
    for (const at of wanted) giveBack(values[at]!);
  };
  const of = (at: number): Float64Array => {
    const quantity = nodes.list[at]?.quantity;
    if (quantity?.kind === "leaf") return leafDraws(at, quantity).slice(0, count);
    const all = new Float64Array(count);
    each([at], (start, end, values) => {
      all.set((values[at] ?? NOTHING).subarray(0, end - start), start);
    });
    return all;
  };
  return { count, of, each };
}

const NOTHING = new Float64Array(0);

// A shorter row of draws begins a longer one, so leaves are drawn once for all who ask for the same seed.
const SHELVES = new WeakMap<Nodes, Map<number, Map<number, Float64Array>>>();

function leafShelf(nodes: Nodes, seed: number): Map<number, Float64Array> {
  let seeds = SHELVES.get(nodes);
  if (seeds === undefined) {
    seeds = new Map<number, Map<number, Float64Array>>();
    SHELVES.set(nodes, seeds);
  }
  let leaves = seeds.get(seed);
  if (leaves === undefined) {
    leaves = new Map<number, Float64Array>();
    seeds.set(seed, leaves);
  }
  return leaves;
}

// Blocks of earlier passes, taken again: a comparison of many mills would else throw gigabytes of them away.
const spare: Float64Array[] = [];
const MOST_SPARE = 8000;

function block(): Float64Array {
  return spare.pop() ?? new Float64Array(BLOCK);
}

function giveBack(used: Float64Array): void {
  if (used.length === BLOCK && spare.length < MOST_SPARE) spare.push(used);
}

// Nodes that rest on fixed leaves alone are the same in every draw, so they are worked out once.
function stillNodes(nodes: Nodes): {
  readonly still: readonly boolean[];
  readonly fixed: Float64Array;
} {
  const still: boolean[] = [];
  const fixed = new Float64Array(nodes.list.length).fill(NaN);
  nodes.list.forEach(({ quantity, reads }, at) => {
    still.push(
      quantity.kind === "leaf"
        ? quantity.spread.shape === "fixed" && quantity.drawn === undefined
        : reads.every((read) => still[read] === true),
    );
    if (still[at] !== true) return;
    fixed[at] =
      quantity.kind === "leaf"
        ? medianOf(quantity.spread)
        : quantity.value(...reads.map((read) => fixed[read]!));
  });
  return { still, fixed };
}

// Nodes and all they read, in the order of the list: arguments come before formulas there.
function closure(nodes: Nodes, needed: Iterable<number>): readonly number[] {
  const marked = new Uint8Array(nodes.list.length);
  for (const at of needed) marked[at] = 1;
  for (let at = nodes.list.length - 1; at >= 0; at--) {
    if (marked[at] === 1) for (const read of nodes.list[at]?.reads ?? []) marked[read] = 1;
  }
  return [...marked.keys()].filter((at) => marked[at] === 1);
}

// The same default on two machines is part ignorance of the kind, part of the machine: half and half. What is
// bonded to another number follows their stream on top of that.
function ranksOfLeaf(leaf: Leaf, own: Ranks, kept: (stream: string) => Ranks): Ranks {
  const { common, bond } = leaf;
  const base =
    common === undefined ? own : mixed(kept(`${common} (common part)`), own, Math.SQRT1_2);
  return bond === undefined ? base : mixed(kept(bond.stream), base, bond.weight);
}

/**
 * Works a formula out draw by draw.
 *
 * @param out - takes the values
 * @param formula - the formula
 * @param reads - draws of its arguments, in its order
 * @param n - number of draws
 */
export function workOut(
  out: Float64Array,
  formula: Derived,
  reads: readonly Float64Array[],
  n: number,
): void {
  if (formula.multiplies === true) multiply(out, reads, n);
  else if (formula.weights !== undefined) weigh(out, formula.weights, reads, n);
  else if (formula.block !== undefined) formula.block(out, reads, n);
  else fill(out, formula.value, reads, n);
}

function multiply(out: Float64Array, factors: readonly Float64Array[], n: number): void {
  out.fill(1, 0, n);
  for (const factor of factors) for (let i = 0; i < n; i++) out[i] = out[i]! * factor[i]!;
}

function weigh(
  out: Float64Array,
  weights: readonly number[],
  parts: readonly Float64Array[],
  n: number,
): void {
  out.fill(0, 0, n);
  parts.forEach((part, k) => {
    const by = weights[k]!;
    for (let i = 0; i < n; i++) out[i] = out[i]! + by * part[i]!;
  });
}

type Formula = (...numbers: number[]) => number;

// The common arities are written out: a call with spread arguments costs several times as much.
function fill(out: Float64Array, f: Formula, c: readonly Float64Array[], n: number): void {
  const [p, q, r, s, t, u, v, w] = c;
  switch (c.length) {
    case 0:
      out.fill(f(), 0, n);
      return;
    case 1:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!);
      return;
    case 2:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!, q![i]!);
      return;
    case 3:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!, q![i]!, r![i]!);
      return;
    case 4:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!, q![i]!, r![i]!, s![i]!);
      return;
    case 5:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!, q![i]!, r![i]!, s![i]!, t![i]!);
      return;
    case 6:
      for (let i = 0; i < n; i++) out[i] = f(p![i]!, q![i]!, r![i]!, s![i]!, t![i]!, u![i]!);
      return;
    case 7:
      for (let i = 0; i < n; i++) {
        out[i] = f(p![i]!, q![i]!, r![i]!, s![i]!, t![i]!, u![i]!, v![i]!);
      }
      return;
    case 8:
      for (let i = 0; i < n; i++) {
        out[i] = f(p![i]!, q![i]!, r![i]!, s![i]!, t![i]!, u![i]!, v![i]!, w![i]!);
      }
      return;
    default: {
      const row = new Array<number>(c.length);
      for (let i = 0; i < n; i++) {
        for (let k = 0; k < c.length; k++) row[k] = c[k]![i]!;
        out[i] = f(...row);
      }
    }
  }
}

/**
 * Median and 95 % interval of a leaf as it stands in its spread.
 *
 * @param leaf - the leaf
 * @returns median, low and high
 */
export function leafRange(leaf: Leaf): {
  readonly median: number;
  readonly low: number;
  readonly high: number;
} {
  const [low, high] = interval95(leaf.spread);
  return { median: medianOf(leaf.spread), low, high };
}
