/**
 * Where our columns stand in the records of a file, found from its row of headings.
 */

import { nearest } from "../factors/nearest.js";
import type { Problem } from "../problems/problem.js";
import { temperatureToCelsius, unitFactor } from "../units/convert.js";
import { type Column, COLUMNS } from "./columns.js";
import type { CsvRecord } from "./csv.js";
import type { LogDialect } from "./dialect.js";

/** Where a column stands and how its numbers are turned into its own unit. */
export interface PlacedColumn {
  /** The column. */
  readonly column: Column;
  /** Place in the record; -1 for a constant. */
  readonly at: number;
  /** The exporter's heading. */
  readonly heading: string;
  /** Unit its numbers are logged in; absent for columns without one. */
  readonly unit: string | undefined;
  /** Turns a number in the unit logged into the column's own unit. */
  readonly convert: (logged: number) => number;
  /** Text of every row when the file has no such column; otherwise empty. */
  readonly constant: string;
}

/** Where each of our columns stands in the records of a file. */
export interface Layout {
  /** File as the user named it. */
  readonly file: string;
  /** Columns found. */
  readonly columns: readonly PlacedColumn[];
  /** Headings as written, spaces around them apart. */
  readonly headings: readonly string[];
  /** Number of headings up to the last one that is not blank: no record may be shorter. */
  readonly least: number;
}

/** A layout, or why the headings cannot be used. */
export interface LaidOut {
  /** The layout; absent when one of the problems is a refusal. */
  readonly layout?: Layout;
  /** Faults of the headings, and warnings. */
  readonly problems: readonly Problem[];
  /** Headings that are mapped to nothing. */
  readonly unused: readonly string[];
}

type Say = (
  column: string,
  fault: Pick<Problem, "code" | "expected" | "remedy"> & { readonly value: string },
) => void;

/**
 * Finds the columns in a row of headings. A column that the file has rules over a constant for it, blank cells
 * included, with a warning: a constant is for logs without the column.
 *
 * @param file - file as the user named it
 * @param record - the row of headings
 * @param dialect - how the log is written
 * @returns the layout, or what is missing
 */
export function layOut(file: string, record: CsvRecord, dialect: LogDialect): LaidOut {
  const headings = record.fields.map((field) => field.trim());
  const folded = headings.map(plain);
  const problems: Problem[] = [];
  const used = new Set<number>();
  const columns: PlacedColumn[] = [];
  const say: Say = (column, fault) => {
    problems.push({ ...fault, severity: "refused", file, line: record.line, column });
  };
  for (const column of COLUMNS) {
    const mapped = dialect.columns?.[column.name];
    const { heading: wanted, unit } =
      typeof mapped === "object" ? mapped : { heading: mapped ?? column.name, unit: undefined };
    const constant = dialect.constants?.[column.name];
    const at = folded.indexOf(plain(wanted));
    if (at >= 0 && constant !== undefined) {
      problems.push(constantNotUsed(file, record.line, column, headings[at] ?? "", constant));
    }
    if (at < 0 && constant === undefined) {
      if (column.required || mapped !== undefined) say(wanted, missing(column, wanted, headings));
      continue;
    }
    if (at >= 0 && folded.includes(folded[at] ?? "", at + 1)) {
      say(wanted, {
        code: "heading-twice",
        value: wanted,
        expected: "every heading once",
        remedy: "Rename or remove one of the two columns.",
      });
    }
    if (at >= 0 && used.has(at)) {
      say(wanted, {
        code: "heading-shared",
        value: wanted,
        expected: "one of our columns for a heading",
        remedy: "Correct the heading under `log: columns:` in plant.yaml.",
      });
    }
    if (at >= 0) used.add(at);
    columns.push({
      column,
      at,
      heading: at < 0 ? column.name : (headings[at] ?? ""),
      unit: unit ?? column.unit,
      convert: converter(column, unit, (fault) => say(wanted, fault)),
      constant: at < 0 ? (constant ?? "") : "",
    });
  }
  const unused = headings.filter((heading, at) => !used.has(at) && heading !== "");
  if (problems.some(({ severity }) => severity === "refused")) return { problems, unused };
  const least = headings.findLastIndex((heading) => heading !== "") + 1;
  return { layout: { file, columns, headings, least }, problems, unused };
}

