/** Whether what we work out lies inside a published range. */

/** A range, ends included. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Where ours lies. */
export type Verdict = "inside" | "partly inside" | "outside";

/**
 * Sets a span beside a published range.
 *
 * @param ours - from well run to poorly run
 * @param published - the published range, ends included
 * @returns inside when all of ours is, outside when none of it is
 */
export function verdictOf(ours: Span, published: Span): Verdict {
  if (ours.low >= published.low && ours.high <= published.high) return "inside";
  return ours.high < published.low || ours.low > published.high ? "outside" : "partly inside";
}

/**
 * Verdict on several fabrics together.
 *
 * @param verdicts - that on each, at least one
 * @returns the common one, and partly inside where they differ
 */
export function together(verdicts: readonly Verdict[]): Verdict {
  const [first, ...rest] = verdicts;
  if (first === undefined) throw new Error("There is no fabric to judge.");
  return rest.every((verdict) => verdict === first) ? first : "partly inside";
}

/**
 * Span that holds all values.
 *
 * @param values - at least one, all finite
 * @returns smallest and largest
 */
export function spanOf(values: readonly number[]): Span {
  const span = { low: Math.min(...values), high: Math.max(...values) };
  if (!(Number.isFinite(span.low) && Number.isFinite(span.high))) {
    throw new Error(`${values.join(", ")} are no span.`);
  }
  return span;
}
