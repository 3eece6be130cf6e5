/**
 * CSV as records with the line each starts on. The only place that knows the CSV library.
 */

import { CsvError, parse } from "csv-parse/browser/esm/sync";
import { CsvFault, decoded, lineBreaks } from "./decode.js";

export { CsvFault } from "./decode.js";

/** A record of a CSV file. */
export interface CsvRecord {
  /** Its fields as text; a line break inside one is `\n`. */
  readonly fields: readonly string[];
  /** Line it starts on, counted from 1. */
  readonly line: number;
}

/** Characters parsed in one go. */
const BATCH = 1 << 18;

/** A quoted text longer than this is a quote that was never closed. [characters] */
const LONGEST_QUOTED = 1 << 22;

/**
 * Cuts chunks of bytes into records. A first line `sep=;` names the separator when none is given.
 *
 * @param chunks - the file
 * @param encoding - name of its encoding
 * @param separator - separator, or undefined to find it from the first line
 * @yields batches of records
 * @returns batches of records, in order
 * @throws {@link CsvFault} for binary data, wrong encoding, or a quote that never closes
 */
export async function* csvRecords(
  chunks: AsyncIterable<Uint8Array>,
  encoding: string,
  separator: string | undefined,
): AsyncGenerator<readonly CsvRecord[]> {
  let rest = "";
  let line = 1;
  let sign = separator;
  let scan = START;
  for await (const piece of decoded(chunks, encoding)) {
    rest += piece;
    scan = scanned(rest, scan);
    if (scan.quote >= 0 && rest.length - scan.quote > LONGEST_QUOTED) {
      throw new CsvFault("log-quote", line + lineBreaks(rest.slice(0, scan.quote)));
    }
    if (rest.length < BATCH || scan.end === 0) continue;
    const whole = rest.slice(0, scan.end);
    sign ??= separatorOf(whole);
    yield records(whole, sign, line, -1);
    line += lineBreaks(whole);
    rest = rest.slice(scan.end);
    scan = scanned(rest, START);
  }
  if (rest !== "") yield records(rest, sign ?? separatorOf(rest), line, scan.quote);
}

/** How far a text was looked through for the ends of records. */
interface Scan {
  /** Place up to which it was looked through. */
  readonly at: number;
  /** Place behind the last line break that no quote holds. */
  readonly end: number;
  /** Place of the quote that is open; -1 when none is. */
  readonly quote: number;
}

const START: Scan = { at: 0, end: 0, quote: -1 };

// A doubled quote opens and closes at once, so it needs no case of its own.
function scanned(text: string, before: Scan): Scan {
  let { at, end, quote } = before;
  for (;;) {
    const next = text.indexOf('"', at);
    if (quote < 0) {
      const stop = next < 0 ? text.length : next;
      const lineEnd = stop === 0 ? -1 : text.lastIndexOf("\n", stop - 1);
      if (lineEnd >= at) end = lineEnd + 1;
    }
    if (next < 0) return { at: text.length, end, quote };
    quote = quote < 0 ? next : -1;
    at = next + 1;
  }
}

const HINT = /^sep=(.)\n/i;

function separatorOf(text: string): string {
  const hint = HINT.exec(text)?.[1];
  if (hint !== undefined) return hint;
  const head = /^\s*(.*)/.exec(text)?.[1] ?? "";
  const counts = [",", ";", "\t", "|"].map((mark) => ({ mark, n: head.split(mark).length }));
  return counts.reduce((a, b) => (b.n > a.n ? b : a)).mark;
}

function records(
  text: string,
  separator: string,
  firstLine: number,
  openQuote: number,
): readonly CsvRecord[] {
  // The hint keeps its line break, so that lines are still counted right.
  const hint = firstLine === 1 ? (HINT.exec(text)?.[0].length ?? 1) - 1 : 0;
  let parsed: string[][];
  try {
    parsed = parse(text.slice(hint), {
      delimiter: separator,
      record_delimiter: "\n",
      relax_column_count: true,
      relax_quotes: false,
      skip_empty_lines: false,
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const before =
      error.code === "CSV_QUOTE_NOT_CLOSED" && openQuote >= 0
        ? lineBreaks(text.slice(0, openQuote))
        : Number(error["lines"] ?? 1) - 1;
    throw new CsvFault("log-quote", firstLine + Math.max(0, before));
  }
  const result: CsvRecord[] = [];
  let line = firstLine;
  for (const fields of parsed) {
    const blank = fields.every((field) => field.trim() === "");
    if (!blank) result.push({ fields, line });
    line += 1;
    for (const field of fields) line += lineBreaks(field);
  }
  return result;
}
