/**
 * Where two things that should be the same are not.
 */

/** Relative difference at which numbers count as the same: engines may round a logarithm otherwise. */
const SAME = 1e-9;

/**
 * Byte at which two texts part.
 *
 * @param there - a text
 * @param made - the text it should be
 * @returns number of the first byte that differs in UTF-8, counted from 0; undefined when they are the same
 */
export function firstDifference(there: string, made: string): number | undefined {
  if (there === made) return undefined;
  let at = 0;
  while (at < there.length && at < made.length && there[at] === made[at]) at += 1;
  return new TextEncoder().encode(there.slice(0, at)).length;
}

/**
 * Places at which plain data differ; numbers by more than rounding.
 *
 * @param there - data
 * @param made - what they should be
 * @param at - place of the data
 * @returns JSON pointers
 */
export function differingPlaces(there: unknown, made: unknown, at: string): readonly string[] {
  if (typeof there === "number" && typeof made === "number") {
    const size = Math.max(Math.abs(there), Math.abs(made));
    return Math.abs(there - made) <= SAME * size ? [] : [at];
  }
  if (typeof there !== "object" || typeof made !== "object" || there === null || made === null)
    return there === made ? [] : [at];
  const [left, right] = [there as Record<string, unknown>, made as Record<string, unknown>];
  const keys = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...keys].flatMap((key) => differingPlaces(left[key], right[key], `${at}/${key}`));
}
