/**
 * Rows set aside as CSV, with the reason, so that they can be mended and read again.
 */

import { sentence } from "../problems/sentence.js";
import type { AsideRow } from "./read-logs.js";

/** First characters that a spreadsheet takes for a formula, in either width, spaces before them or not. */
const FORMULA = /^(?:[\t\r]|\s*[=+\-@\uff1d\uff0b\uff0d\uff20])/;

/** What looks like one and is none: numbers, and the stroke that stands for a blank. */
const HARMLESS = /^\s*[-+]?[\d.,\s]*$/;

/** Headings of what is said about a row; they do not collide with those of a log. */
const OURS = ["set-aside-file", "set-aside-line", "set-aside-reason"] as const;

/**
 * Writes the rows. Text that a spreadsheet would run as a formula gets an apostrophe in front, which is
 * taken off again when the file is read as a log; numbers are left alone. A row with too many or too few
 * fields stays so. UTF-8 with a byte order mark.
 *
 * @param rows - rows set aside
 * @param separator - separator of the log they came from
 * @returns CSV with a row of headings
 */
export function setAsideCsv(rows: readonly AsideRow[], separator = ","): string {
  const headings = [
    ...new Set(rows.flatMap((row) => row.headings.map((heading) => heading.trim()))),
  ].filter((heading) => heading !== "" && !OURS.some((own) => own === heading));
  const lines: string[][] = [[...OURS, ...headings]];
  for (const row of rows) {
    const cells = new Map(row.headings.map((heading, i) => [heading.trim(), row.fields[i] ?? ""]));
    const line = headings.map((heading) => cells.get(heading) ?? "");
    if (row.fields.length <= row.headings.findLastIndex((heading) => heading.trim() !== "")) {
      while (line.at(-1) === "") line.pop();
    }
    const surplus = row.fields.slice(row.headings.length);
    const reason = row.problems.map(sentence).join(" | ");
    lines.push([row.file, String(row.line), reason, ...line, ...surplus]);
  }
  const text = lines.map((line) => line.map((cell) => written(cell, separator)).join(separator));
  return `\ufeff${text.join("\r\n")}\r\n`;
}

function written(text: string, separator: string): string {
  const safe = FORMULA.test(text) && !HARMLESS.test(text) ? `'${text}` : text;
  return /["\r\n]/.test(safe) || safe.includes(separator)
    ? `"${safe.replaceAll('"', '""')}"`
    : safe;
}
