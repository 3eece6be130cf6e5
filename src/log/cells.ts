/**
 * Cells as numbers and days. Nothing is guessed: a blank is never zero, an unclear sign is refused.
 */

import { unitFactor } from "../units/convert.js";
import type { Target } from "../units/unit-table.js";
import type { LogDialect } from "./dialect.js";

/** Words for "not measured"; they read as blank. */
const NOT_MEASURED = new Set(["", "-", "–", "n/a", "na", "n.a.", "n.d.", "nd", "null", "none"]);

/** No word for "not measured" is longer. [characters] */
const LONGEST_BLANK = 4;

/** What became of a cell. */
export type CellReading =
  | { readonly number: number; readonly corrected?: boolean }
  | { readonly blank: true }
  | { readonly fault: string };

/**
 * Whether a cell says that nothing was measured.
 *
 * @param cell - the cell, trimmed
 * @returns true for blanks and the words for them
 */
export function isBlank(cell: string): boolean {
  return cell === "" || (cell.length <= LONGEST_BLANK && NOT_MEASURED.has(cell.toLowerCase()));
}

/**
 * Reads a number by the signs of the dialect.
 *
 * @param cell - the cell, trimmed
 * @param dialect - decimal and thousands signs
 * @param target - unit the column is kept in, to convert a unit written in the cell
 * @param unit - unit the column is logged in
 * @returns the number in the column's logged unit, blank, or what is wrong
 */
export function readNumber(
  cell: string,
  dialect: LogDialect,
  target: Target | undefined,
  unit: string | undefined,
): CellReading {
  if (isBlank(cell)) return { blank: true };
  const decimal = dialect.decimal ?? ".";
  const pattern = decimal === "." ? PLAIN_POINT : PLAIN_COMMA;
  const bare = dialect.thousands === undefined ? cell : ungrouped(cell, dialect.thousands);
  if (pattern.test(bare)) return { number: Number(bare.replace(",", ".")) };
  if (isLimit(cell)) return { fault: "a measured number, not a limit" };
  if (cell.startsWith("#")) return { fault: "a number, not the error of a spreadsheet" };
  const [, digits = "", written = ""] = /^([-+]?[\d.,]+)\s*([^\d\s.,].*)$/.exec(bare) ?? [];
  if (unit === undefined || !pattern.test(digits)) {
    return { fault: `a number with decimal sign "${decimal}"` };
  }
  const ratio = ratioOf(written, unit, target);
  return ratio === undefined
    ? { fault: target === undefined ? "a bare number" : `a number in ${unit}` }
    : { number: Number(digits.replace(",", ".")) * ratio, corrected: true };
}

/**
 * Whether a cell gives a limit in place of a number: `<10`, `>= 5`.
 *
 * @param cell - the cell, trimmed
 * @returns true when it does
 */
export function isLimit(cell: string): boolean {
  return LIMIT.test(cell);
}

const LIMIT = /^(?:[<>]=?|[≤≥])\s*[.,]?\d/;

const PLAIN_POINT = /^[-+]?(\d+(\.\d*)?|\.\d+)$/;
const PLAIN_COMMA = /^[-+]?(\d+(,\d*)?|,\d+)$/;

// Equal units give exactly 1, so that a number is not touched in its last bit.
function ratioOf(written: string, unit: string, target: Target | undefined): number | undefined {
  if (written.toLowerCase() === unit.toLowerCase()) return 1;
  if (target === undefined) return undefined;
  const from = unitFactor(written, target);
  const into = unitFactor(unit, target);
  return typeof from === "number" && typeof into === "number" ? from / into : undefined;
}

const THOUSANDS: Readonly<Record<string, string>> = {
  " ": "[ \u00a0\u2009\u202f]",
  "'": "['\u2019]",
  ".": "\\.",
  ",": ",",
};

// Groups of three, or of two before the last three as in India, so that a decimal sign is never taken for
// a thousands sign.
function ungrouped(cell: string, sign: string): string {
  const mark = THOUSANDS[sign] ?? sign;
  const grouped = new RegExp(
    `^[-+]?(?:\\d{1,3}(?:${mark}\\d{3})+|\\d{1,2}(?:${mark}\\d{2})+${mark}\\d{3})(?!${mark}?\\d)`,
  );
  return cell.replace(grouped, (number) => number.replace(new RegExp(mark, "g"), ""));
}

const ORDERS = { ymd: [0, 1, 2], dmy: [2, 1, 0], mdy: [2, 0, 1] } as const;

/**
 * Reads a day.
 *
 * @param cell - the cell, trimmed
 * @param order - order of year, month and day
 * @returns ISO 8601, or undefined when there is no such day
 */
export function readDay(cell: string, order: "ymd" | "dmy" | "mdy"): string | undefined {
  const parts = /^(\d{1,4})[-./](\d{1,2})[-./](\d{1,4})(?:[T ].*)?$/.exec(cell)?.slice(1, 4);
  if (parts === undefined) return undefined;
  const [y, m, d] = ORDERS[order].map((at) => parts[at] ?? "");
  if (y?.length !== 4) return undefined;
  const year = Number(y);
  const month = Number(m);
  const day = Number(d);
  const date = new Date(Date.UTC(year, month - 1, day));
  const real =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return real ? date.toISOString().slice(0, 10) : undefined;
}
