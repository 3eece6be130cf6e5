/**
 * CSV as records with the line each starts on. The only place that knows the CSV library.
 */

import { parse } from "csv-parse/browser/esm/sync";
import { CsvFault, decoded, lineBreaks } from "./decode.js";
import { lineEnd, quotedRecord, type Scan, scanned, START } from "./quotes.js";

export { CsvFault } from "./decode.js";

/** A record of a CSV file. */
export interface CsvRecord {
  /** Its fields as text; a line break inside one is `\n`. */
  readonly fields: readonly string[];
  /** Line it starts on, counted from 1. */
  readonly line: number;
  /** Fields with a quote where none may stand, read as they are written; absent when there is none. */
  readonly stray?: readonly string[];
  /** Whether one of them goes on behind its closing quote, so that where it ends is not certain. */
  readonly unclear?: boolean;
}

/** Characters parsed in one go. */
const BATCH = 1 << 18;

/** A quoted text longer than this is a quote that was never closed. [characters] */
const LONGEST_QUOTED = 1 << 22;

/** First heading of the file of rows set aside. */
const ASIDE = /^"?set-aside-file\b/;

/**
 * Cuts chunks of bytes into records. A first line `sep=;` names the separator when none is given.
 *
 * @param chunks - the file
 * @param encoding - name of its encoding
 * @param separator - separator, or undefined to find it from the line of headings
 * @param headings - line of the headings; what stands above is left out. A file of rows set aside has its
 * headings first whatever the log had.
 * @yields batches of records
 * @returns batches of records, in order
 * @throws {@link CsvFault} for binary data, wrong encoding, or a quote that never closes
 */
export async function* csvRecords(
  chunks: AsyncIterable<Uint8Array>,
  encoding: string,
  separator: string | undefined,
  headings = 1,
): AsyncGenerator<readonly CsvRecord[]> {
  let rest = "";
  let line = 0;
  let above = headings - 1;
  let sign = separator;
  let scan = START;
  for await (const piece of decoded(chunks, encoding)) {
    rest += piece;
    if (line === 0) {
      const hint = HINT.exec(rest);
      sign ??= hint?.[1];
      if (ASIDE.test(rest)) above = 0;
      // The hint keeps its line break, so that lines are still counted right.
      else if (hint !== null && above === 0) rest = rest.slice(hint[0].length - 1);
      line = 1;
    }
    for (; above > 0 && rest !== ""; above--, line++) rest = rest.slice(lineEnd(rest, 0) + 1);
    sign ??= separatorOf(rest);
    if (sign === undefined) continue;
    scan = scanned(rest, scan, sign);
    if (scan.quote >= 0 && rest.length - scan.quote > LONGEST_QUOTED) throw open(rest, scan, line);
    if (rest.length < BATCH || scan.end === 0) continue;
    const whole = rest.slice(0, scan.end);
    yield records(whole, sign, line);
    line += lineBreaks(whole);
    rest = rest.slice(scan.end);
    scan = scanned(rest, START, sign);
  }
  if (scan.quote >= 0) throw open(rest, scan, line);
  if (sign !== undefined && rest !== "") yield records(rest, sign, line);
}

function open(text: string, scan: Scan, line: number): CsvFault {
  return new CsvFault("log-quote", line + lineBreaks(text.slice(0, scan.quote)));
}

const HINT = /^sep=(.)\n/i;

// Unknown until a line comes that is not blank.
function separatorOf(text: string): string | undefined {
  const [, first] = /^\s*(\S.*)/.exec(text) ?? [];
  if (first === undefined) return undefined;
  const head = first.replace(/"[^"]*"/g, "");
  const counts = [",", ";", "\t", "|"].map((mark) => ({ mark, n: head.split(mark).length }));
  return counts.reduce((a, b) => (b.n > a.n ? b : a)).mark;
}

function records(text: string, separator: string, firstLine: number): readonly CsvRecord[] {
  const result: CsvRecord[] = [];
  const quoted: Quoted[] = [];
  let line = firstLine;
  let quote = text.indexOf('"');
  for (let at = 0; at < text.length;) {
    let end = lineEnd(text, at);
    if (quote < 0 || quote > end) {
      // Without a quote a line is a record and its separators are its fields: nothing to parse.
      const fields = text.slice(at, end).split(separator);
      if (!fields.every(isSpace)) result.push({ fields, line });
      line += 1;
    } else {
      const { stray, unclear, ...found } = quotedRecord(text, at, separator, line);
      ({ end } = found);
      const record = text.slice(at, end);
      const plain = allQuoted(record, separator);
      if (plain === undefined) quoted.push({ text: `${record}\n`, place: result.length });
      const fields = plain ?? [];
      result.push(stray.length > 0 ? { fields, line, stray, unclear } : { fields, line });
      line += 1 + lineBreaks(record);
      quote = text.indexOf('"', end);
    }
    at = end + 1;
  }
  const parsed = parsedBy(quoted.map((record) => record.text).join(""), separator);
  if (parsed.length !== quoted.length) throw new Error("CSV was cut into records in two ways.");
  quoted.forEach(({ place }, i) => {
    result[place] = { ...result[place]!, fields: parsed[i] ?? [] };
  });
  return result.filter(({ fields }) => !fields.every(isSpace));
}

/** A record that holds a quote, and where it belongs among the others. */
interface Quoted {
  readonly text: string;
  readonly place: number;
}

// Many exporters quote every field; where no quote stands inside one, the fields lie between them.
function allQuoted(record: string, separator: string): string[] | undefined {
  if (!record.startsWith('"') || !record.endsWith('"') || record.length < 2) return undefined;
  const fields = record.slice(1, -1).split(`"${separator}"`);
  return fields.some((field) => field.includes('"')) ? undefined : fields;
}

function isSpace(field: string): boolean {
  return field.trim() === "";
}

function parsedBy(text: string, separator: string): string[][] {
  return parse(text, {
    delimiter: separator,
    record_delimiter: "\n",
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
  });
}
