/**
 * Draws heaped up: how many fall into each of many equal bins along an axis.
 */

import { quantiles } from "../numbers/quantiles.js";

/** A stretch of an axis. */
export interface Stretch {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/** What is asked of draws to choose an axis for them. */
export interface Spread {
  /** The draws. */
  readonly draws: Float64Array;
  /** Lower end of their interval. */
  readonly low: number;
  /** Upper end of their interval. */
  readonly high: number;
}

/** Share of the draws that may lie beyond either end of an axis. [-] */
const TAIL = 0.001;

const COUNT = 120;

/**
 * Finds the stretch that several sets of draws share: all but a thousandth at either end of each,
 * their intervals, and zero.
 *
 * @param spreads - the draws
 * @returns the stretch, with some room at both ends
 */
export function stretchOf(spreads: readonly Spread[]): Stretch {
  let [low, high] = [0, 0];
  for (const spread of spreads) {
    const [first = 0, last = 0] = quantiles(spread.draws, [TAIL, 1 - TAIL]);
    low = Math.min(low, first, spread.low);
    high = Math.max(high, last, spread.high);
  }
  if (low === high) return { low: -1, high: 1 };
  const rim = (high - low) * 0.03;
  return { low: low < 0 ? low - rim : 0, high: high > 0 ? high + rim : 0 };
}

/** One bin. */
export interface Bin {
  /** Where it starts. */
  readonly x: number;
  /** Share of the draws in it. [-] */
  readonly height: number;
}

/**
 * Counts draws into bins.
 *
 * @param draws - the draws
 * @param stretch - stretch of the axis; what lies beyond it is in no bin
 * @returns bins of equal width from one end of the stretch to the other
 */
export function binned(draws: Float64Array, stretch: Stretch): readonly Bin[] {
  const { low, high } = stretch;
  const counts = new Float64Array(COUNT);
  for (const draw of draws) {
    const place = Math.floor(((draw - low) / (high - low)) * COUNT);
    if (place >= 0 && place < COUNT) counts[place]! += 1;
    else if (draw === high) counts[COUNT - 1]! += 1;
  }
  return Array.from(counts, (count, index) => ({
    x: low + ((high - low) * index) / COUNT,
    height: count / draws.length,
  }));
}

/**
 * Cuts a piece out of a row of bins, for a line that runs level from each point to the next.
 *
 * @param bins - bins in order
 * @param from - where the piece starts
 * @param to - where it ends
 * @returns starts of bins within the piece, with its own ends; nothing when it has no extent
 */
export function within(bins: readonly Bin[], from: number, to: number): readonly Bin[] {
  if (!(to > from)) return [];
  const first = bins.filter(({ x }) => x <= from).at(-1) ?? bins[0];
  const inner = bins.filter(({ x }) => x > from && x < to);
  const start = { x: from, height: first?.height ?? 0 };
  const last = inner.at(-1) ?? start;
  return [start, ...inner, { x: to, height: last.height }];
}
