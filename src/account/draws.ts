/**
 * Draws of every leaf and every quantity, each worked out once.
 */

import { draw, interval95, medianOf } from "../numbers/distributions.js";
import { uniforms } from "../numbers/generator.js";
import { normalCdf, normalQuantile } from "../numbers/normal.js";
import type { Leaf } from "../numbers/quantity.js";
import type { Nodes } from "./nodes.js";

/** Draws by number of the node. */
export interface Draws {
  /** Number of draws. */
  readonly count: number;
  /** Draws of a node, the same array each time it is asked for. */
  readonly of: (node: number) => Float64Array;
}

/**
 * Prepares draws. Every stream hangs on the seed and its own name only, so that adding a factor moves no
 * other draw.
 *
 * @param nodes - what is drawn
 * @param count - number of draws
 * @param seed - seed of the report
 * @returns the draws
 */
export function drawsOf(nodes: Nodes, count: number, seed: number): Draws {
  const vectors = new Map<number, Float64Array>();
  const streams = new Map<string, Float64Array>();
  const uniform = (stream: string): Float64Array => {
    let found = streams.get(stream);
    if (found === undefined) {
      found = uniforms(seed, stream, count);
      streams.set(stream, found);
    }
    return found;
  };
  const of = (at: number): Float64Array => {
    let found = vectors.get(at);
    const node = nodes.list[at];
    if (node === undefined) throw new Error(`There is no node ${at}.`);
    if (found === undefined) {
      found =
        node.quantity.kind === "leaf"
          ? drawLeaf(node.quantity, count, uniform)
          : derived(node.quantity.value, node.reads.map(of), count);
      vectors.set(at, found);
    }
    return found;
  };
  return { count, of };
}

function drawLeaf(
  leaf: Leaf,
  count: number,
  uniform: (stream: string) => Float64Array,
): Float64Array {
  if (leaf.spread.shape === "fixed") return new Float64Array(count).fill(leaf.spread.value);
  const own = uniform(leaf.id);
  if (leaf.common === undefined) return draw(leaf.spread, own);
  // The same default on two machines is part ignorance of the kind, part of the machine: half and half.
  const common = uniform(`${leaf.common} (common part)`);
  const mixed = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    mixed[i] = normalCdf((normalQuantile(own[i]!) + normalQuantile(common[i]!)) * Math.SQRT1_2);
  }
  return draw(leaf.spread, mixed);
}

type Formula = (...numbers: number[]) => number;

function derived(f: Formula, c: readonly Float64Array[], n: number): Float64Array {
  const out = new Float64Array(n);
  const [a, b, d, e] = c;
  // The common arities are written out: a call with spread arguments costs several times as much.
  if (a === undefined) return out.fill(f());
  if (b === undefined) for (let i = 0; i < n; i++) out[i] = f(a[i]!);
  else if (d === undefined) for (let i = 0; i < n; i++) out[i] = f(a[i]!, b[i]!);
  else if (e === undefined) for (let i = 0; i < n; i++) out[i] = f(a[i]!, b[i]!, d[i]!);
  else {
    const row = new Array<number>(c.length);
    for (let i = 0; i < n; i++) {
      for (let k = 0; k < c.length; k++) row[k] = c[k]![i]!;
      out[i] = f(...row);
    }
  }
  return out;
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