/**
 * The exporter's heading of one of our columns.
 *
 * @param layout - where columns stand
 * @param name - our name
 * @returns the heading; our own name when the file has no such column
 */
export function headingOf(layout: Layout, name: string): string {
  return layout.columns.find(({ column }) => column.name === name)?.heading ?? name;
}

/**
 * Whether a row holds a heading for every required column.
 *
 * @param fields - fields of the row
 * @param dialect - how the log is written
 * @returns true when nothing is missing, constants counted
 */
export function holdsRequired(fields: readonly string[], dialect: LogDialect): boolean {
  const folded = new Set(fields.map(plain));
  return COLUMNS.every(({ name, required }) => {
    const mapped = dialect.columns?.[name];
    const wanted = typeof mapped === "object" ? mapped.heading : (mapped ?? name);
    return !required || dialect.constants?.[name] !== undefined || folded.has(plain(wanted));
  });
}

/** An apostrophe that keeps a spreadsheet from running the text behind it. */
const GUARD = /^'(?=[=+\-@\uff1d\uff0b\uff0d\uff20])/;

/** Text marked as text for spreadsheets: `="001"`. */
const MARKED = /^="((?:[^"]|"")*)"$/;

/**
 * The cell of a column, without what is written for spreadsheets alone: the apostrophe that guards them from
 * formulas, and the formula that guards text from them, as `="001"` for `001`. Neither changes what was
 * logged, so the row counts as accepted. Other text that looks like a formula stays text.
 *
 * @param record - the record
 * @param placed - the column
 * @returns the text, spaces around it apart; the constant where the record has none
 */
export function cellOf(record: CsvRecord, placed: PlacedColumn): string {
  const { at, constant } = placed;
  const cell = (at < 0 ? constant : (record.fields[at] ?? "")).trim();
  const first = cell.charCodeAt(0);
  return first === APOSTROPHE || first === EQUALS ? unguarded(cell) : cell;
}

const APOSTROPHE = 39;
const EQUALS = 61;

function unguarded(cell: string): string {
  const bare = cell.replace(GUARD, "");
  const marked = MARKED.exec(bare)?.[1];
  return marked === undefined ? bare : marked.replaceAll('""', '"').trim();
}

function plain(heading: string): string {
  return heading.trim().normalize("NFC").toLowerCase();
}

function constantNotUsed(
  file: string,
  line: number,
  column: Column,
  heading: string,
  constant: string,
): Problem {
  return {
    code: "constant-not-used",
    severity: "warning",
    ...{ file, line, column: heading, value: constant },
    expected: `${column.words} either in a column or as a constant`,
    remedy: `The column was used; take \`${column.name}\` out of \`constants:\` under \`log:\` in plant.yaml, or the column out of the log.`,
  };
}

function missing(column: Column, wanted: string, headings: readonly string[]): Parameters<Say>[1] {
  const near = nearest(plain(wanted), headings.map(plain));
  const question = near === undefined ? "" : `Is it the column "${near}"? `;
  return {
    code: "missing-column",
    value: headings.join(", "),
    expected: `a column ${wanted} (${column.words})`,
    remedy: `${question}Add it to the export, or map the heading under \`log: columns:\` in plant.yaml.`,
  };
}

function same(logged: number): number {
  return logged;
}

function converter(
  column: Column,
  unit: string | undefined,
  say: (fault: Parameters<Say>[1]) => void,
): PlacedColumn["convert"] {
  if (unit === undefined || unit === column.unit) return same;
  const refuse = (reason: string, remedy: string): typeof same => {
    say({
      code: "unknown-unit",
      value: unit,
      expected: `a unit of ${column.words}: ${reason}`,
      remedy,
    });
    return same;
  };
  if (column.unit === "°C") {
    const zero = temperatureToCelsius(0, unit);
    if (typeof zero !== "number") return refuse(zero.reason, zero.remedy);
    return (logged) => {
      const celsius = temperatureToCelsius(logged, unit);
      return typeof celsius === "number" ? celsius : NaN;
    };
  }
  if (column.target === undefined || column.unit === undefined) {
    return refuse("it has none", "Leave `unit` out for this column.");
  }
  const from = unitFactor(unit, column.target);
  const into = unitFactor(column.unit, column.target);
  if (typeof from !== "number") return refuse(from.reason, from.remedy);
  const factor = from / (typeof into === "number" ? into : 1);
  return (logged) => logged * factor;
}
