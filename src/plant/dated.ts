/**
 * The print house by date: which settings a lot is worked out with.
 */

import type { Lot } from "../log/lot.js";
import type { Leaf } from "../numbers/quantity.js";
import type { Complaints } from "./complaints.js";
import type { DatedPlant, Plant } from "./plant.js";
import type { PlantText } from "./schema.js";

/** The house from a day on as it was judged. */
export interface JudgedVersion extends DatedPlant {
  /** What is wrong with it. */
  readonly complaints: Complaints;
  /** What the file says as of that day. */
  readonly text: PlantText;
}

/**
 * The house as it was for a lot: the newest version that begins on or before its day. A lot on a route or
 * site that only a later change adds takes the first version that knows both.
 *
 * @param plant - the print house
 * @param lot - day, site and route of the lot
 * @returns the version
 */
export function plantOn(plant: Plant, lot: Pick<Lot, "date" | "site" | "route">): DatedPlant {
  const { versions } = plant;
  if (versions === undefined) return { from: "", note: "", plant };
  const begun = versions.findLastIndex(({ from }) => from <= lot.date);
  const knowing = versions.find(
    ({ plant: then }, i) =>
      i >= begun && knows(then.routes, lot.route) && knows(then.sites, lot.site),
  );
  return knowing ?? versions[begun] ?? { from: "", note: "", plant };
}

/**
 * The house under the settings that stand in a key of the ledger.
 *
 * @param plant - the print house
 * @param settings - first day of the newest change in force; empty for the file without its changes
 * @returns the house as of that change
 * @throws Error when the file has no change from that day
 */
export function plantUnder(plant: Plant, settings: string): Plant {
  if (plant.versions === undefined && settings === "") return plant;
  const found = plant.versions?.find(({ from }) => from === settings);
  if (found === undefined) {
    throw new Error(
      `The plant file has no change from ${settings}; make the ledger anew from the logs.`,
    );
  }
  return found.plant;
}

/**
 * Where a number of a change stands, as the source of that number.
 *
 * @param from - first day of the change
 * @param where - path of the key inside the change
 * @returns for instance `plant.yaml, changes from 2026-07-01, sites.main.settings.boiler.efficiency`
 */
export function placeInChange(from: string, where: string): string {
  return `plant.yaml, changes from ${from}, ${where}`;
}

/**
 * Stream of a number with the day of the change it came with. The same number of a machine before and after
 * a change has one stream, so both are drawn together; this tells them apart for a reader.
 *
 * @param leaf - the number
 * @returns for instance `boiler.efficiency @ site main, from 2026-07-01`; the bare stream without a change
 */
export function datedStream(leaf: Pick<Leaf, "id" | "source">): string {
  const from = /^plant\.yaml, changes from (\d{4}-\d{2}-\d{2}), /.exec(leaf.source)?.[1];
  return from === undefined ? leaf.id : `${leaf.id}, from ${from}`;
}

/**
 * The house over all its days. Its sites and routes are those of any day, as they were first named.
 *
 * @param versions - the house by date, oldest first; at least one
 * @param first - the oldest
 * @returns the oldest itself where it is the only one
 */
export function houseOf(versions: readonly DatedPlant[], first: Plant): Plant {
  if (versions.length === 1) return first;
  return {
    ...first,
    sites: firstNamed(versions.map(({ plant }) => plant.sites)),
    routes: firstNamed(versions.map(({ plant }) => plant.routes)),
    versions: versions.map(({ from, note, plant }) => ({ from, note, plant })),
  };
}

function firstNamed<T>(all: readonly Readonly<Record<string, T>>[]): Record<string, T> {
  const found = new Map<string, T>();
  for (const [name, part] of all.flatMap((parts) => Object.entries(parts))) {
    if (!found.has(name)) found.set(name, part);
  }
  return Object.fromEntries(found);
}

function knows(named: Readonly<Record<string, unknown>>, name: string): boolean {
  return Object.hasOwn(named, name);
}
