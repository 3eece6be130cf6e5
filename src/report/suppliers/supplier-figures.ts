/**
 * Figures of the comparison of suppliers.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { asShown, type Standing, UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { MOSTLY } from "./many-suppliers.js";
import { printed, printingOf, scaled } from "./supplier-tables.js";
import {
  capital,
  chanceWords,
  listed,
  otherWords,
  ownShare,
  pairsWords,
} from "./supplier-words.js";

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
    const notes = [
      ...(one.covered < 1 - 1e-9
        ? [
            `covers ${formatPercent(one.covered)} of the mix${one.covered < UNCONDITIONAL ? ", with a condition" : ""}`,
          ]
        : []),
      ...(one.unborne === true ? ["meters do not bear it out"] : []),
    ];
    return [
      {
        name: one.alias,
        ...(notes.length === 0 ? {} : { note: notes.join("; ") }),
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
    title: `${capital(result.words)} at the mix, ${unit}`,
    description: `Each supplier's ${result.words} at the reference mix with its 95 % interval: those told apart first, by name, then those that are not.`,
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
    const supplier = result.suppliers.find((one) => one.alias === alias);
    // What leaves a step out is no value of the same thing.
    const crude = supplier?.holed === undefined ? supplier?.crude : undefined;
    const at = ranked.some((one) => one.alias === alias) ? value : undefined;
    const ends = [crude, at].map((range) =>
      range === undefined ? undefined : scaled(range, scale),
    );
    return {
      name: alias,
      values: ends.map((range) => range?.median ?? null),
      whiskers: ends.map((range) =>
        range === undefined ? null : ([range.low, range.high] as const),
      ),
      printed: ends.map((range) => (range === undefined ? "" : printed(range))),
    };
  });
  const holed = result.suppliers.flatMap(({ alias, holed: missing }) =>
    missing === undefined ? [] : [`${alias} counts no ${listed(missing)} and has no line`],
  );
  return {
    kind: "figure",
    id: `mix-${result.id}`,
    title: `${capital(result.words)}: as it stands and at the mix, ${unit}`,
    description:
      "A line for each supplier from its value in its own mix to its value at the reference mix; the slope is what the mix does.",
    chart: {
      kind: "slope-lines",
      data: {
        columns: ["as it stands, own mix", "at the reference mix"],
        lines: lines.filter(({ values }) => values.some((number) => number !== null)),
        isPlaces: false,
        note: [
          `${result.words}, ${unit}, medians with 95 % intervals, the most on top`,
          ...holed,
        ].join(". "),
      },
    },
  };
}

/**
 * C-F3: chances of places, with settings left unsaid at their unfavourable end and drawn from their defaults. Those
 * that meters do not bear out have no row.
 *
 * @param result - the indicator
 * @returns both figures; none where nobody has a row
 */
export function placeFigures(result: IndicatorResult): readonly Block[] {
  const { ranked } = result.standings;
  const shown = asShown(ranked).filter(({ unborne }) => unborne !== true);
  if (shown.length === 0) return [];
  const n = ranked.length;
  const bins =
    n <= MOST_PLACES
      ? ranked.map((_, place) => [place, place + 1] as const)
      : Array.from(
          { length: GATHERED },
          (_, bin) =>
            [Math.round((bin * n) / GATHERED), Math.round(((bin + 1) * n) / GATHERED)] as const,
        );
  const withheld =
    shown.length === n
      ? ""
      : ` ${n - shown.length} of ${n} without a row, for meters do not bear it out.`;
  const figure = (id: string, how: string, of: (one: Standing) => readonly number[]): Block => ({
    kind: "figure",
    id: `places-${id}${result.id}`,
    title: `Chance of each place by ${result.words}, unsaid settings ${how}`,
    description: `A row for each supplier and a column for each place, the most taken first.${withheld}`,
    chart: {
      kind: "chance-cells",
      data: {
        columns: bins
          .map(([from, to]) => (to - from === 1 ? String(to) : `${from + 1} to ${to}`))
          .reverse(),
        across: `place, the most taken first, the least taken last.${withheld}`,
        rows: shown.map((one) => {
          const sums = bins
            .map(([from, to]) =>
              of(one)
                .slice(from, to)
                .reduce((sum, chance) => sum + chance, 0),
            )
            .reverse();
          return { name: one.alias, chances: sums, printed: sums.map(chanceWords) };
        }),
      },
    },
  });
  return [
    figure("", "at their unfavourable end", ({ chances = [] }) => chances),
    figure("drawn-", "drawn from their defaults", ({ chancesDrawn = [] }) => chancesDrawn),
  ];
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
  // The most taken on top, as in the figures of values.
  const placesOf = (i: number): readonly number[] =>
    [i + 1, ...others.map(({ places }) => places[i] ?? i + 1)].map(
      (place) => ranked.length + 1 - place,
    );
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
          note: "order by median of the value used for it, the most taken on top. Chances of the first column stand in the figures before, with their values; the other columns are drawn without.",
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
