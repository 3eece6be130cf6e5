/**
 * Tables of the comparison of suppliers.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { effectiveAtMix } from "../../suppliers/sampling.js";
import { asShown, isPlacedByUnsaid, type Standing } from "../../suppliers/standings.js";
import type { Block, Cell, Run } from "../document.js";
import { type FigureDesk, type Noted, numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber } from "../format.js";
import { printUnit } from "../compose/names.js";
import { capital, chanceWords, listed } from "./supplier-words.js";

/** A median with its interval. */
export interface Ranged {
  /** Median. */
  readonly median: number;
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/** Numbers of one indicator in print units. */
export interface Printing {
  /** Unit as printed. */
  readonly unit: string;
  /** Printed value per value. */
  readonly scale: number;
}

/**
 * Unit of an indicator as printed.
 *
 * @param result - the indicator
 * @returns unit per m² and scale
 */
export function printingOf(result: IndicatorResult): Printing {
  return printUnit(result.id, result.unit, "m²");
}

/**
 * A range in print units.
 *
 * @param range - the range
 * @param scale - printed value per value
 * @returns the range scaled
 */
export function scaled(range: Ranged, scale: number): Ranged {
  return { median: range.median * scale, low: range.low * scale, high: range.high * scale };
}

/**
 * A median in as many digits as its interval carries, the same wherever it stands.
 *
 * @param range - median and interval in print units
 * @returns the median in print
 */
export function printed(range: Ranged): string {
  const { median, low, high } = range;
  return formatNumber(median, digitsFor(median, low, high));
}

/**
 * A number with its interval.
 *
 * @param noted - the number noted
 * @returns the cell
 */
export function withInterval(noted: Noted): Cell {
  const { run, interval } = noted;
  const runs: readonly Run[] =
    interval === "" ? [run] : [run, { kind: "text", text: ` (${interval})` }];
  return { runs, align: "right" };
}

/** Cell of what is not there. */
export const NONE = numberCell("–");

/** Most names in a cell; more are counted. */
const NAMED = 3;

/**
 * Who a supplier cannot be told apart from.
 *
 * @param one - the supplier
 * @param ranked - all with a place
 * @returns names, their number where there are many, `nobody`, or why it cannot be told
 */
export function sameAs(one: Standing, ranked: readonly Standing[]): string {
  if (one.unborne === true) return "not borne out by meters";
  const others = ranked.filter(
    ({ alias, group }) => alias !== one.alias && group !== undefined && group === one.group,
  );
  const names =
    others.length === 0
      ? "nobody"
      : others.length > NAMED
        ? `${others.length} others`
        : listed(asShown(others).map(({ alias }) => alias));
  return isPlacedByUnsaid(one) ? `${names}; place by unsaid settings, not by what it takes` : names;
}

/**
 * Chance to take least, drawn and at the unfavourable end.
 *
 * @param one - the supplier
 * @returns both; `withheld` where meters do not bear it out, a dash without a place
 */
export function chancePair(one: Standing): string {
  const { chances, chancesDrawn, unborne } = one;
  if (chances === undefined) return "–";
  return unborne === true
    ? "withheld"
    : `${chanceWords(chancesDrawn?.[0] ?? 0)} / ${chanceWords(chances[0] ?? 0)}`;
}

/**
 * What the order goes by, and how well it is known.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table
 */
export function orderTable(
  compared: Pick<SuppliersCompared, "mix">,
  result: IndicatorResult,
  desk: FigureDesk,
): Block {
  const { unit, scale } = printingOf(result);
  const { ranked, unranked } = result.standings;
  const { mix } = compared;
  return {
    kind: "table",
    id: `order-${result.id}`,
    caption: `Value used for the order, ${unit}, with settings left unsaid and strata missing at their unfavourable end; lots in the mix, and how many they are worth at its weights; and data scores from 1, stated by the supplier for this plant, unchecked, to 5, guessed.`,
    head: [
      textCell("Supplier"),
      numberCell("Value used for order"),
      numberCell("Lots"),
      numberCell("Worth"),
      ...["Technology", "Time", "Place", "Precision", "Completeness"].map((head) =>
        numberCell(head),
      ),
    ],
    rows: [...asShown(ranked), ...asShown(unranked)].map(({ alias, counted }) => {
      const supplier = result.suppliers.find((one) => one.alias === alias);
      const cells = supplier?.cells ?? [];
      const rating = supplier?.rating;
      const scores =
        rating === undefined
          ? []
          : [rating.technology, rating.time, rating.place, rating.reliability, rating.completeness];
      return [
        textCell(alias, true),
        counted === undefined
          ? NONE
          : withInterval(desk.range(`${result.id}.${alias}.counted`, scaled(counted, scale), unit)),
        numberCell(
          formatNumber(
            cells.reduce((sum, { lots }) => sum + lots, 0),
            0,
          ),
        ),
        numberCell(
          formatNumber(
            effectiveAtMix(
              mix.strata.map(({ weight }) => weight),
              cells.map(({ effective, hole }) => (hole === undefined ? effective : 0)),
            ),
            0,
          ),
        ),
        ...[0, 1, 2, 3, 4].map((k) =>
          scores[k] === undefined ? NONE : numberCell(formatNumber(scores[k], 1)),
        ),
      ];
    }),
    widths: [1.6, 2, 0.7, 0.7, 1.1, 0.8, 0.8, 1, 1.3],
  };
}

/**
 * Table C-T2: values of all strata. A stratum without data says so and is never 0.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table
 */
export function cellTable(
  compared: SuppliersCompared,
  result: IndicatorResult,
  desk: FigureDesk,
): Block {
  const { unit, scale } = printingOf(result);
  const cell = (alias: string, k: number, of: (typeof result.suppliers)[number]): Cell => {
    const { lots, effective, accepted, value, hole } = of.cells[k] ?? {
      lots: 0,
      effective: 0,
      accepted: 0,
    };
    if (hole !== undefined) return textCell(`no value: ${hole} is not counted (${lots} lots)`);
    if (value === undefined) return textCell("▨ nothing printed");
    const noted = desk.range(`${result.id}.${alias}.${k}`, scaled(value, scale), unit);
    return {
      runs: [
        noted.run,
        {
          kind: "text",
          text: ` (${noted.interval}); ${lots} lots worth ${formatNumber(effective, effective < 10 ? 1 : 0)}, ${formatNumber(accepted, -2)} m²`,
        },
      ],
    };
  };
  return {
    kind: "table",
    id: `cells-${result.id}`,
    caption: `${capital(result.words)} by stratum, ${unit}: median, 95 % interval, lots, how many of equal size they are worth, and accepted area. Few lots say little: a value far from the rest tends to come back.`,
    head: [textCell("Supplier"), ...compared.mix.strata.map(({ words }) => textCell(words))],
    rows: result.suppliers.map((supplier) => [
      textCell(supplier.alias, true),
      ...compared.mix.strata.map((_, k) => cell(supplier.alias, k, supplier)),
    ]),
    behind: true,
  };
}

/**
 * Places with the route left to the supplier.
 *
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table; nothing where the mix names no route
 */
export function freeTable(result: IndicatorResult, desk: FigureDesk): readonly Block[] {
  const { free } = result;
  if (free === undefined) return [];
  const { unit, scale } = printingOf(result);
  return [
    {
      kind: "table",
      id: `free-${result.id}`,
      caption: `The other question: ${result.words} where the route is left to the supplier, ${unit}. Choosing a route that takes less counts here.`,
      head: [
        textCell("Supplier"),
        numberCell("At the mix"),
        numberCell("Value used for order"),
        numberCell("Takes least: drawn / at the end"),
        textCell("Not told apart from"),
      ],
      rows: asShown(free.ranked).map((one) => {
        const { alias, value, counted } = one;
        const id = `${result.id}.free.${alias}`;
        return [
          textCell(alias, true),
          value === undefined
            ? NONE
            : withInterval(desk.range(`${id}.value`, scaled(value, scale), unit)),
          counted === undefined
            ? NONE
            : numberCell(desk.range(`${id}.counted`, scaled(counted, scale), unit).run),
          numberCell(chancePair(one)),
          textCell(sameAs(one, free.ranked)),
        ];
      }),
      widths: [1.8, 2, 1.2, 1.6, 2.6],
    },
  ];
}
