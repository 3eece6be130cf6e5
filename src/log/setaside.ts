/**
 * Rows set aside as CSV, with the reason, so that they can be mended and read again.
 */

import { sentence } from "../problems/sentence.js";
import type { AsideRow } from "./read-logs.js";

/** First characters that a spreadsheet takes for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * Writes the rows. Text that a spreadsheet would run as a formula gets an apostrophe in front; numbers are
 * left alone.
 *
 * @param rows - rows set aside
 * @returns CSV with a row of headings
 */
export function setAsideCsv(rows: readonly AsideRow[]): string {
  const headings = [
    ...new Set(rows.flatMap((row) => row.headings.map((heading) => heading.trim()))),
  ];
  const lines = [["file", "line", "reason", ...headings]];
  for (const row of rows) {
    const cells = new Map(row.headings.map((heading, i) => [heading.trim(), row.fields[i] ?? ""]));
    lines.push([
      row.file,
      String(row.line),
      row.problems.map(sentence).join(" | "),
      ...headings.map((heading) => cells.get(heading) ?? ""),
    ]);
  }
  return lines.map((line) => line.map(cell).join(",")).join("\r\n") + "\r\n";
}

function cell(text: string): string {
  const safe = FORMULA.test(text) && !/^[-+]?[\d.,]+$/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
