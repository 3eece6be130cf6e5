/**
 * Rows set aside as CSV, with the reason, so that they can be mended and read again.
 */

import { sentence } from "../problems/sentence.js";
import type { AsideRow } from "./reading.js";

/** First characters that a spreadsheet takes for a formula, in either width, spaces before them or not. */
const FORMULA = /^(?:[\t\r]|\s*[=+\-@\uff1d\uff0b\uff0d\uff20])/;

/** What looks like one and is none: numbers, and the stroke that stands for a blank. */
const HARMLESS = /^\s*[-+]?[\d.,\s]*$/;

/** Headings of what is said about a row; they do not collide with those of a log. */
const OURS = ["set-aside-file", "set-aside-line", "set-aside-reason"] as const;

/** A row set aside, its reasons put into words. */
export interface WordedRow {
  /** File. */
  readonly file: string;
  /** Line. */
  readonly line: number;
  /** Headings of the file. */
  readonly headings: readonly string[];
  /** Fields as read. */
  readonly fields: readonly string[];
  /** Why. */
  readonly reason: string;
}

/**
 * Puts the reasons of a row into words.
 *
 * @param row - row set aside
 * @returns the row with one text of all its reasons
 */
export function worded(row: AsideRow): WordedRow {
  const { problems, ...rest } = row;
  return { ...rest, reason: problems.map(sentence).join(" | ") };
}

/**
 * Writes the rows. Text that a spreadsheet would run as a formula gets an apostrophe in front, which is
 * taken off again when the file is read as a log; numbers are left alone. A row with too many or too few
 * fields stays so. UTF-8 with a byte order mark.
 *
 * @param rows - rows set aside
 * @param layouts - headings of all their files
 * @param separator - separator of the log they came from
 * @yields lines of CSV, a row of headings first
 * @returns lines of CSV, a row of headings first
 */
export function* setAsideLines(
  rows: Iterable<WordedRow>,
  layouts: readonly (readonly string[])[],
  separator: string,
): Generator<string> {
  const headings = [...new Set(layouts.flat().map((heading) => heading.trim()))].filter(
    (heading) => heading !== "" && !OURS.some((own) => own === heading),
  );
  const text = (cells: readonly string[]): string =>
    `${cells.map((cell) => written(cell, separator)).join(separator)}\r\n`;
  yield `\ufeff${text([...OURS, ...headings])}`;
  for (const row of rows) {
    const cells = new Map(row.headings.map((heading, i) => [heading.trim(), row.fields[i] ?? ""]));
    const line = headings.map((heading) => cells.get(heading) ?? "");
    if (row.fields.length <= row.headings.findLastIndex((heading) => heading.trim() !== "")) {
      while (line.at(-1) === "") line.pop();
    }
    const surplus = row.fields.slice(row.headings.length);
    yield text([row.file, String(row.line), row.reason, ...line, ...surplus]);
  }
}

function written(text: string, separator: string): string {
  const safe = FORMULA.test(text) && !HARMLESS.test(text) ? `'${text}` : text;
  return /["\r\n]/.test(safe) || safe.includes(separator)
    ? `"${safe.replaceAll('"', '""')}"`
    : safe;
}
