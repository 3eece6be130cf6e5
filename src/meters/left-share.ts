/**
 * A wide stream without meter, moved by the share that it leaves to lots.
 *
 *     q = 1 − stream / reading,      lots = reading × q
 *
 * is a straight line in logarithms however large the stream is, where the logarithm of the stream itself is bent:
 * moved by that, streams came out too large and lots too small. The move towards smaller streams is bent so that
 * none falls below 0:
 *
 *     stream' = reading (1 − q m) where m, the factor of q, is up to 1;      stream' = stream exp(−q (m − 1) reading / stream) above
 */

import { derive, type Derived, type Leaf } from "../numbers/quantity.js";

/** Largest share of a reading that such a stream may take. */
export const MOST_OF_READING = 0.9;

/** A stream beside its meter. */
export interface Stream {
  /** The stream. */
  readonly leaf: Leaf;
  /** What the meter counted. */
  readonly total: number;
}

/**
 * Factor by which a stream is multiplied.
 *
 * @param by - factor of what it leaves to lots, above 0
 * @param share - its share of the reading, above 0
 * @returns the factor, above 0 for shares below 1
 */
export function streamFactor(by: number, share: number): number {
  const left = 1 - share;
  return by > 1 ? Math.exp((-left * (by - 1)) / share) : (1 - left * by) / share;
}

/**
 * How the logarithm of that factor goes with the logarithm of `by`.
 *
 * @param by - factor of what it leaves to lots
 * @param share - its share of the reading
 * @returns d ln(factor) / d ln(by), below 0
 */
export function streamSlope(by: number, share: number): number {
  const left = 1 - share;
  return by > 1 ? (-left * by) / share : (-left * by) / (1 - left * by);
}

/**
 * The same factor as a formula.
 *
 * @param name - name of the formula
 * @param words - what it comes from
 * @param moved - factor of what the stream leaves to lots
 * @param stream - the stream
 * @returns factor of the stream
 */
export function streamMoved(name: string, words: string, moved: Derived, stream: Stream): Derived {
  const { leaf, total } = stream;
  return derive(name, "1", words, [moved, leaf], (by = 1, value = 0) =>
    streamFactor(by, value / total),
  );
}
