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
 * Adds groups up by stratum. Months that read the same vintages of factors are one. Strata of fewer than three
 * lots are joined, whatever their bands of mass and coverage, for those change no figure.
 *
 * @param groups - settled groups of the ledger
 * @param factors - factors in force
 * @returns strata, sorted
 */
export function strataOf(groups: readonly Group[], factors: FactorSet): readonly Stratum[] {
  const firsts = firstMonths(groups, factors);
  const sums = new Map<string, Sum>();
  for (const group of groups) add(sums, identityOf(group.key, firsts(group.key.month)), group);
  const joined = new Map<string, Sum>();
  for (const { identity, ...sum } of sums.values()) {
    const few = sum.lots < FEWEST_LOTS;
    add(joined, few ? { ...identity, weight: OTHER, coverage: OTHER } : identity, sum);
  }
  return [...joined]
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
  const text = Object.values(identity).join("\u001f");
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
