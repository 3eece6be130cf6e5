/**
 * Where quotes of a CSV text open and close, and so where its records end. A quote opens a cell only as its
 * first sign; anywhere else it is a sign like any other, as in `12" roll`.
 *
 * @see RFC 4180, rules 5 to 7
 */

import { CsvFault, lineBreaks } from "./decode.js";

/** How far a text was looked through for the ends of records. */
export interface Scan {
  /** Place up to which it was looked through. */
  readonly at: number;
  /** Place behind the last line break that no quote holds. */
  readonly end: number;
  /** Place of the quote that is open; -1 when none is. */
  readonly quote: number;
}

/** Where looking begins. */
export const START: Scan = { at: 0, end: 0, quote: -1 };

/**
 * Looks further through a text that ends behind a line break or grows no more.
 *
 * @param text - the text
 * @param before - how far it was looked through when it was shorter
 * @param separator - sign between cells
 * @returns how far it is looked through now
 */
export function scanned(text: string, before: Scan, separator: string): Scan {
  let { at, end, quote } = before;
  for (;;) {
    if (quote >= 0) {
      const close = closing(text, at);
      if (close < 0) return { at: text.length, end, quote };
      quote = -1;
      at = close + 1;
    }
    const next = text.indexOf('"', at);
    const stop = next < 0 ? text.length : next;
    const lineEnd = stop === 0 ? -1 : text.lastIndexOf("\n", stop - 1);
    if (lineEnd >= at) end = lineEnd + 1;
    if (next < 0) return { at: text.length, end, quote };
    if (opens(text, next, separator)) quote = next;
    at = next + 1;
  }
}

/** A record with quotes. */
export interface QuotedRecord {
  /** Place of the line break that ends it, or of the end of the text. */
  readonly end: number;
  /** Cells that hold a quote they may not hold, as they stand. */
  readonly stray: readonly string[];
  /** Whether one of them goes on behind its closing quote, so that its end is not certain. */
  readonly unclear: boolean;
}

/**
 * Finds the end of a record with quotes.
 *
 * @param text - text of whole records
 * @param start - place where the record starts
 * @param separator - sign between cells
 * @param line - line on which it starts
 * @returns the end, and quotes that stand where none may
 * @throws {@link CsvFault} for a quote that never closes, or closes on a later line with text behind it: then
 * one was forgotten in between
 */
export function quotedRecord(
  text: string,
  start: number,
  separator: string,
  line: number,
): QuotedRecord {
  let end = lineEnd(text, start);
  const stray: string[] = [];
  let unclear = false;
  for (let quote = text.indexOf('"', start); quote >= 0 && quote < end;) {
    let behind = quote + 1;
    if (opens(text, quote, separator)) {
      const close = closing(text, quote + 1);
      const runsOn = close >= 0 && !ends(text, close + 1, separator);
      if (close < 0 || (runsOn && text.slice(quote, close).includes("\n"))) {
        throw new CsvFault("log-quote", line + lineBreaks(text.slice(start, quote)));
      }
      if (close > end) end = lineEnd(text, close);
      behind = close + 1;
      if (runsOn) {
        unclear = true;
        behind = cellEnd(text, close, separator, end);
        stray.push(text.slice(quote, behind));
      }
    } else {
      const from = start + text.slice(start, quote).lastIndexOf(separator) + 1;
      behind = cellEnd(text, quote, separator, end);
      const cell = text.slice(from, behind);
      if (!GUARDED.test(cell)) stray.push(cell);
    }
    quote = text.indexOf('"', behind);
  }
  return { end, stray, unclear };
}

/** Text marked as text for spreadsheets, as in `="001"`. */
const GUARDED = /^\s*="[^"]*"\s*$/;

/**
 * Place of the next line break.
 *
 * @param text - the text
 * @param at - where to look from
 * @returns the place, or the end of the text
 */
export function lineEnd(text: string, at: number): number {
  const end = text.indexOf("\n", at);
  return end < 0 ? text.length : end;
}

function opens(text: string, quote: number, separator: string): boolean {
  const before = text[quote - 1];
  return quote === 0 || before === "\n" || before === separator;
}

// A doubled quote is a sign of the text.
function closing(text: string, at: number): number {
  for (let quote = text.indexOf('"', at); quote >= 0; quote = text.indexOf('"', quote + 2)) {
    if (text[quote + 1] !== '"') return quote;
  }
  return -1;
}

function ends(text: string, at: number, separator: string): boolean {
  return at >= text.length || text[at] === "\n" || text[at] === separator;
}

function cellEnd(text: string, at: number, separator: string, end: number): number {
  const next = text.slice(at, end).indexOf(separator);
  return next < 0 ? end : at + next;
}
