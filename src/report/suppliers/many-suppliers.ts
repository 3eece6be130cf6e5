/**
 * What stands in the way of a page where there are many suppliers, told shorter.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { siteSums } from "../../suppliers/flags.js";
import type { BoundaryRow } from "../../suppliers/gate.js";
import { UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { listed, ownShare } from "./supplier-words.js";

/** Suppliers from which page one counts them instead of naming each. */
export const MANY = 13;

/** Names in a cell before the rest is counted. */
const NAMED = 4;

/** Share of own numbers below which a value rests mostly on defaults. [-] */
export const MOSTLY = 0.4;

/**
 * Page one for many suppliers: how many of them, and where each is to be found.
 *
 * @param compared - the comparison
 * @param result - the main indicator
 * @returns the table
 */
export function overviewTable(compared: SuppliersCompared, result: IndicatorResult): Block {
  const { ranked, unranked } = result.standings;
  const { candidates } = compared;
  const alone = ranked.filter(
    (one) =>
      one.group !== undefined && ranked.filter(({ group }) => group === one.group).length === 1,
  );
  const signed = candidates.filter(({ given }) =>
    given.verified?.checks.some(({ id, outcome }) => id === "signature" && outcome === "pass"),
  );
  const metered = candidates.filter(({ given }) => siteSums(given.pack).length > 0);
  const guessed = candidates.filter((one) => ownShare(one, result.id) < MOSTLY);
  const rows: readonly (readonly [string, number])[] = [
    ["compared", candidates.length],
    ["with a place", ranked.length],
    ["of these told apart from all others", alone.length],
    [
      "covering less than 80 % of the mix",
      ranked.filter((one) => one.covered < UNCONDITIONAL).length,
    ],
    ["without a place, for they cover less than half of the mix", unranked.length],
    ["resting mostly on defaults", guessed.length],
    ["with readings of site meters", metered.length],
    [
      "told apart from nobody, for meters do not bear them out",
      ranked.filter(({ unborne }) => unborne === true).length,
    ],
    ["signed", signed.length],
    ["left out", compared.gate.refused.length],
  ];
  return {
    kind: "table",
    id: "overview",
    caption: `Suppliers by ${result.words}. Each is named in the chapter on it, where the table can be sorted and filtered.`,
    head: [textCell("Suppliers"), numberCell("Number")],
    rows: rows.map(([what, number]) => [textCell(what, true), numberCell(String(number))]),
    widths: [4, 1],
  };
}

/** Boundaries that are the same, with the suppliers that have them. */
export interface SharedBoundary {
  /** Names. */
  readonly names: string;
  /** What is counted. */
  readonly row: BoundaryRow;
}

/**
 * Boundaries, those of many suppliers put together where they are the same.
 *
 * @param rows - boundaries by supplier and route
 * @param suppliers - number of suppliers
 * @returns rows to print
 */
export function sharedBoundaries(
  rows: readonly BoundaryRow[],
  suppliers: number,
): readonly SharedBoundary[] {
  if (suppliers < MANY) return rows.map((row) => ({ names: row.alias, row }));
  const groups = new Map<string, BoundaryRow[]>();
  for (const row of rows) {
    const text = JSON.stringify([row.routeClass, row.counted, row.holes]);
    groups.set(text, [...(groups.get(text) ?? []), row]);
  }
  return [...groups.values()].flatMap((same) => {
    const [row] = same;
    const names = [...new Set(same.map(({ alias }) => alias))].sort();
    const shown = names.slice(0, NAMED);
    const rest = names.length - shown.length;
    return row === undefined
      ? []
      : [{ names: listed(rest > 0 ? [...shown, `${rest} more`] : shown), row }];
  });
}
