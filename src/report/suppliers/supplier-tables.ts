/**
 * Tables of the comparison of suppliers.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Candidate } from "../../suppliers/candidate.js";
import { plainRatio, siteSums } from "../../suppliers/flags.js";
import { asShown, type Standing, UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block, Cell, Run } from "../document.js";
import { type FigureDesk, type Noted, numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { printUnit } from "../compose/names.js";
import { chanceWords, listed, ownShare, signedWords } from "./supplier-words.js";

interface Ranged {
  readonly median: number;
  readonly low: number;
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

function withInterval({ run, interval }: Noted): Cell {
  const runs: readonly Run[] =
    interval === "" ? [run] : [run, { kind: "text", text: ` (${interval})` }];
  return { runs, align: "right" };
}

/** Cell of what is not there. */
const NONE = numberCell("–");

/** Most names in a cell; more are counted. */
const NAMED = 3;

/**
 * Who a supplier cannot be told apart from.
 *
 * @param one - the supplier
 * @param ranked - all with a place
 * @returns names, their number where there are many, or `nobody`
 */
function sameAs(one: Standing, ranked: readonly Standing[]): string {
  const others = ranked.filter(({ alias, group }) => alias !== one.alias && group === one.group);
  if (others.length === 0) return "nobody";
  if (others.length === ranked.length - 1 && others.length > 1) return "any other";
  return others.length > NAMED
    ? `${others.length} others`
    : listed(asShown(others).map(({ alias }) => alias));
}

/**
 * Table C0: suppliers at the mix.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table
 */
export function standingTable(
  compared: SuppliersCompared,
  result: IndicatorResult,
  desk: FigureDesk,
): Block {
  const { unit, scale } = printingOf(result);
  const { ranked, unranked } = result.standings;
  const rows = [...asShown(ranked), ...unranked].map((one): readonly Cell[] => {
    const candidate = compared.candidates.find(({ alias }) => alias === one.alias);
    const supplier = result.suppliers.find(({ alias }) => alias === one.alias);
    const id = `${result.id}.${one.alias}`;
    return [
      textCell(one.alias, true),
      supplier === undefined
        ? NONE
        : withInterval(desk.range(`${id}.crude`, scaled(supplier.crude, scale), unit)),
      // Of less than half of the mix there is a value, but of another mix.
      one.value === undefined || one.chances === undefined
        ? NONE
        : withInterval(desk.range(`${id}.value`, scaled(one.value, scale), unit)),
      one.leastDrawn === undefined ? NONE : numberCell(chanceWords(one.leastDrawn)),
      one.chances === undefined ? NONE : numberCell(chanceWords(one.chances[0] ?? 0)),
      textCell(one.group === undefined ? "no place" : sameAs(one, ranked)),
      candidate === undefined ? NONE : numberCell(formatPercent(ownShare(candidate, result.id))),
      numberCell(supplier?.rating === undefined ? "–" : formatNumber(supplier.rating.rating, 1)),
      numberCell(candidate === undefined ? "–" : meterWords(candidate)),
      numberCell(
        `${formatPercent(one.covered)}${one.chances !== undefined && one.covered < UNCONDITIONAL ? ", conditional" : ""}`,
      ),
      textCell(candidate === undefined ? "" : signedWords(candidate.given)),
    ];
  });
  return {
    kind: "table",
    id: `standing-${result.id}`,
    caption: `${result.words}, ${unit}: medians with 95 % intervals. Chance to take least: with settings left unsaid drawn from their defaults, and with them at their unfavourable end. Data: mean of four scores from 1, measured here and now, to 5, guessed. Meters: site meters over what the lots come to, water and electricity.`,
    head: [
      textCell("Supplier"),
      numberCell("As it stands"),
      numberCell("At the mix"),
      numberCell("Least, drawn"),
      numberCell("Least, at the end"),
      textCell("Not told apart from"),
      numberCell("Own numbers"),
      numberCell("Data"),
      numberCell("Meters"),
      numberCell("Mix covered"),
      textCell("Seal"),
    ],
    rows,
    widths: [1.7, 1.9, 1.9, 0.95, 0.95, 1.6, 1, 0.7, 0.9, 1, 1],
  };
}

function meterWords(candidate: Candidate): string {
  const sums = siteSums(candidate.given.pack);
  const ratio = (quantity: string): string => {
    const found = sums.find((one) => one.quantity === quantity);
    return found === undefined ? "–" : `${plainRatio(found.metered / found.lots)}×`;
  };
  return sums.length === 0 ? "none" : `${ratio("water")}, ${ratio("electricity")}`;
}

/**
 * What the order goes by, and how well it is known.
 *
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table
 */
export function orderTable(result: IndicatorResult, desk: FigureDesk): Block {
  const { unit, scale } = printingOf(result);
  const { ranked, unranked } = result.standings;
  return {
    kind: "table",
    id: `order-${result.id}`,
    caption: `Value used for the order, ${unit}, with settings left unsaid and strata missing at their unfavourable end; lots in the mix and how many of equal size they are worth; and data scores from 1, measured here and now, to 5, guessed.`,
    head: [
      textCell("Supplier"),
      numberCell("Value used for order"),
      numberCell("Lots"),
      numberCell("Worth"),
      ...["Technology", "Time", "Place", "Precision", "Completeness"].map((head) =>
        numberCell(head),
      ),
    ],
    rows: [...asShown(ranked), ...unranked].map(({ alias, counted }) => {
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
            cells.reduce((sum, { effective }) => sum + effective, 0),
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
    caption: `${result.words} by stratum, ${unit}: median, 95 % interval, lots, how many of equal size they are worth, and accepted area. Few lots say little: a value far from the rest tends to come back.`,
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
        numberCell("Least, drawn"),
        numberCell("Least, at the end"),
        textCell("Not told apart from"),
      ],
      rows: asShown(free.ranked).map((one) => {
        const { alias, value, counted, chances, leastDrawn } = one;
        const id = `${result.id}.free.${alias}`;
        return [
          textCell(alias, true),
          value === undefined
            ? NONE
            : withInterval(desk.range(`${id}.value`, scaled(value, scale), unit)),
          counted === undefined
            ? NONE
            : numberCell(desk.range(`${id}.counted`, scaled(counted, scale), unit).run),
          numberCell(chanceWords(leastDrawn ?? 0)),
          numberCell(chanceWords(chances?.[0] ?? 0)),
          textCell(sameAs(one, free.ranked)),
        ];
      }),
      widths: [1.8, 2, 1.2, 1, 1.1, 2],
    },
  ];
}
