/**
 * Quantities that money may be counted for. What a lot is charged in a disclosure is allocated: it holds a part of
 * what runs whether the lot comes or not. What goes when the lot leaves is avoidable. Both are numbers of the same
 * unit, so they are told apart by type.
 */

import type { OfKind } from "../meters/average-or-avoidable.js";

/** Draws of a quantity that goes when lots leave, or comes with them. */
export type Avoidable = Float64Array & OfKind<"avoidable">;

/** Parts of what lots are charged with. */
export interface Charged {
  /** While cloth runs. */
  readonly running: Float64Array;
  /** While a machine is kept hot, warmed up or on standby. */
  readonly waiting: Float64Array;
}

/**
 * What goes when lots leave a machine. Standby stays as long as the machine does: a steamer kept hot for the lots
 * that are left takes as much as before.
 *
 * @param charged - what the lots are charged with
 * @param removed - whether the machine is taken out
 * @returns what is no longer asked for
 */
export function avoidedBy(charged: Charged, removed: boolean): Avoidable {
  const { running, waiting } = charged;
  return running.map((value, i) => value + (removed ? (waiting[i] ?? 0) : 0)) as Avoidable;
}

/**
 * What comes with lots to a machine, standby included: it is kept hot for them.
 *
 * @param charged - what the lots are charged with
 * @returns what is asked for besides
 */
export function addedBy(charged: Charged): Avoidable {
  return avoidedBy(charged, true);
}
