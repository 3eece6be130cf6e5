/**
 * Judges what a change of the plant file may add to it.
 */

import type { KeyPath } from "../factors/yaml-text.js";
import type { Complaints } from "./complaints.js";
import type { LaidOver, PlantText, SiteText } from "./schema.js";

/** A site of a change as written. */
type SiteChange = NonNullable<LaidOver["sites"]>[string];

/** Prices of a change as written. */
type PriceChange = NonNullable<SiteChange["tariffs"]>;

/**
 * Judges a change by itself. A machine, site or route that the file does not know yet must come whole, so
 * that a slip in a name is found; a price must have been stated before, since lots without it would cost
 * nothing.
 *
 * @param complaints - where faults are noted
 * @param before - the file with all earlier changes
 * @param change - the change
 * @returns the change without what was refused
 */
export function judgeChange(complaints: Complaints, before: PlantText, change: LaidOver): LaidOver {
  const sites = kept(change.sites, (name, site): SiteChange | undefined => {
    const known = own(before.sites, name);
    const at: KeyPath = ["sites", name];
    const what = "a new site with place and machines, or one of this file";
    if (known === undefined && !(site.place !== undefined && site.machines !== undefined)) {
      strange(complaints, at, what, Object.keys(before.sites));
      return undefined;
    }
    return {
      ...site,
      machines: kept(site.machines, (machine, text) =>
        own(known?.machines, machine) !== undefined || text.kind !== undefined
          ? text
          : strange(
              complaints,
              [...at, "machines", machine],
              `a new machine with kind, or one of site ${name}`,
              Object.keys(known?.machines ?? {}),
            ),
      ),
      tariffs: judgePrices(complaints, [...at, "tariffs"], known, site.tariffs),
    };
  });
  const routes = kept(change.routes, (name, route) =>
    own(before.routes, name) !== undefined || route.machines !== undefined
      ? route
      : strange(
          complaints,
          ["routes", name],
          "a new route with machines, or one of this file",
          Object.keys(before.routes),
        ),
  );
  return { sites, routes, counterparts: change.counterparts };
}

// A name that is not known, and does not bring with it what a new thing needs.
function strange(
  complaints: Complaints,
  at: KeyPath,
  what: string,
  known: readonly string[],
): undefined {
  if (!complaints.refusedWithin(at)) complaints.unknown(at, String(at.at(-1)), what, known);
  complaints.refuse(at);
}

function judgePrices(
  complaints: Complaints,
  at: KeyPath,
  site: SiteText | undefined,
  prices: PriceChange | undefined,
): PriceChange | undefined {
  if (prices === undefined || complaints.refused(at)) return undefined;
  const remedy = "State the earlier price at the site; the change then takes its place.";
  if (site !== undefined && site.tariffs === undefined) {
    const expected = "tariffs at the site, which the change can be laid over";
    complaints.say(at, "price-from-change", prices.date ?? "", expected, remedy);
    return undefined;
  }
  if (site?.tariffs === undefined) {
    if (prices.currency !== undefined) return prices;
    complaints.say(
      at,
      "missing-key",
      prices.date ?? "",
      "prices of a new site with currency",
      "Add it.",
    );
    return undefined;
  }
  const { currency } = site.tariffs;
  if (prices.currency !== undefined && prices.currency !== currency) {
    const expected = `${currency}, the currency of the earlier prices`;
    complaints.say(
      [...at, "currency"],
      "currency-changed",
      prices.currency,
      expected,
      "Convert the prices.",
    );
  }
  for (const key of Object.keys(prices)) {
    if (Object.hasOwn(site.tariffs, key) || complaints.refused([...at, key])) continue;
    const expected = "a price that the site states from the beginning";
    complaints.say([...at, key], "price-from-change", key, expected, remedy);
  }
  return prices;
}

function kept<T>(
  parts: Readonly<Record<string, T>> | undefined,
  judge: (name: string, part: T) => T | undefined,
): Record<string, T> | undefined {
  if (parts === undefined) return undefined;
  return Object.fromEntries(
    Object.entries(parts).flatMap(([name, part]) => {
      const judged = judge(name, part);
      return judged === undefined ? [] : [[name, judged] as const];
    }),
  );
}

function own<T>(parts: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return parts !== undefined && Object.hasOwn(parts, name) ? parts[name] : undefined;
}
