/**
 * CSV as records with the line each starts on. The only place that knows the CSV library.
 */

import { CsvError, parse } from "csv-parse/browser/esm/sync";

/** A record of a CSV file. */
export interface CsvRecord {
  /** Its fields as text. */
  readonly fields: readonly string[];
  /** Line it starts on, counted from 1. */
  readonly line: number;
}

/** Why a file cannot be read as CSV. */
export class CsvFault extends Error {
  /** Shown in front of the message. */
  override readonly name = "CsvFault";
  /** Line of the fault. */
  readonly line: number;
  /** Stable code. */
  readonly code: "log-quote" | "log-binary" | "log-encoding";

  /**
   * @param code - what is wrong
   * @param line - where
   */
  constructor(code: CsvFault["code"], line: number) {
    super(`${code} at line ${line}`);
    this.code = code;
    this.line = line;
  }
}

/** Characters parsed in one go. */
const BATCH = 1 << 18;

/**
 * Cuts chunks of bytes into records.
 *
 * @param chunks - the file
 * @param encoding - name of its encoding
 * @param separator - separator, or undefined to find it from the first line
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
  for await (const piece of decoded(chunks, encoding)) {
    rest += piece;
    if (rest.length < BATCH) continue;
    const cut = recordEnd(rest);
    if (cut === 0) continue;
    ({ sign, skip: rest } = opened(rest, sign, line));
    const end = recordEnd(rest);
    yield records(rest.slice(0, end), sign, line);
    line += newlines(rest.slice(0, end));
    rest = rest.slice(end);
  }
  if (rest !== "") {
    ({ sign, skip: rest } = opened(rest, sign, line));
    yield records(rest, sign, line);
  }
}

// On the first line: a `sep=` hint, and the separator found when none was given.
function opened(
  text: string,
  sign: string | undefined,
  line: number,
): { sign: string; skip: string } {
  if (line > 1) return { sign: sign ?? ",", skip: text };
  const hint = /^sep=(.)\r?\n/.exec(text);
  // The hint keeps its line break, so that lines are still counted right.
  const skip = hint === null ? text : text.slice(5);
  if (hint !== null)
    return { sign: sign ?? hint[1] ?? ",", skip: skip.startsWith("\n") ? skip : skip.slice(1) };
  const head = text.slice(0, text.search(/[\r\n]|$/));
  const counts = [",", ";", "\t", "|"].map((mark) => ({ mark, n: head.split(mark).length }));
  const best = counts.reduce((a, b) => (b.n > a.n ? b : a));
  return { sign: sign ?? best.mark, skip };
}

function records(text: string, separator: string, firstLine: number): readonly CsvRecord[] {
  let parsed: string[][];
  try {
    parsed = parse(text, {
      delimiter: separator,
      relax_column_count: true,
      relax_quotes: false,
      skip_empty_lines: false,
    });
  } catch (error) {
    if (error instanceof CsvError) {
      throw new CsvFault("log-quote", firstLine + Math.max(0, Number(error["lines"] ?? 1) - 1));
    }
    throw error;
  }
  const result: CsvRecord[] = [];
  let line = firstLine;
  for (const fields of parsed) {
    const blank = fields.every((field) => field.trim() === "");
    if (!blank) result.push({ fields, line });
    line += 1;
    for (const field of fields) line += newlines(field);
  }
  return result;
}

// Place after the last line break that no open quote holds.
function recordEnd(text: string): number {
  let end = text.lastIndexOf("\n") + 1;
  while (end > 0) {
    let quotes = 0;
    for (let at = text.indexOf('"'); at >= 0 && at < end; at = text.indexOf('"', at + 1)) quotes++;
    if (quotes % 2 === 0) return end;
    end = text.lastIndexOf("\n", end - 2) + 1;
  }
  return 0;
}

function newlines(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count++;
  return count;
}

async function* decoded(
  chunks: AsyncIterable<Uint8Array>,
  encoding: string,
): AsyncGenerator<string> {
  const decoder = new TextDecoder(encoding, { fatal: true });
  const wide = encoding.toLowerCase().startsWith("utf-16");
  let line = 1;
  for await (const chunk of chunks) {
    if (!wide && chunk.includes(0)) throw new CsvFault("log-binary", line);
    let text: string;
    try {
      text = decoder.decode(chunk, { stream: true });
    } catch {
      throw new CsvFault("log-encoding", line + linesBeforeFault(chunk, encoding));
    }
    line += newlines(text);
    yield text;
  }
  try {
    yield decoder.decode();
  } catch {
    throw new CsvFault("log-encoding", line);
  }
}

// The decoder does not say where it stopped, so lines are tried one by one.
function linesBeforeFault(chunk: Uint8Array, encoding: string): number {
  let start = 0;
  for (let line = 0; ; line++) {
    const end = chunk.indexOf(10, start);
    try {
      new TextDecoder(encoding, { fatal: true }).decode(
        chunk.subarray(start, end < 0 ? undefined : end),
      );
    } catch {
      return line;
    }
    if (end < 0) return line;
    start = end + 1;
  }
}
