/**
 * Rows set aside, kept until the log is read to its end.
 */

import { appendFileSync, closeSync, mkdtempSync, openSync, readSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { AsideRow } from "../log/reading.js";
import { setAsideLines, worded, type WordedRow } from "../log/setaside.js";

/** Text kept in memory before it goes to disk. [characters] */
const MOST_IN_MEMORY = 1 << 22;

/** A row as it is kept, with the place of its headings. */
type Kept = Omit<WordedRow, "headings"> & { readonly layout: number };

/**
 * A growing list of rows. The last of them are in memory and those before in a temporary file, which has no
 * name from the moment it is open, so that nothing stays behind however the tool ends.
 */
export class AsideRows {
  readonly #most: number;
  #count = 0;
  #layouts: (readonly string[])[] = [];
  #lines: string[] = [];
  #length = 0;
  #file: number | undefined;
  #blocks: number[] = [];

  /** @param most - text kept in memory [characters] */
  constructor(most = MOST_IN_MEMORY) {
    this.#most = most;
  }

  /**
   * Number of rows.
   *
   * @returns the count
   */
  get count(): number {
    return this.#count;
  }

  /**
   * Adds a row.
   *
   * @param row - the row
   */
  add(row: AsideRow): void {
    const { headings, ...rest } = worded(row);
    // Rows of a file come one behind the other and share their headings.
    if (this.#layouts.at(-1) !== headings) this.#layouts.push(headings);
    const kept: Kept = { ...rest, layout: this.#layouts.length - 1 };
    const line = JSON.stringify(kept);
    this.#lines.push(line);
    this.#length += line.length;
    this.#count += 1;
    if (this.#length > this.#most) this.#putAway();
  }

  /** Forgets all rows. */
  forget(): void {
    if (this.#file !== undefined) closeSync(this.#file);
    this.#file = undefined;
    this.#blocks = [];
    this.#layouts = [];
    this.#lines = [];
    this.#length = 0;
    this.#count = 0;
  }

  /**
   * The rows as CSV, to be mended and read again.
   *
   * @param separator - separator of the log they came from
   * @returns pieces of text
   */
  csv(separator: string): Iterable<string> {
    return setAsideLines(this.#rows(), this.#layouts, separator);
  }

  *#rows(): Generator<WordedRow> {
    let at = 0;
    for (const length of this.#blocks) {
      yield* this.#read(this.#fromDisk(at, length).split("\n"));
      at += length;
    }
    yield* this.#read(this.#lines);
  }

  *#read(lines: readonly string[]): Generator<WordedRow> {
    for (const line of lines) {
      const { layout, ...rest } = JSON.parse(line) as Kept;
      yield { ...rest, headings: this.#layouts[layout] ?? [] };
    }
  }

  #putAway(): void {
    this.#file ??= namelessFile();
    const block = Buffer.from(this.#lines.join("\n"));
    appendFileSync(this.#file, block);
    this.#blocks.push(block.length);
    this.#lines = [];
    this.#length = 0;
  }

  #fromDisk(at: number, length: number): string {
    const bytes = Buffer.alloc(length);
    for (let got = 0; got < length && this.#file !== undefined;) {
      const read = readSync(this.#file, bytes, got, length - got, at + got);
      if (read === 0) throw new Error("The temporary file of rows set aside was cut off.");
      got += read;
    }
    return bytes.toString("utf8");
  }
}

function namelessFile(): number {
  const folder = mkdtempSync(join(tmpdir(), "millrace-aside-"));
  try {
    return openSync(join(folder, "setaside"), "w+");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
