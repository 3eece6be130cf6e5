/**
 * Many names of clients or fabrics folded, so that a report stays readable and is made in bounded time.
 */

import { keyText, type LedgerKey } from "./key.js";
import type { Group } from "./ledger.js";
import { ACCEPTED } from "./tally.js";

/** Names of clients, and of fabrics, that groups may hold; what the smallest are folded into is one of them. */
export const MOST_NAMES = 500;

/** Fields of a key whose names are folded. */
type Named = "client" | "fabric";

/** Names folded into one. */
export interface FoldedNames {
  /** How many names. */
  readonly names: number;
  /** What stands in place of them, such as `other (120 clients)`. */
  readonly into: string;
  /** Lots of theirs. */
  readonly lots: number;
  /** Accepted area of theirs. [m²] */
  readonly accepted: number;
}

/** Groups and what was folded in them. */
export interface FewerNames {
  /** Groups, sorted by key. */
  readonly groups: readonly Group[];
  /** What was folded. */
  readonly folded: Folded;
}

/** What was folded; a field is absent when there were few enough names. */
export interface Folded {
  /** Clients. */
  readonly client?: FoldedNames;
  /** Fabrics. */
  readonly fabric?: FoldedNames;
}

/**
 * Folds the names with the least accepted area, and among equals the last by name, once there are more than
 * `most` clients or more than `most` fabrics. No name, as where none was logged, is never folded.
 *
 * @param groups - gives all groups, sorted by key: sums are rounded in this order, so it must not depend on
 * that of lots. It is asked twice, so that only the groups left need be in memory at once.
 * @param most - names left, that of the folded ones included
 * @returns groups with those that now share a key added up, and what was folded
 */
export function foldNames(groups: () => Iterable<Group>, most = MOST_NAMES): FewerNames {
  const sums = areasByName(groups());
  const client = smallest(sums, "client", most);
  const fabric = smallest(sums, "fabric", most);
  if (client === undefined && fabric === undefined) return { groups: [...groups()], folded: {} };
  const renamed = (key: LedgerKey): LedgerKey => ({
    ...key,
    client: client?.names.has(key.client) === true ? client.said.into : key.client,
    fabric: fabric?.names.has(key.fabric) === true ? fabric.said.into : key.fabric,
  });
  const byKey = new Map<string, Group>();
  for (const group of groups()) {
    const key = renamed(group.key);
    const text = keyText(key);
    const there = byKey.get(text);
    const amounts = there?.amounts ?? new Float64Array(group.amounts.length);
    for (const [k, amount] of group.amounts.entries()) amounts[k] = (amounts[k] ?? 0) + amount;
    byKey.set(text, { key: there?.key ?? key, lots: (there?.lots ?? 0) + group.lots, amounts });
  }
  return {
    groups: [...byKey].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, group]) => group),
    folded: {
      ...(client === undefined ? {} : { client: client.said }),
      ...(fabric === undefined ? {} : { fabric: fabric.said }),
    },
  };
}

interface Sum {
  lots: number;
  accepted: number;
}

type SumsByName = Readonly<Record<Named, Map<string, Sum>>>;

function areasByName(groups: Iterable<Group>): SumsByName {
  const sums: SumsByName = { client: new Map(), fabric: new Map() };
  for (const { key, lots, amounts } of groups) {
    for (const by of ["client", "fabric"] as const) {
      if (key[by] === "") continue;
      const sum = sums[by].get(key[by]) ?? { lots: 0, accepted: 0 };
      sum.lots += lots;
      sum.accepted += amounts[ACCEPTED] ?? 0;
      sums[by].set(key[by], sum);
    }
  }
  return sums;
}

function smallest(
  byName: SumsByName,
  by: Named,
  most: number,
): { readonly names: ReadonlySet<string>; readonly said: FoldedNames } | undefined {
  const sums = byName[by];
  if (sums.size <= most) return undefined;
  const folded = [...sums]
    .sort(([a, x], [b, y]) => y.accepted - x.accepted || (a < b ? -1 : 1))
    .slice(most - 1);
  return {
    names: new Set(folded.map(([name]) => name)),
    said: {
      names: folded.length,
      into: `other (${folded.length} ${by}s)`,
      lots: folded.reduce((total, [, { lots }]) => total + lots, 0),
      accepted: folded.reduce((total, [, { accepted }]) => total + accepted, 0),
    },
  };
}
