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
  const head = (/^\s*(.*)/.exec(text)?.[1] ?? "").replace(/"[^"]*"/g, "");
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
  const result: CsvRecord[] = [];
  const quoted: Quoted[] = [];
  let line = firstLine;
  let quote = text.indexOf('"', hint);
  for (let at = hint; at < text.length;) {
    let end = lineEnd(text, at);
    if (quote < 0 || quote > end) {
      // Without a quote a line is a record and its separators are its fields: nothing to parse.
      const fields = text.slice(at, end).split(separator);
      if (!fields.every(isSpace)) result.push({ fields, line });
      line += 1;
    } else {
      let inside = false;
      for (; quote >= 0 && (inside || quote < end); quote = text.indexOf('"', quote + 1)) {
        inside = !inside;
        if (quote > end) end = lineEnd(text, quote);
      }
      const plain = allQuoted(text.slice(at, end), separator);
      if (plain === undefined)
        quoted.push({ text: text.slice(at, end + 1), place: result.length, line });
      result.push({ fields: plain ?? [], line });
      line += 1 + lineBreaks(text.slice(at, end));
    }
    at = end + 1;
  }
  const parsed = parsedBy(quoted.map((record) => record.text).join(""), separator);
  if (!Array.isArray(parsed) || parsed.length !== quoted.length) {
    throw misquoted(text, hint, separator, firstLine, openQuote);
  }
  quoted.forEach(({ place, line: start }, i) => {
    result[place] = { fields: parsed[i] ?? [], line: start };
  });
  return result.filter(({ fields }) => !fields.every(isSpace));
}

/** A record that holds a quote, and where it belongs among the others. */
interface Quoted {
  readonly text: string;
  readonly place: number;
  readonly line: number;
}

// Many exporters quote every field; where no quote stands inside one, the fields lie between them.
function allQuoted(record: string, separator: string): string[] | undefined {
  if (!record.startsWith('"') || !record.endsWith('"') || record.length < 2) return undefined;
  const fields = record.slice(1, -1).split(`"${separator}"`);
  return fields.some((field) => field.includes('"')) ? undefined : fields;
}

function lineEnd(text: string, at: number): number {
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end;
}

function isSpace(field: string): boolean {
  return field.trim() === "";
}

function parsedBy(text: string, separator: string): string[][] | CsvError {
  try {
    return parse(text, {
      delimiter: separator,
      record_delimiter: "\n",
      relax_column_count: true,
      relax_quotes: false,
      skip_empty_lines: false,
    });
  } catch (error) {
    if (error instanceof CsvError) return error;
    throw error;
  }
}

// Parsed once more in full, for the line.
function misquoted(
  text: string,
  hint: number,
  separator: string,
  firstLine: number,
  openQuote: number,
): CsvFault {
  const error = parsedBy(text.slice(hint), separator);
  const lines = error instanceof CsvError ? Number(error["lines"] ?? 1) : 1;
  const before =
    error instanceof CsvError && error.code === "CSV_QUOTE_NOT_CLOSED" && openQuote >= 0
      ? lineBreaks(text.slice(0, openQuote))
      : lines - 1;
  return new CsvFault("log-quote", firstLine + Math.max(0, before));
}
