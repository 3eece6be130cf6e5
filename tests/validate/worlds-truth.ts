/**
 * True values of a world: one for each leaf, drawn from its spread or from one that is not as the factors say.
 */

import { interval95, quantileOf } from "../../src/numbers/distributions.js";
import { uniforms } from "../../src/numbers/generator.js";
import { normalCdf, normalQuantile } from "../../src/numbers/normal.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import type { Spread } from "../../src/numbers/spread.js";
import { SHIPPED } from "../tools/shipped-factors.js";

/** How the truths of a set of worlds come about. */
export interface Nature {
  /** Name of the set. */
  readonly title: string;
  /** How its truths differ from the spreads of the factors, and what that tells. */
  readonly words: string;
  /** Spread a true value is drawn from. */
  readonly spread: (leaf: Leaf) => Spread;
  /**
   * Whether the part of a setting that is its owner's alone is one for all settings of a machine: `alike`, high
   * with high; `wasteful`, each towards the side that takes more.
   */
  readonly byMachine: "no" | "alike" | "wasteful";
  /** Relative error of a logged column, the same for all its lots, that 95 of 100 worlds keep within; 0 for none. */
  readonly misread: number;
  /** Meters that correct the report; none when absent. */
  readonly meters?: "site" | "machines";
}

/** Standard deviations of half a 95 % interval. */
const HALF_OF_95 = normalQuantile(0.975);

/** Share of a uniform spread that lies between its 2.5 % and 97.5 % quantiles. */
const INSIDE = 0.95;

/**
 * Standard normal scores of worlds, one stream a name. They share no seed with the draws of a report.
 *
 * @param worlds - number of worlds
 * @returns scores by name of the stream
 */
export function scoresOfWorlds(worlds: number): (stream: string) => Float64Array {
  const found = new Map<string, Float64Array>();
  return (stream) => {
    let scores = found.get(stream);
    if (scores === undefined) {
      scores = uniforms("truths of worlds", stream, worlds).map(normalQuantile);
      found.set(stream, scores);
    }
    return scores;
  };
}

/**
 * True values of the leaves of one world.
 *
 * A default of one owner among several is half common and half the owner's, as the reports draw it. Where
 * settings go by machine, the owner's half is that of the machine: any two settings of one machine then have
 * a correlation of ½, and so have the same default on two machines. Numbers that reports draw together go
 * together here as well, except where settings go by machine, which takes the place of their bonds.
 *
 * @param nature - what truths are like
 * @param world - number of the world
 * @param scores - scores of worlds
 * @param side - side towards which a setting follows its machine, 1 or −1, by stream
 * @returns value of a leaf
 */
export function truthOf(
  nature: Nature,
  world: number,
  scores: (stream: string) => Float64Array,
  side: (stream: string) => number,
): (leaf: Leaf) => number {
  const score = (stream: string): number => scores(stream)[world] ?? NaN;
  return (leaf) => {
    if (leaf.spread.shape === "fixed") return leaf.spread.value;
    const common = leaf.common === undefined ? undefined : score(`${leaf.common} (common part)`);
    const machine = nature.byMachine === "no" ? undefined : machineOf(leaf);
    const own = score(leaf.id);
    const alone = common === undefined ? own : (common + own) / Math.SQRT2;
    const { stream, weight } = leaf.bond ?? { stream: leaf.id, weight: 0 };
    const z =
      machine === undefined
        ? weight * score(stream) + Math.sqrt(1 - weight ** 2) * alone
        : ((common ?? own) + side(leaf.id) * score(`settings of ${machine}`)) / Math.SQRT2;
    return quantileOf(nature.spread(leaf))(normalCdf(z));
  };
}

/**
 * Machine a setting belongs to.
 *
 * @param leaf - the leaf
 * @returns site and machine, `main/pad`; undefined for what belongs to no machine
 */
export function machineOf({ id }: Leaf): string | undefined {
  return / @ (?:machine|role) ([^/]+\/[^/ ]+)/.exec(id)?.[1];
}

/**
 * Widens a spread about its central value: standard deviations, on the logarithm for lognormals, and the way
 * to both ends of bounded shapes. What is not possible stays so: it is cut at the plausible range.
 *
 * @param leaf - the leaf
 * @param by - how many times as wide
 * @returns the spread
 */
export function widened(leaf: Leaf, by: number): Spread {
  const { spread } = leaf;
  switch (spread.shape) {
    case "fixed":
      return spread;
    case "normal":
      return { ...spread, sd: by * spread.sd };
    case "lognormal":
      return { ...spread, gsd: spread.gsd ** by };
    default: {
      const [least, most] = possible(leaf);
      const { low, value, high } = spread;
      const middle = spread.shape === "uniform" ? (low + high) / 2 : value;
      return {
        ...spread,
        low: Math.max(least, middle - by * (middle - low)),
        high: Math.min(most, middle + by * (high - middle)),
      };
    }
  }
}

/**
 * Another shape with the same 95 % interval: bounded shapes become lognormal, or normal where they reach zero;
 * normal and lognormal ones become uniform.
 *
 * @param leaf - the leaf
 * @returns the spread
 */
export function reshaped(leaf: Leaf): Spread {
  const { spread } = leaf;
  if (spread.shape === "fixed") return spread;
  const [low, high] = interval95(spread);
  if (!(high > low)) return spread;
  const [least, most] = possible(leaf);
  if (spread.shape === "normal" || spread.shape === "lognormal") {
    const beyond = ((high - low) * (1 - INSIDE)) / (2 * INSIDE);
    const ends = { low: Math.max(least, low - beyond), high: Math.min(most, high + beyond) };
    return { shape: "uniform", value: (ends.low + ends.high) / 2, ...ends };
  }
  const limits = [least, most] as const;
  return low > 0
    ? {
        shape: "lognormal",
        value: Math.sqrt(low * high),
        gsd: Math.exp(Math.log(high / low) / (2 * HALF_OF_95)),
        limits,
      }
    : { shape: "normal", value: (low + high) / 2, sd: (high - low) / (2 * HALF_OF_95), limits };
}

// What a value can be at all: the limits of its spread, or the plausible range of its factor.
function possible({ factor, spread }: Leaf): readonly [number, number] {
  if (spread.shape === "normal" || spread.shape === "lognormal") return spread.limits;
  return SHIPPED.factors.get(factor)?.plausible ?? [0, Infinity];
}
