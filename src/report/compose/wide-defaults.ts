/**
 * Defaults in use that nobody measured, that are wide and whose sources are scored low.
 */

import { leafRange } from "../../account/draws.js";
import { measurementOf } from "../../compare/measurements.js";
import type { FactorValue } from "../../factors/factor.js";
import type { Leaf } from "../../numbers/quantity.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { valueText } from "./units.js";

/** An interval whose upper end is at least this many times its lower end is wide. */
const WIDE = 2;

/** Reliability or likeness of the process from this score on is low; scores run from 1 to 5. */
const LOW_SCORE = 4;

/** Rows at most. */
const MOST_ROWS = 12;

/**
 * Wide and poorly founded defaults, those that move a saving most first.
 *
 * @param desk - the report
 * @returns a table; nothing where there is no such default
 */
export function wideDefaults(desk: ReportDesk): readonly Block[] {
  const { account, factors, worth } = desk.input;
  const leaves = new Map<string, Leaf>();
  for (const { leaf } of account.program.nodes.leaves()) {
    if (leaf.provenance === "default" && !leaves.has(leaf.factor)) leaves.set(leaf.factor, leaf);
  }
  const aloneIn = (factor: string): number =>
    Math.max(0, ...[...(worth?.values() ?? [])].map(({ alone }) => alone.get(factor) ?? 0));
  const wide = [...leaves.values()]
    .flatMap((leaf) => {
      const range = leafRange(leaf);
      const value = factors.factors
        .get(leaf.factor)
        ?.values.find(({ source }) => source === leaf.source);
      return value !== undefined && isWide(range) && isLow(value)
        ? [{ leaf, value, range, share: aloneIn(leaf.factor) }]
        : [];
    })
    .sort((a, b) => b.share - a.share || (a.leaf.factor < b.leaf.factor ? -1 : 1));
  if (wide.length === 0) return [];
  const shown = wide.slice(0, MOST_ROWS);
  return [
    {
      kind: "table",
      id: "wide-defaults",
      caption: `Shipped defaults in use that are wide (the upper end of the 95 % interval at least ${WIDE} times the lower) and scored low (reliability or technology ${LOW_SCORE} or 5 of 5): ${formatNumber(shown.length, 0)} of ${formatNumber(wide.length, 0)}, those that move a saving most first. The share is that of the variance of the saving each moves most, by itself.`,
      behind: true,
      head: [
        textCell("Default"),
        textCell("Median"),
        textCell("95 % interval"),
        textCell("Scores"),
        textCell("Share"),
        textCell("What would show it"),
      ],
      rows: shown.map(({ leaf, value, range, share }): readonly Cell[] => [
        textCell(leaf.factor, true),
        textCell(valueText(range.median, leaf.unit)),
        textCell(`${valueText(range.low, "1")} to ${valueText(range.high, "1")}`),
        textCell(Object.values(value.quality).join(" ")),
        numberCell(share < 0.005 ? "–" : formatPercent(share)),
        textCell(measurementOf(leaf.factor)?.words ?? "–"),
      ]),
      widths: [2.4, 1.5, 1.6, 1, 0.8, 3],
    },
  ];
}

function isWide({ low, high }: { readonly low: number; readonly high: number }): boolean {
  return high > 0 && high >= WIDE * low;
}

function isLow({ quality }: FactorValue): boolean {
  return Math.max(quality.reliability, quality.technology) >= LOW_SCORE;
}
