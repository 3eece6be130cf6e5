/**
 * Which of several values of one quantity is used. Measured goes before modelled, and values of two tiers are
 * never averaged: an average of a reading and a guess is neither.
 */

/** A tier of evidence. */
export interface Tier {
  /** Its name, T1 to T7. */
  readonly id: string;
  /** Where values of it come from. */
  readonly words: string;
  /** Under which provenance they are counted. */
  readonly provenance: "measured" | "allocated" | "modelled" | "default";
}

/** Tiers, best first. */
export const TIERS: readonly Tier[] = [
  { id: "T1", words: "reading of the lot itself", provenance: "measured" },
  { id: "T2", words: "meter of the machine", provenance: "measured" },
  { id: "T3", words: "meter of a department, allocated", provenance: "allocated" },
  { id: "T4", words: "meter or bill of the site, allocated", provenance: "allocated" },
  { id: "T5", words: "model with the mill’s own settings", provenance: "modelled" },
  { id: "T6", words: "published factor that fits", provenance: "default" },
  { id: "T7", words: "default taken for want of better", provenance: "default" },
];

/** A value with its tier. */
export interface TieredValue {
  /** The value. */
  readonly value: number;
  /** Name of its tier. */
  readonly tier: string;
  /** Why it cannot be right; absent where nothing speaks against it. */
  readonly against?: string;
}

/** What was chosen, and what was left. */
export interface Chosen {
  /** The value used. */
  readonly used: TieredValue;
  /** Values of better tiers that were passed over, each with what speaks against it. */
  readonly passedOver: readonly TieredValue[];
}

/**
 * Chooses the value of the best tier against which nothing speaks. Where something speaks against all, the best
 * is used, with what speaks against it.
 *
 * @param values - values of one quantity
 * @returns the choice; undefined where there is none
 */
export function best(values: readonly TieredValue[]): Chosen | undefined {
  const order = TIERS.map(({ id }) => id);
  const sorted = values
    .filter(({ tier }) => order.includes(tier))
    .sort((a, b) => order.indexOf(a.tier) - order.indexOf(b.tier));
  const used = sorted.find(({ against }) => against === undefined) ?? sorted[0];
  if (used === undefined) return undefined;
  return { used, passedOver: sorted.slice(0, sorted.indexOf(used)) };
}
