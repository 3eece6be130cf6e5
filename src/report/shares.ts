/**
 * Shares of the four provenances, as every writer of the report prints them.
 */

import { InputError } from "../problems/input-error.js";
import type { ProvenanceShares } from "./document.js";

/** The four provenances, best known first. */
export const PROVENANCES = ["measured", "allocated", "modelled", "default"] as const;

/** One of the four provenances. */
export type Provenance = (typeof PROVENANCES)[number];

/**
 * Checks that shares are shares.
 *
 * @param shares - four shares
 * @throws InputError when one is not between 0 and 1, or they do not add up to 1 (or all to 0,
 *   where there is no quantity)
 */
export function checkShares(shares: ProvenanceShares): void {
  let sum = 0;
  for (const name of PROVENANCES) {
    const share = shares[name];
    if (!(share >= 0 && share <= 1 + 1e-9)) {
      throw new InputError(
        `provenance.${name}`,
        share,
        "expected a share from 0 to 1; add the shares up again",
      );
    }
    sum += share;
  }
  if (!(Math.abs(sum - 1) < 1e-3 || sum === 0)) {
    throw new InputError(
      "provenance",
      sum,
      "expected four shares that add up to 1; add the shares up again",
    );
  }
}

/**
 * Rounds shares to whole percent so that they still add up to 100: the largest remainders go up.
 *
 * @param shares - four shares
 * @returns percent by provenance, as printed; what is there but rounds to nothing is `< 1 %`
 */
export function percents(shares: ProvenanceShares): Readonly<Record<Provenance, string>> {
  const exact = PROVENANCES.map((name) => shares[name] * 100);
  const whole = exact.map((value) => Math.floor(value + 1e-9));
  const total = exact.reduce((sum, value) => sum + value, 0);
  let missing = Math.round(total) - whole.reduce((sum, value) => sum + value, 0);
  const order = exact
    .map((value, index) => ({ index, rest: value - (whole[index] ?? 0) }))
    .toSorted((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of order) {
    if (missing <= 0) break;
    whole[index] = (whole[index] ?? 0) + 1;
    missing -= 1;
  }
  const printed = (index: number): string => {
    const value = whole[index] ?? 0;
    return value === 0 && (exact[index] ?? 0) > 0 ? "<\u00a01\u00a0%" : `${value}\u00a0%`;
  };
  return { measured: printed(0), allocated: printed(1), modelled: printed(2), default: printed(3) };
}
