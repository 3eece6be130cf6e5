/**
 * What settings come to over all lots, beside what the machines can do: medians of settings, no draws.
 */

import { medianOf } from "../numbers/distributions.js";
import { evaluate, type Quantity } from "../numbers/quantity.js";
import { AMOUNTS } from "../steps/amounts.js";
import type { CheckPart } from "../steps/step.js";
import type { Program } from "./program.js";

/** A check of one step of a route. */
export interface RouteCheck {
  /** Route. */
  readonly route: string;
  /** Role of the step. */
  readonly step: string;
  /** Its machine. */
  readonly machine: string;
  /** What is checked. */
  readonly words: string;
  /** Unit. */
  readonly unit: string;
  /** What the settings come to, over all lots of the route. */
  readonly value: number;
  /** What the machine can do; absent where nobody said. */
  readonly most?: number;
}

const PLACE_OF = new Map(AMOUNTS.map((amount, i) => [amount.name, i]));

/**
 * Works the checks out.
 *
 * @param program - the program
 * @returns one entry a route, step and machine, in the order of the cloth
 */
export function checksOf(program: Program): readonly RouteCheck[] {
  const memo = new Map<Quantity, number>();
  const at = (quantity: Quantity): number =>
    evaluate(quantity, ({ spread }) => medianOf(spread), memo);
  const sums = new Map<
    string,
    { check: Omit<RouteCheck, "value">; above: number; below: number }
  >();
  for (const { arms, amounts, key } of program.classes) {
    const sum = (parts: readonly CheckPart[]): number =>
      parts.reduce(
        (all, { amount, rate }) => all + (amounts[PLACE_OF.get(amount.name) ?? -1] ?? 0) * at(rate),
        0,
      );
    for (const arm of ["pigment", "dye"] as const) {
      const route = arms[arm].route.name;
      for (const { role, machine, checks } of arms[arm].steps) {
        for (const { words, unit, above, below, most } of checks) {
          const name = [key.site, route, role, words].join("|");
          const limit = at(most);
          const check = { route, step: role, machine, words, unit };
          const before = sums.get(name) ?? {
            check: limit > 0 ? { ...check, most: limit } : check,
            above: 0,
            below: 0,
          };
          sums.set(name, {
            check: before.check,
            above: before.above + sum(above),
            below: before.below + sum(below),
          });
        }
      }
    }
  }
  return [...sums.values()].flatMap(({ check, above, below }) =>
    below > 0 ? [{ ...check, value: above / below }] : [],
  );
}
