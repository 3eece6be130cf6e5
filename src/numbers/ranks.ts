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
  return { shares: () => shares, scores: once(() => shares.map(normalQuantile)) };
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
    return z1.map((z, i) => rho * z + rest * z2[i]!);
  });
  return { scores, shares: once(() => scores().map(normalCdf)) };
}

function once(make: () => Float64Array): () => Float64Array {
  let made: Float64Array | undefined;
  return () => (made ??= make());
}
