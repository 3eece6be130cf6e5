/**
 * What reading takes and hands on.
 */

import type { Problem } from "../problems/problem.js";
import type { Lot } from "./lot.js";

/** A log. */
export interface LogFile {
  /** Name to show. */
  readonly name: string;
  /** Opens it anew; it may be read twice. */
  readonly open: () => AsyncIterable<Uint8Array>;
}

/** A row that was set aside. */
export interface AsideRow {
  /** File. */
  readonly file: string;
  /** Line. */
  readonly line: number;
  /** Headings of the file. */
  readonly headings: readonly string[];
  /** Fields as read. */
  readonly fields: readonly string[];
  /** Why. */
  readonly problems: readonly Problem[];
}

/** Where lots and rows set aside go. */
export interface LogSink {
  /** Takes a lot. */
  readonly lot: (lot: Lot) => void;
  /** Takes a row that was set aside. */
  readonly aside: (row: AsideRow) => void;
  /** Told to forget everything: reading starts again. */
  readonly restart: () => void;
}

/** What to read. */
export interface LogOptions {
  /** First day of the period, ISO 8601. */
  readonly from?: string | undefined;
  /** Last day of the period, ISO 8601. */
  readonly to?: string | undefined;
}
