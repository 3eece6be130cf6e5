/**
 * Ranks of draws: the same numbers as probabilities and as standard normal scores. Whichever a spread asks
 * for is worked out once and kept.
 */

import { uniforms } from "./generator.js";
import { normalCdf, normalQuantile } from "./normal.js";

/** One rank for each draw, in two scales. */
export interface Ranks {
  /** Probabilities, above 0 and below 1. */
  readonly shares: () => Float64Array;
  /** Standard normal scores, Φ⁻¹ of the probabilities. */
  readonly scores: () => Float64Array;
}

/**
 * Ranks of a stream.
 *
 * @param seed - seed of the report
 * @param stream - name of the stream
 * @param count - number of draws
 * @param matrix - a second, independent set under the same name; empty for the first
 * @returns the ranks
 */
export function ranksOf(seed: number | string, stream: string, count: number, matrix = ""): Ranks {
  return ranksFrom(uniforms(seed, stream, count, matrix));
}

/**
 * Ranks that are given as probabilities.
 *
 * @param shares - probabilities, above 0 and below 1
 * @returns the ranks
 */
export function ranksFrom(shares: Float64Array): Ranks {
  return { shares: () => shares, scores: once(() => each(shares, normalQuantile)) };
}

/**
 * Ranks that follow another stream in part: z = ρ z₁ + √(1 − ρ²) z₂, which has correlation ρ with the
 * first on the scale of scores.
 *
 * @param first - ranks followed
 * @param own - ranks of their own
 * @param rho - correlation ρ of the scores, from −1 to 1
 * @returns the ranks
 */
export function mixed(first: Ranks, own: Ranks, rho: number): Ranks {
  const rest = Math.sqrt(1 - rho * rho);
  const scores = once(() => {
    const z1 = first.scores();
    const z2 = own.scores();
    const both = new Float64Array(z1.length);
    for (let i = 0; i < both.length; i++) both[i] = rho * z1[i]! + rest * z2[i]!;
    return both;
  });
  return { scores, shares: once(() => each(scores(), normalCdf)) };
}

/**
 * Applies a function to every number. A plain loop, which takes a fraction of the time of `map`.
 *
 * @param numbers - arguments
 * @param of - the function
 * @returns values in the same order
 */
export function each(numbers: Float64Array, of: (number: number) => number): Float64Array {
  const values = new Float64Array(numbers.length);
  for (let i = 0; i < values.length; i++) values[i] = of(numbers[i]!);
  return values;
}

function once(make: () => Float64Array): () => Float64Array {
  let made: Float64Array | undefined;
  return () => (made ??= make());
}
