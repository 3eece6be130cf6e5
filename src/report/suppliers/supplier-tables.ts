/**
 * Tables of the comparison of suppliers.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block, Cell, Run } from "../document.js";
import { type FigureDesk, type Noted, numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { printUnit } from "../compose/names.js";
import { chanceWords, ownShare, verifiedWords } from "./supplier-words.js";

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
  const rows = [...ranked, ...unranked].map((one): readonly Cell[] => {
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
      one.counted === undefined
        ? NONE
        : numberCell(desk.range(`${id}.counted`, scaled(one.counted, scale), unit).run),
      one.chances === undefined
        ? NONE
        : numberCell(chanceWords(one.chances[0] ?? 0, compared.draws)),
      one.group === undefined ? textCell("no place") : numberCell(String(one.group)),
      candidate === undefined ? NONE : numberCell(formatPercent(ownShare(candidate, result.id))),
      numberCell(
        `${formatPercent(one.covered)}${one.chances !== undefined && one.covered < UNCONDITIONAL ? ", conditional" : ""}`,
      ),
      textCell(candidate === undefined ? "" : verifiedWords(candidate.given)),
    ];
  });
  return {
    kind: "table",
    id: `standing-${result.id}`,
    caption: `${result.words}, ${unit}: medians with 95 % intervals. “Counts” is what the place goes by: settings left unsaid and strata missing stand at their unfavourable end. Suppliers of one group cannot be told apart.`,
    head: [
      textCell("Supplier"),
      numberCell("As it stands"),
      numberCell("At the mix"),
      numberCell("Counts"),
      numberCell("Chance of least"),
      numberCell("Group"),
      numberCell("Own numbers"),
      numberCell("Mix covered"),
      textCell("Evidence"),
    ],
    rows,
    widths: [2.2, 2.4, 2.4, 1.1, 1.1, 0.9, 1.1, 1.1, 1.9],
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
    const { lots, accepted, value, hole } = of.cells[k] ?? { lots: 0, accepted: 0 };
    if (hole !== undefined) return textCell(`no value: ${hole} is not counted (${lots} lots)`);
    if (value === undefined) return textCell("▨ nothing printed");
    const noted = desk.range(`${result.id}.${alias}.${k}`, scaled(value, scale), unit);
    return {
      runs: [
        noted.run,
        {
          kind: "text",
          text: ` (${noted.interval}); ${lots} lots, ${formatNumber(accepted, -2)} m²`,
        },
      ],
    };
  };
  return {
    kind: "table",
    id: `cells-${result.id}`,
    caption: `${result.words} by stratum, ${unit}: median, 95 % interval, lots and accepted area. Few lots say little: a value far from the rest tends to come back.`,
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
 * @param compared - the comparison
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table; nothing where the mix names no route
 */
export function freeTable(
  compared: SuppliersCompared,
  result: IndicatorResult,
  desk: FigureDesk,
): readonly Block[] {
  if (result.free === undefined) return [];
  const { unit, scale } = printingOf(result);
  return [
    {
      kind: "table",
      id: `free-${result.id}`,
      caption: `The other question: ${result.words} where the route is left to the supplier, ${unit}. Choosing a route that takes less counts here.`,
      head: [
        textCell("Supplier"),
        numberCell("At the mix"),
        numberCell("Counts"),
        numberCell("Chance of least"),
        numberCell("Group"),
      ],
      rows: result.free.ranked.map(({ alias, value, counted, chances, group }) => {
        const id = `${result.id}.free.${alias}`;
        return [
          textCell(alias, true),
          value === undefined
            ? NONE
            : withInterval(desk.range(`${id}.value`, scaled(value, scale), unit)),
          counted === undefined
            ? NONE
            : numberCell(desk.range(`${id}.counted`, scaled(counted, scale), unit).run),
          numberCell(chanceWords(chances?.[0] ?? 0, compared.draws)),
          numberCell(String(group ?? "")),
        ];
      }),
      widths: [2.2, 2, 1, 1, 0.8],
    },
  ];
}
