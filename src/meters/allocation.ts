/**
 * Shares a meter among those that used it, by mass, area, machine hours, or a base by hours and the rest by
 * another key. The parts add up to the meter to the last step.
 */

import { InputError } from "../problems/input-error.js";
import { type Allocated, allocated } from "./average-or-avoidable.js";

/** What a meter may be shared by. */
export const KEYS = ["kg", "m2", "hour"] as const;

/** A key. */
export type Key = (typeof KEYS)[number];

/** One user of a meter. */
export interface MeterUser {
  /** Mass of cloth. [kg] */
  readonly kg: number;
  /** Area. [m²] */
  readonly m2: number;
  /** Machine hours, idle ones included. [h] */
  readonly hour: number;
}

/**
 * Shares a total by weights. Parts are whole steps; those that lost most by cutting get a step more until the
 * sum is right, the earlier one where two lost the same.
 *
 * @param total - 0 or more
 * @param weights - one a user, 0 or more
 * @param step - smallest part told apart, in the unit of the total
 * @returns parts whose steps add up to those of the total
 * @throws {@link InputError} when the total or a weight is below 0, or all weights are 0
 */
export function allocate(
  total: number,
  weights: readonly number[],
  step: number,
): readonly Allocated[] {
  if (!(total >= 0)) throw new InputError("meter to be shared", total, "expected 0 or more");
  const bad = weights.find((weight) => !(weight >= 0));
  if (bad !== undefined) throw new InputError("weight of a share", bad, "expected 0 or more");
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(all > 0)) throw new InputError("weights of a meter", all, "expected one above 0");
  const steps = Math.round(total / step);
  const exact = weights.map((weight) => (steps * weight) / all);
  const whole = exact.map((value) => Math.floor(value));
  let missing = steps - whole.reduce((sum, value) => sum + value, 0);
  const order = exact
    .map((value, at) => ({ at, rest: value - whole[at]! }))
    .sort((a, b) => b.rest - a.rest || a.at - b.at);
  for (const { at } of order) {
    if (missing <= 0) break;
    whole[at] = whole[at]! + 1;
    missing -= 1;
  }
  return whole.map((value) => allocated(value * step));
}

/**
 * Shares a meter by one key.
 *
 * @param total - the meter
 * @param users - its users
 * @param key - the key
 * @param step - smallest part told apart
 * @returns a part for each user
 * @throws {@link InputError} as for {@link allocate}
 */
export function byKey(
  total: number,
  users: readonly MeterUser[],
  key: Key,
  step: number,
): readonly Allocated[] {
  return allocate(
    total,
    users.map((user) => user[key]),
    step,
  );
}

/**
 * Shares a meter in two: its base by machine hours, the rest by another key.
 *
 * @param total - the meter
 * @param base - its base load, from 0 to the total
 * @param users - its users
 * @param key - key of the rest
 * @param step - smallest part told apart
 * @returns a part for each user
 * @throws {@link InputError} when the base is no part of the total, or as for {@link allocate}
 */
export function composite(
  total: number,
  base: number,
  users: readonly MeterUser[],
  key: Key,
  step: number,
): readonly Allocated[] {
  if (!(base >= 0 && base <= total))
    throw new InputError("base load", base, `expected 0 to ${total}`);
  // The shares are worked out first, so that rounding is done once and the sum is that of the meter.
  const sums = { hour: 0, [key]: 0 };
  for (const user of users)
    for (const one of new Set(["hour", key] as const)) sums[one] += user[one];
  const rest = sums[key] ?? 0;
  const weights = users.map(
    (user) =>
      (base > 0 ? (base * user.hour) / sums.hour : 0) +
      (total > base ? ((total - base) * user[key]) / rest : 0),
  );
  return allocate(total, weights, step);
}
