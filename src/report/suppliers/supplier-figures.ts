/**
 * Figures of the comparison of suppliers.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { asShown, UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { printingOf } from "./supplier-tables.js";
import { chanceWords, otherWords, ownShare, pairsWords } from "./supplier-words.js";

/** Share on own numbers below which a dot is hollow. [-] */
const MOSTLY = 0.4;

/** Most suppliers whose places stand in columns of their own. */
const MOST_PLACES = 12;

/** Columns that places are gathered into beyond that. */
const GATHERED = 5;

/**
 * C-F1: values at the mix.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @returns the figure
 */
export function standingFigure(compared: SuppliersCompared, result: IndicatorResult): Block {
  const { unit, scale } = printingOf(result);
  const { ranked } = result.standings;
  const rows = asShown(ranked).flatMap((one) => {
    if (one.value === undefined) return [];
    const candidate = compared.candidates.find(({ alias }) => alias === one.alias);
    const own = candidate === undefined ? 0 : ownShare(candidate, result.id);
    const note =
      one.covered < 1 - 1e-9
        ? `covers ${formatPercent(one.covered)} of the mix${one.covered < UNCONDITIONAL ? ", with a condition" : ""}`
        : undefined;
    return [
      {
        name: one.alias,
        ...(note === undefined ? {} : { note }),
        value: one.value.median * scale,
        low: one.value.low * scale,
        high: one.value.high * scale,
        ...(one.counted === undefined ? {} : { counted: one.counted.median * scale }),
        isHollow: own < MOSTLY,
        ...(one.group === undefined ? {} : { group: one.group }),
      },
    ];
  });
  return {
    kind: "figure",
    id: `suppliers-${result.id}`,
    title: `${result.words} at the mix, ${unit}`,
    description: `Each supplier's ${result.words} at the reference mix with its 95 % interval, those that can be told apart in their order and all others by name.`,
    chart: {
      kind: "supplier-rows",
      data: { quantity: `${result.words} at the mix`, unit, rows },
    },
  };
}

/**
 * C-F2: as it stands beside at the mix.
 *
 * @param result - the indicator
 * @returns the figure
 */
export function mixFigure(result: IndicatorResult): Block {
  const { unit, scale } = printingOf(result);
  const { ranked, unranked } = result.standings;
  const lines = [...ranked, ...unranked].map(({ alias, value }) => {
    const crude =
      (result.suppliers.find((one) => one.alias === alias)?.crude.median ?? NaN) * scale;
    const isRanked = ranked.some((one) => one.alias === alias);
    const at = value === undefined || !isRanked ? null : value.median * scale;
    return {
      name: alias,
      values: [crude, at],
      printed: [crude, at].map((number) =>
        number === null ? "" : formatNumber(number, Math.min(2, digitsFor(number))),
      ),
    };
  });
  return {
    kind: "figure",
    id: `mix-${result.id}`,
    title: `${result.words}: as it stands and at the mix, ${unit}`,
    description:
      "A line for each supplier from its value in its own mix to its value at the reference mix; the slope is what the mix does.",
    chart: {
      kind: "slope-lines",
      data: {
        columns: ["as it stands, own mix", "at the reference mix"],
        lines,
        isPlaces: false,
        note: `${result.words}, ${unit}, medians`,
      },
    },
  };
}

/**
 * C-F3: chances of places.
 *
 * @param result - the indicator
 * @returns the figure
 */
export function placeFigure(result: IndicatorResult): Block {
  const { ranked } = result.standings;
  const n = ranked.length;
  const bins =
    n <= MOST_PLACES
      ? ranked.map((_, place) => [place, place + 1] as const)
      : Array.from(
          { length: GATHERED },
          (_, bin) =>
            [Math.round((bin * n) / GATHERED), Math.round(((bin + 1) * n) / GATHERED)] as const,
        );
  const rows = asShown(ranked).map(({ alias, chances = [] }) => {
    const sums = bins.map(([from, to]) =>
      chances.slice(from, to).reduce((sum, chance) => sum + chance, 0),
    );
    return {
      name: alias,
      chances: sums,
      printed: sums.map(chanceWords),
    };
  });
  return {
    kind: "figure",
    id: `places-${result.id}`,
    title: `Chance of each place by ${result.words}`,
    description:
      "A row for each supplier and a column for each place, the least first; rows and columns add up to 100 %.",
    chart: {
      kind: "chance-cells",
      data: {
        columns: bins.map(([from, to]) => (to - from === 1 ? String(to) : `${from + 1} to ${to}`)),
        across: "place, the least taken first",
        rows,
      },
    },
  };
}

/**
 * C-F4: places under other assumptions.
 *
 * @param result - the indicator
 * @returns the figure, with its table
 */
export function stabilityBlocks(result: IndicatorResult): readonly Block[] {
  const { ranked, others } = result.standings;
  if (others.length === 0) return [];
  const heads = ["as compared", ...others.map(({ id }) => otherWords(id))];
  const placesOf = (i: number): readonly number[] => [
    i + 1,
    ...others.map(({ places }) => places[i] ?? i + 1),
  ];
  return [
    {
      kind: "figure",
      id: `stability-${result.id}`,
      title: `Order by ${result.words} under other assumptions`,
      description: "A line for each supplier through its place under each assumption.",
      chart: {
        kind: "slope-lines",
        data: {
          columns: heads,
          lines: ranked.map(({ alias }, i) => ({
            name: alias,
            values: placesOf(i),
            // Names alone: a number before a name would read as a league table.
            printed: placesOf(i).map(() => ""),
          })),
          isPlaces: true,
          note: "order by median of the value used for it, the least taken on top. Chances stand in the figure before.",
        },
      },
    },
    {
      kind: "table",
      id: `tau-${result.id}`,
      caption:
        "How alike the orders are, pair by pair, and by Kendall's τ-b: 1 for the same and −1 for the reverse.",
      head: [textCell("Assumption"), textCell("Pairs of suppliers"), numberCell("τ-b")],
      rows: others.map(({ id, tau, pairs, kept }) => [
        textCell(otherWords(id), true),
        textCell(pairsWords(pairs, kept)),
        numberCell(tau === undefined ? "no order" : formatNumber(tau, 2)),
      ]),
      widths: [3, 3, 1],
    },
  ];
}
