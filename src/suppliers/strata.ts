/**
 * The ledger by stratum: what a buyer needs to work every figure out again, and nothing that names a customer
 * or shows a lot.
 */

import type { FactorSet } from "../factors/factor.js";
import type { LedgerKey } from "../ledger/key.js";
import type { Group } from "../ledger/ledger.js";
import { AMOUNTS } from "../steps/amounts.js";
import type { Stratum } from "./schema.js";

/** Fewest lots of a stratum; those with less join others of the same cloth and route. */
export const FEWEST_LOTS = 3;

/** Band of strata that were joined. */
export const OTHER = "other";

const PLACES = new Map(AMOUNTS.map(({ name }, i) => [name, i]));

/**
 * Place of an amount.
 *
 * @param name - its name
 * @returns its place in the list of amounts; −1 when there is none
 */
export function placeOf(name: string): number {
  return PLACES.get(name) ?? -1;
}

/**
 * Groups that may travel. Of a cloth on a route at a site with fewer than three lots, no sum hides a lot.
 *
 * @param groups - settled groups of the ledger
 * @returns groups that may be added up in a pack
 */
export function travelling(groups: readonly Group[]): readonly Group[] {
  const lots = new Map<string, number>();
  for (const { key, lots: some } of groups)
    lots.set(clothText(key), (lots.get(clothText(key)) ?? 0) + some);
  return groups.filter(({ key }) => (lots.get(clothText(key)) ?? 0) >= FEWEST_LOTS);
}

function clothText({
  blend,
  route,
  pigment,
  dye,
  own,
  site,
}: Pick<LedgerKey, "blend" | "route" | "pigment" | "dye" | "own" | "site">): string {
  return [blend, route, pigment, dye, own, site].join("\u001f");
}

/**
 * Adds groups up by stratum. Months that read the same vintages of factors are one. No stratum has fewer than
 * three lots: small ones are joined whatever their bands of mass and coverage, for those change no figure; where
 * that is not enough, the smallest others of the same cloth and route join them, and as a last resort kinds of
 * lots, settings in force and vintages are those of the most lots.
 *
 * @param groups - settled groups of the ledger that may travel
 * @param factors - factors in force
 * @returns strata, sorted
 */
export function strataOf(groups: readonly Group[], factors: FactorSet): readonly Stratum[] {
  const firsts = firstMonths(groups, factors);
  const all = groups.map((group) => ({
    ...group,
    identity: identityOf(group.key, firsts(group.key.month)),
  }));
  const families = new Map<string, Sum>();
  for (const group of all) add(families, unbanded(group.identity), group);
  const sums = new Map<string, Sum>();
  for (const group of all) add(sums, inFamily(group.identity, families), group);
  return [...joined(sums)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { identity, lots, amounts }]) => ({
      ...identity,
      lots,
      amounts: Object.fromEntries(
        AMOUNTS.flatMap(({ name }, i) =>
          (amounts[i] ?? 0) === 0 ? [] : [[name, amounts[i] ?? 0]],
        ),
      ),
    }));
}

function unbanded(identity: Identity): Identity {
  return { ...identity, weight: OTHER, coverage: OTHER };
}

// A family of fewer than three lots takes kind, settings and vintage of the largest of the same cloth and route.
function inFamily(identity: Identity, families: ReadonlyMap<string, Sum>): Identity {
  const own = families.get(identityText(unbanded(identity)));
  if (own === undefined || own.lots >= FEWEST_LOTS) return identity;
  const cloth = clothText(identity);
  const [largest = own] = [...families.values()]
    .filter((one) => clothText(one.identity) === cloth)
    .sort(
      (a, b) => b.lots - a.lots || (identityText(a.identity) < identityText(b.identity) ? -1 : 1),
    );
  const { kind, settings, from } = largest.identity;
  return { ...identity, kind, settings, from };
}

function joined(sums: ReadonlyMap<string, Sum>): ReadonlyMap<string, Sum> {
  const families = new Map<string, Sum[]>();
  for (const sum of sums.values()) {
    const text = identityText(unbanded(sum.identity));
    families.set(text, [...(families.get(text) ?? []), sum]);
  }
  const result = new Map<string, Sum>();
  for (const family of families.values()) {
    const rising = [...family].sort(
      (a, b) => a.lots - b.lots || (identityText(a.identity) < identityText(b.identity) ? -1 : 1),
    );
    let together = 0;
    for (const sum of rising) {
      const joins = sum.lots < FEWEST_LOTS || (together > 0 && together < FEWEST_LOTS);
      if (joins) together += sum.lots;
      add(result, joins ? unbanded(sum.identity) : sum.identity, sum);
    }
  }
  return result;
}

type Identity = Omit<Stratum, "lots" | "amounts">;

interface Sum {
  readonly identity: Identity;
  lots: number;
  readonly amounts: Float64Array;
}

function add(
  sums: Map<string, Sum>,
  identity: Identity,
  more: { readonly lots: number; readonly amounts: Float64Array },
): void {
  const text = identityText(identity);
  let sum = sums.get(text);
  if (sum === undefined)
    sums.set(text, (sum = { identity, lots: 0, amounts: new Float64Array(AMOUNTS.length) }));
  sum.lots += more.lots;
  for (let i = 0; i < more.amounts.length; i++)
    sum.amounts[i] = sum.amounts[i]! + (more.amounts[i] ?? 0);
}

function identityOf(key: LedgerKey, from: string): Identity {
  return {
    blend: key.blend,
    weight: key.weight,
    coverage: key.coverage,
    route: key.route,
    pigment: key.pigment,
    dye: key.dye,
    own: key.own,
    kind: kindOf(key.kind),
    site: key.site,
    settings: key.settings,
    from,
  };
}

function kindOf(kind: string): Stratum["kind"] {
  return kind === "reprint" || kind === "overhead" ? kind : "production";
}

// Months between the same starts of vintages read the same values; the first of them stands for all.
function firstMonths(groups: readonly Group[], { factors }: FactorSet): (month: string) => string {
  const starts = [
    ...new Set(
      [...factors.values()].flatMap(({ values }) =>
        values.length > 1 ? values.map(({ from }) => from) : [],
      ),
    ),
  ];
  const vintage = (month: string): number => starts.filter((from) => from <= `${month}-01`).length;
  const first = new Map<number, string>();
  for (const { key } of groups) {
    const at = vintage(key.month);
    const known = first.get(at);
    if (known === undefined || key.month < known) first.set(at, key.month);
  }
  return (month) => first.get(vintage(month)) ?? month;
}

/**
 * What sets a stratum apart, as one text; strata are sorted by it.
 *
 * @param stratum - the stratum
 * @returns text
 */
export function identityText(stratum: Identity): string {
  const { blend, weight, coverage, route, pigment, dye, own, kind, site, settings, from } = stratum;
  return [blend, weight, coverage, route, pigment, dye, own, kind, site, settings, from].join(
    "\u001f",
  );
}

/**
 * Strata as groups of a ledger again.
 *
 * @param strata - strata of a pack
 * @returns groups without names, in the order of the strata
 * @throws Error at an amount that is not in the list
 */
export function groupsOf(strata: readonly Stratum[]): readonly Group[] {
  return strata.map(({ lots, amounts, from, ...rest }) => {
    const row = new Float64Array(AMOUNTS.length);
    for (const [name, value] of Object.entries(amounts)) {
      const at = placeOf(name);
      if (at < 0) throw new Error(`There is no amount ${name}.`);
      row[at] = value;
    }
    return { key: { ...rest, month: from, client: "", fabric: "" }, lots, amounts: row };
  });
}
