/**
 * One state of the world in which a study is reckoned: all central values, or one draw of everything, with some
 * inputs held where one wants them.
 */

import { type Arithmetic, DECIMALS, DOUBLES, type Money } from "./arithmetic.js";
import type { Drawn } from "./inputs.js";

/** A world. */
export interface World<T> {
  /** Arithmetic. */
  readonly math: Arithmetic<T>;
  /** Value of a number in it. */
  readonly of: (drawn: Drawn) => T;
}

/** Inputs held at a value, by id. */
export type Held = ReadonlyMap<string, number>;

const NONE: Held = new Map();

/**
 * The world of central values, in doubles.
 *
 * @param held - inputs held elsewhere
 * @returns the world
 */
export function centralWorld(held: Held = NONE): World<number> {
  return { math: DOUBLES, of: ({ id, central }) => held.get(id) ?? central };
}

/**
 * The world of central values, in decimals.
 *
 * @returns the world
 */
export function exactWorld(): World<Money> {
  return { math: DECIMALS, of: ({ central }) => DECIMALS.of(central) };
}

/**
 * The world of one draw.
 *
 * @param at - number of the draw
 * @param held - inputs held at a value
 * @returns the world
 */
export function drawnWorld(at: number, held: Held = NONE): World<number> {
  return {
    math: DOUBLES,
    of: ({ id, central, draws }) => held.get(id) ?? draws?.[at] ?? central,
  };
}
