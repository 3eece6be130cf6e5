/**
 * One cell against its column: the value in the unit of a lot, or what is wrong with it.
 */

import { nearest } from "../factors/nearest.js";
import type { Severity } from "../problems/problem.js";
import { isLimit, readDay, readNumber } from "./cells.js";
import type { Column } from "./columns.js";
import type { LogDialect } from "./dialect.js";
import { readFibre } from "./fibre.js";
import type { PlacedColumn } from "./layout.js";
import { type FibreShare, LOT_KINDS } from "./lot.js";

/** What the plant file and the factors know. */
export interface LogRules {
  /** Routes of the plant file. */
  readonly routes: ReadonlySet<string>;
  /** Fibres of the factor set. */
  readonly fibres: ReadonlySet<string>;
  /** Sites of the plant file. */
  readonly sites: ReadonlySet<string>;
  /** Day after which no lot can have been printed, ISO 8601. */
  readonly today: string;
}

/** What is wrong with a cell, or was corrected. */
export interface CellFault {
  /** Stable code. */
  readonly code: string;
  /** What was expected. */
  readonly expected: string;
  /** What to do next. */
  readonly remedy: string;
  /** `corrected` leaves the value in place. */
  readonly severity: Severity;
}

/** Outcome of a cell. */
export interface CellVerdict {
  /** The value; absent when the row is set aside, or a reading is left out. */
  readonly value?: string | number | readonly FibreShare[];
  /** What is wrong, or was corrected. */
  readonly fault?: CellFault;
}

const ERROR = /^#(?:REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!|#+$)/;

const KINDS: ReadonlySet<string> = new Set(LOT_KINDS);

const DAYS = { ymd: "2026-01-31", dmy: "31.01.2026", mdy: "01/31/2026" } as const;

/**
 * Judges a cell that is not blank.
 *
 * @param cell - its text, spaces around it apart
 * @param placed - its column
 * @param dialect - how the log is written
 * @param rules - what is known
 * @returns its value, or what is wrong
 */
export function judgeCell(
  cell: string,
  placed: PlacedColumn,
  dialect: LogDialect,
  rules: LogRules,
): CellVerdict {
  const { kind } = placed.column;
  switch (kind) {
    case "text":
      return ERROR.test(cell) && placed.column.name !== "note"
        ? aside(
            "error-in-cell",
            `${placed.column.words}, not the error of a spreadsheet`,
            "Correct the formula in the export, or blank the cell.",
          )
        : { value: cell };
    case "number":
      return judgeNumber(cell, placed, dialect);
    case "date":
      return remembered(placed, cell, () => judgeDay(cell, dialect.dates ?? "ymd", rules.today));
    case "fibre":
      return remembered(placed, cell, () =>
        judgeFibre(mapped(dialect, "fibre", cell), rules.fibres),
      );
    case "route":
      return judgeWord(mapped(dialect, kind, cell), kind, rules.routes);
    case "site":
      return judgeWord(mapped(dialect, kind, cell), kind, rules.sites);
    case "kind":
      return judgeWord(mapped(dialect, kind, cell), kind, KINDS);
  }
}

/** Days and blends repeat from row to row; more different ones than this are judged anew. */
const REMEMBERED = 512;

const MEMORY = new WeakMap<PlacedColumn, Map<string, CellVerdict>>();

// A placed column belongs to one file and so to one dialect and one set of rules.
function remembered(placed: PlacedColumn, cell: string, judge: () => CellVerdict): CellVerdict {
  let verdicts = MEMORY.get(placed);
  if (verdicts === undefined) {
    verdicts = new Map();
    MEMORY.set(placed, verdicts);
  }
  let verdict = verdicts.get(cell);
  if (verdict === undefined) {
    verdict = judge();
    if (verdicts.size >= REMEMBERED) verdicts.clear();
    verdicts.set(cell, verdict);
  }
  return verdict;
}

function aside(code: string, expected: string, remedy: string): CellVerdict {
  return { fault: { code, expected, remedy, severity: "set-aside" } };
}

function mapped(
  dialect: LogDialect,
  kind: "fibre" | "route" | "site" | "kind",
  cell: string,
): string {
  const words = dialect.values?.[kind];
  return words !== undefined && Object.hasOwn(words, cell) ? (words[cell] ?? cell) : cell;
}

