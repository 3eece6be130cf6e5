/**
 * One record of the log against the columns: a lot, or everything that is wrong with it.
 */

import type { Problem } from "../problems/problem.js";
import { isBlank } from "./cells.js";
import type { CsvRecord } from "./csv.js";
import type { LogDialect } from "./dialect.js";
import { type CellFault, judgeCell, type LogRules } from "./judge-cell.js";
import { cellOf, headingOf, type Layout } from "./layout.js";
import type { FibreShare, Lot } from "./lot.js";
import { type CellValues, lotOfCells, numberIn, textIn } from "./lot-of-cells.js";

/** Verdict on a record. */
export interface Verdict {
  /** The lot; absent when the row is set aside. */
  readonly lot?: Lot;
  /** Its day, when the row is set aside for other faults and its cells can be told apart; ISO 8601. */
  readonly day?: string;
  /** What is wrong, or was corrected. */
  readonly problems: readonly Problem[];
}

/** A fault in a row: where, what was read, and the rest. */
type RowFault = Omit<CellFault, "severity"> &
  Partial<Pick<CellFault, "severity">> & { readonly column: string; readonly value: string };

/**
 * Judges a record.
 *
 * @param record - the record
 * @param layout - where columns stand
 * @param dialect - how the log is written
 * @param rules - what is known
 * @returns a lot with what was corrected, or what is wrong
 */
export function judgeRow(
  record: CsvRecord,
  layout: Layout,
  dialect: LogDialect,
  rules: LogRules,
): Verdict {
  const { file } = layout;
  const { line } = record;
  const problems: Problem[] = [];
  const say = (fault: RowFault): void => {
    problems.push({ severity: "set-aside", ...fault, file, line });
  };
  const shape =
    totals(record, layout) ?? unclearQuotes(record, layout) ?? wrongWidth(record, layout);
  if (shape !== undefined) {
    say(shape);
    return { problems };
  }
  for (const fault of strayQuotes(record, layout)) say(fault);
  const values: Record<string, string | number | undefined> = {};
  const faulty = new Set<string>();
  let blend: readonly FibreShare[] = [];
  for (const placed of layout.columns) {
    const { column, heading } = placed;
    const cell = cellOf(record, placed);
    if (isBlank(cell)) {
      if (column.required) say(missing(column.name, heading, cell, column.words));
      continue;
    }
    const { value, fault } = judgeCell(cell, placed, dialect, rules);
    if (fault !== undefined) say({ column: heading, value: cell, ...fault });
    if (value === undefined) faulty.add(column.name);
    else if (typeof value === "object") blend = value;
    else values[column.name] = value;
  }
  const disagreement = rejectedAboveLength(record, layout, values) ?? ownReprint(layout, values);
  if (disagreement !== undefined) say(disagreement);
  const only = rules.sites.size === 1 ? ([...rules.sites][0] ?? "") : "";
  const site = textIn(values, "site") || only;
  if (site === "" && !faulty.has("site")) {
    say({
      ...missing("site", headingOf(layout, "site"), "", `one of ${[...rules.sites].join(", ")}`),
      remedy: "Name the site: the plant file has several.",
    });
  }
  if (problems.some((problem) => problem.severity === "set-aside")) {
    const day = textIn(values, "date");
    return day === "" ? { problems } : { day, problems };
  }
  return { lot: lotOfCells(values, blend, site, { file, line }), problems };
}

const TOTALS = /^(grand total|totals?|sum|summe|gesamt|toplam|totale|somme|Σ)(?![\p{L}\d])/iu;

// A lot may be called sum-4; a row of totals is told from it by having no day. The word stands first in
// the row, or first among the columns in use.
function totals({ fields, line }: CsvRecord, layout: Layout): RowFault | undefined {
  const filled = (at: number): boolean => (fields[at] ?? "").trim() !== "";
  const places = layout.columns.map((placed) => placed.at).filter(filled);
  const at = [fields.findIndex((_, i) => filled(i)), Math.min(...places)].find((place) =>
    TOTALS.test(fields[place]?.trim() ?? ""),
  );
  if (at === undefined) return undefined;
  const first = fields[at]?.trim() ?? "";
  const day = layout.columns.find(({ column }) => column.name === "date");
  if (day !== undefined && day.at >= 0 && !isBlank(cellOf({ fields, line }, day))) return undefined;
  return {
    column: layout.headings[at] ?? "",
    value: first,
    code: "row-of-totals",
    expected: "one lot a row",
    remedy: "Leave rows of totals out of the export; nothing was counted twice.",
  };
}

function unclearQuotes(
  { fields, stray, unclear }: CsvRecord,
  layout: Layout,
): RowFault | undefined {
  if (unclear !== true) return undefined;
  const value = stray?.find((cell) => cell.startsWith('"')) ?? "";
  return {
    column: layout.headings[fields.indexOf(value)] ?? "",
    value,
    code: "quote-unclear",
    expected: "nothing behind the closing quote of a cell",
    remedy: "Double every quote inside the text, or leave out the quotes around it.",
  };
}

function strayQuotes({ fields, stray = [] }: CsvRecord, layout: Layout): readonly RowFault[] {
  return stray.flatMap((value) => {
    const placed = layout.columns.find(({ at }) => at >= 0 && fields[at] === value);
    return placed === undefined
      ? []
      : {
          column: placed.heading,
          value,
          code: "quote-inside",
          severity: "corrected",
          expected: "quotes around a text that holds one, and the one inside doubled",
          remedy: "The cell was read as it stands.",
        };
  });
}

// Separators behind the last heading are an exporter's habit when the row of headings has them too. A row
// longer than that is read one column off: "1,5" without quotes is two fields.
function wrongWidth({ fields }: CsvRecord, layout: Layout): RowFault | undefined {
  const { headings, least } = layout;
  if (fields.length === headings.length) return undefined;
  const surplus = fields.length > headings.length;
  if (fields.length >= least && !surplus) return undefined;
  return {
    column: headings[surplus ? least - 1 : fields.length] ?? "",
    value: String(fields.length),
    code: "row-width",
    expected: `${least} fields`,
    remedy: "Look for a separator inside a text without quotes, or a line that is cut off.",
  };
}

function missing(name: string, column: string, value: string, expected: string): RowFault {
  return {
    column,
    value,
    code: `missing-${name.replaceAll("_", "-")}`,
    expected,
    remedy: "Fill the cell or leave the row out.",
  };
}

function rejectedAboveLength(
  record: CsvRecord,
  layout: Layout,
  values: CellValues,
): RowFault | undefined {
  const length = numberIn(values, "length_m");
  const rejected = numberIn(values, "rejected_m");
  if (length === undefined || rejected === undefined || rejected <= length) return undefined;
  const placed = layout.columns.find(({ column }) => column.name === "rejected_m");
  return {
    column: headingOf(layout, "rejected_m"),
    value: placed === undefined ? String(rejected) : cellOf(record, placed),
    code: "rejected-above-length",
    expected: `at most the length, ${length} m`,
    remedy: "Correct one of the two.",
  };
}

function ownReprint(layout: Layout, values: CellValues): RowFault | undefined {
  const lot = textIn(values, "lot");
  if (lot === "" || textIn(values, "reprint_of") !== lot) return undefined;
  return {
    column: headingOf(layout, "reprint_of"),
    value: lot,
    code: "reprint-of-itself",
    expected: "another lot, which this one replaces",
    remedy: "Name the lot that was rejected, or blank the cell.",
  };
}
