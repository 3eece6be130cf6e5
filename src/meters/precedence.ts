/**
 * Tiers of evidence. Each quantity of a machine has one tier, the best that tells of it: measured goes before
 * modelled, and tiers are never averaged, for the mean of a reading and a guess is neither.
 */

/** A tier of evidence. */
export interface Tier {
  /** Its name, T1 to T7. */
  readonly id: TierId;
  /** Where values of it come from. */
  readonly words: string;
}

/** Names of tiers, best first. */
export type TierId = "T1" | "T2" | "T3" | "T4" | "T5" | "T6" | "T7";

/** Tiers, best first. */
export const TIERS: readonly Tier[] = [
  { id: "T1", words: "reading of the lot itself" },
  { id: "T2", words: "meter of the machine" },
  { id: "T3", words: "meter of several machines, allocated" },
  { id: "T4", words: "meter of the site, allocated" },
  { id: "T5", words: "model with the mill’s own settings" },
  { id: "T6", words: "published factor" },
  { id: "T7", words: "default without a published source" },
];

/** What a meter covers. */
export interface TieredMeter {
  /** Machines behind it; absent for a site. */
  readonly machines?: readonly string[];
  /** Number of lots, where it is made of readings of single lots. */
  readonly lots?: number;
}

/**
 * Tier of what several meters say of one machine: the best, and never one between. A counter of the machine counts
 * all of its lots, so it stands before readings of single lots, which tell of those.
 *
 * @param meters - the meters, each of which counts the machine
 * @returns T1 to T4; undefined where nothing tells of it
 */
export function tierTold(meters: readonly TieredMeter[]): TierId | undefined {
  const counted = best(meters.filter(({ lots }) => lots === undefined).map(tierOf));
  return counted === "T2" ? counted : best(meters.map(tierOf));
}

function tierOf({ machines, lots }: TieredMeter): TierId {
  if (machines === undefined) return "T4";
  if (machines.length > 1) return "T3";
  return lots === undefined ? "T2" : "T1";
}

function best(tiers: readonly TierId[]): TierId | undefined {
  return TIERS.find(({ id }) => tiers.includes(id))?.id;
}
