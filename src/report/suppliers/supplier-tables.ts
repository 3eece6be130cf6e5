/**
 * Tables of the comparison of suppliers.
 */

import { DUTIES } from "../../suppliers/boundary.js";
import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Block, Cell, Run } from "../document.js";
import { type FigureDesk, type Noted, numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { printUnit } from "../compose/names.js";
import { gateWords, ownShare, questionWords, testWords, verifiedWords } from "./supplier-words.js";

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
      one.value === undefined
        ? NONE
        : withInterval(desk.range(`${id}.value`, scaled(one.value, scale), unit)),
      one.counted === undefined
        ? NONE
        : numberCell(desk.range(`${id}.counted`, scaled(one.counted, scale), unit).run),
      one.chances === undefined ? NONE : numberCell(formatPercent(one.chances[0] ?? 0)),
      one.group === undefined ? textCell("no place") : numberCell(String(one.group)),
      candidate === undefined ? NONE : numberCell(formatPercent(ownShare(candidate, result.id))),
      numberCell(formatPercent(one.covered)),
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
 * Conditions of comparing.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function gateTable(compared: SuppliersCompared): Block {
  const { gate } = compared;
  return {
    kind: "table",
    id: "conditions",
    caption: "Conditions of comparing, judged before any number.",
    head: [textCell("Condition"), textCell("How it is met")],
    rows: [
      ...gate.lines.map((line) => {
        const [what, how] = gateWords(line);
        return [textCell(what, true), textCell(how)];
      }),
      ...gate.refused.map(({ alias, why, places }) => [
        textCell(`${alias} stays out`, true),
        textCell(places.length === 0 ? why : `${why} (at ${places.slice(0, 4).join(", ")})`),
      ]),
    ],
    widths: [1, 2],
  };
}

/**
 * Table C-T1: the mix.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function mixTable(compared: SuppliersCompared): Block {
  const { mix } = compared;
  return {
    kind: "table",
    id: "mix",
    caption: `Reference mix: ${mix.name}. SHA-256 of strata and weights ${mix.digest}.`,
    head: [textCell("Stratum"), numberCell("Weight")],
    rows: mix.strata.map(({ words, weight }) => [
      textCell(words, true),
      numberCell(formatPercent(weight, 1)),
    ]),
    widths: [3, 1],
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
 * Table C-T3: what is in and out of the count.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function boundaryTable(compared: SuppliersCompared): Block {
  const { gate } = compared;
  return {
    kind: "table",
    id: "boundary-matrix",
    caption:
      "Steps that are counted, by supplier and route: in, at a partner, or out. A step that cloth cannot do without and is out leaves the route without a value.",
    head: [textCell("Supplier, route"), ...DUTIES.map((duty) => textCell(duty))],
    rows: gate.boundary.map(({ alias, route, counted, holes }) => [
      textCell(`${alias}, ${route}`, true),
      ...DUTIES.map((duty) => textCell(holes.includes(duty) ? "out: missing" : counted[duty])),
    ]),
    widths: [2.4, ...DUTIES.map(() => 1)],
  };
}

/**
 * Table C-T4: checks, as questions.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function flagTable(compared: SuppliersCompared): Block {
  const { candidates, flags } = compared;
  const rows = candidates.flatMap(({ alias }, s) =>
    (flags[s] ?? [])
      .filter(({ outcome }) => outcome === "flag")
      .map((flag) => [
        textCell(alias, true),
        textCell(testWords(flag.id)),
        textCell(questionWords(flag)),
      ]),
  );
  return {
    kind: "table",
    id: "checks",
    caption:
      "Checks that ask something. Each is a question and no finding of fault; there may be a good answer.",
    head: [textCell("Supplier"), textCell("Looked for"), textCell("Question")],
    rows:
      rows.length > 0
        ? rows
        : [[textCell("all", true), textCell("every check"), textCell("nothing to ask")]],
    widths: [1, 1.4, 3],
  };
}

/**
 * Verification of all packs, check by check.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function evidenceTable(compared: SuppliersCompared): Block {
  const { candidates } = compared;
  return {
    kind: "table",
    id: "packs",
    caption: "Evidence as it came.",
    head: [
      textCell("Supplier"),
      textCell("Period"),
      numberCell("Lots"),
      numberCell("Rows set aside"),
      textCell("Checked"),
      textCell("SHA-256 of the pack"),
    ],
    rows: candidates.map(({ alias, given }) => [
      textCell(alias, true),
      textCell(`${given.pack.period.from} to ${given.pack.period.to}`),
      numberCell(String(given.pack.totals.lots)),
      numberCell(String(given.pack.counts.aside)),
      textCell(verifiedWords(given)),
      textCell(given.verified?.sealed?.seal.digest ?? "not sealed"),
    ]),
    widths: [1.4, 1.8, 0.7, 0.9, 1.5, 2.4],
  };
}