/** Said of a limit in place of a reading. */
export const LIMIT_NOT_USED: CellFault = {
  code: "limit-not-used",
  expected: "a measured number, not a limit",
  remedy: "The reading was left out; give the number when it was measured.",
  severity: "corrected",
};

function judgeNumber(cell: string, placed: PlacedColumn, dialect: LogDialect): CellVerdict {
  const { column, unit } = placed;
  if (column.reading === true && isLimit(cell)) return { fault: LIMIT_NOT_USED };
  const read = readNumber(cell, dialect, column.target, unit);
  if ("fault" in read) {
    return aside(
      "not-a-number",
      read.fault,
      "Correct the cell, or blank it when nothing was measured.",
    );
  }
  if (!("number" in read)) return {};
  const number = placed.convert(read.number);
  const wrong = rangeFault(column, number);
  if (wrong !== undefined)
    return aside(wrong.code, wrong.expected, "Correct the value or its unit.");
  const value = number * (column.scale ?? 1);
  if (read.corrected !== true) return { value };
  const expected = `a bare number in ${unit ?? ""}`;
  const remedy = "It was converted; put the unit into the heading.";
  return { value, fault: { code: "unit-in-cell", expected, remedy, severity: "corrected" } };
}

function judgeDay(cell: string, order: keyof typeof DAYS, today: string): CellVerdict {
  const day = readDay(cell, order);
  if (day === undefined) {
    return aside(
      "no-such-day",
      `a day written as ${order}, such as ${DAYS[order]}`,
      dayRemedy(cell),
    );
  }
  return day > today
    ? aside(
        "future-date",
        `a day not after ${today}`,
        "Correct the date, or give a later --as-of when the clock is behind.",
      )
    : { value: day };
}

function dayRemedy(cell: string): string {
  if (/^\d{5}(?:[.,]\d+)?$/.test(cell)) {
    return "This is a spreadsheet's count of days; show the column as a date and export it again.";
  }
  if (/^\d{1,2}([-./])\d{1,2}\1\d{2}$/.test(cell)) {
    return "Write the year with four digits.";
  }
  return "Correct the date, or name the order with `dates:` in plant.yaml.";
}

function judgeFibre(text: string, known: ReadonlySet<string>): CellVerdict {
  const read = readFibre(text, known);
  if ("unknown" in read) return unknownWord(read.unknown, "fibre", known);
  if ("sum" in read) {
    const sum = Math.round(read.sum * 10) / 10;
    return aside(
      "fibre-shares",
      `a share for each fibre, adding up to 100, not ${sum}`,
      "Write it as `cotton 60 polyester 40`.",
    );
  }
  if (!read.corrected) return { value: read.blend };
  const expected = "shares adding up to 100";
  const remedy = "They were scaled to 100.";
  return {
    value: read.blend,
    fault: { code: "fibre-shares-scaled", expected, remedy, severity: "corrected" },
  };
}

function judgeWord(
  word: string,
  kind: "route" | "site" | "kind",
  known: ReadonlySet<string>,
): CellVerdict {
  return known.has(word) ? { value: word } : unknownWord(word, kind, known);
}

function unknownWord(word: string, kind: string, known: ReadonlySet<string>): CellVerdict {
  const near = nearest(word, known);
  const question = near === undefined ? "" : `Is it ${near}? `;
  return aside(
    `unknown-${kind}`,
    `one of ${[...known].join(", ")}`,
    `${question}Correct the word, or map it with \`values: { ${kind}: … }\` in plant.yaml.`,
  );
}

function rangeFault(
  column: Column,
  value: number,
): { readonly code: string; readonly expected: string } | undefined {
  const [low, high] = column.range ?? [-Infinity, Infinity];
  const unit = column.unit === "1" ? "" : ` ${column.unit ?? ""}`;
  if (column.above === true && !(value > low)) {
    return {
      code: `${column.name.split("_")[0] ?? ""}-not-positive`,
      expected: `a ${column.words} above ${low}${unit}`,
    };
  }
  if (!(value >= low && value <= high)) {
    return { code: "out-of-range", expected: `${column.words} from ${low} to ${high}${unit}` };
  }
  if (column.step !== undefined && !Number.isInteger(value / column.step)) {
    return { code: "off-step", expected: `${column.words} in steps of ${column.step}` };
  }
  return undefined;
}
