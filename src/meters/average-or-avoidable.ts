/**
 * Two kinds of quantity that must not be added: what is allocated to a lot on average, base load and all, and
 * what would not have been used without it.
 *
 *     allocated = meter × share of a key        avoidable = slope × production
 */

declare const kind: unique symbol;

/** Mark of a quantity or of its draws, by which the two kinds are told apart. */
export interface OfKind<K extends "allocated" | "avoidable"> {
  /** Held by the type alone. */
  readonly [kind]: K;
}

/** A share of a meter: base load is in it. For disclosure. */
export type Allocated = number & OfKind<"allocated">;

/** What would fall away with the lots: base load is not in it. For investment. */
export type Avoidable = number & OfKind<"avoidable">;

/**
 * Marks a number as allocated.
 *
 * @param value - the number
 * @returns the same, of its kind
 */
export function allocated(value: number): Allocated {
  return value as Allocated;
}

/**
 * Marks a number as avoidable.
 *
 * @param value - the number
 * @returns the same, of its kind
 */
export function avoidable(value: number): Avoidable {
  return value as Avoidable;
}

/**
 * Adds numbers of one kind.
 *
 * @param numbers - numbers of one kind
 * @returns their sum, of that kind
 */
export function sumOf(numbers: readonly Allocated[]): Allocated;
export function sumOf(numbers: readonly Avoidable[]): Avoidable;
export function sumOf(numbers: readonly number[]): number {
  let sum = 0;
  for (const number of numbers) sum += number;
  return sum;
}
