/**
 * Counts of what was read, file by file.
 */

import type { Problem, Severity } from "../problems/problem.js";
import type { PlacedColumn } from "./layout.js";

/** What becomes of a row. */
export type RowFate = "accepted" | "corrected" | "setAside" | "outside";

/** Counts of one file. */
export interface FileCounts {
  /** Name. */
  readonly name: string;
  /** Bytes. */
  readonly bytes: number;
  /** SHA-256. */
  readonly sha256: string;
  /** Rows read, headings apart. */
  readonly rows: number;
  /** Rows taken as they stand. */
  readonly accepted: number;
  /** Rows taken in a stated other way, or merged with an equal one. */
  readonly corrected: number;
  /** Rows kept out. */
  readonly setAside: number;
  /** Rows outside the period asked for, whatever else is wrong with them. */
  readonly outside: number;
  /** Headings mapped to nothing. */
  readonly unused: readonly string[];
  /** How often each problem was met in this file, by code. */
  readonly reasons: Readonly<Record<string, ProblemCount>>;
  /** Filled cells of this file by column, over the rows taken. */
  readonly filled: Readonly<Record<string, number>>;
}

/** How often a problem was met. */
export interface ProblemCount {
  /** How far it reaches. */
  readonly severity: Severity;
  /** Times it was met. */
  readonly count: number;
}

/** Outcome of reading. */
export interface LogAccount {
  /** By file. */
  readonly files: readonly FileCounts[];
  /** Problems, at most `PROBLEMS_KEPT`; refusals first. */
  readonly problems: readonly Problem[];
  /** How often each problem was met, by code. */
  readonly counts: ReadonlyMap<string, ProblemCount>;
  /** Filled cells by column, over the rows taken. */
  readonly filled: ReadonlyMap<string, number>;
  /** Whether reading was refused. */
  readonly refused: boolean;
}

/** Growing counts of one file. */
export class FileTally {
  readonly #fates = { accepted: 0, corrected: 0, setAside: 0, outside: 0 };
  readonly #reasons = new Map<string, { readonly severity: Severity; count: number }>();
  readonly #filled = new Map<string, number>();

  /**
   * Rows counted so far.
   *
   * @returns their number
   */
  get rows(): number {
    const { accepted, corrected, setAside, outside } = this.#fates;
    return accepted + corrected + setAside + outside;
  }

  /**
   * Counts a row.
   *
   * @param fate - what became of it
   */
  row(fate: RowFate): void {
    this.#fates[fate] += 1;
  }

  /**
   * Counts problems.
   *
   * @param problems - problems met
   */
  note(problems: readonly Problem[]): void {
    for (const { code, severity } of problems) {
      const found = this.#reasons.get(code);
      if (found === undefined) this.#reasons.set(code, { severity, count: 1 });
      else found.count += 1;
    }
  }

  /**
   * Counts the filled cells of a row that was taken.
   *
   * @param filled - columns filled
   */
  fill(filled: readonly PlacedColumn[]): void {
    for (const { column } of filled) {
      this.#filled.set(column.name, (this.#filled.get(column.name) ?? 0) + 1);
    }
  }

  /**
   * The counts.
   *
   * @param file - what is known of the file itself
   * @returns counts of the file
   */
  counts(file: Pick<FileCounts, "name" | "bytes" | "sha256" | "unused">): FileCounts {
    return {
      ...file,
      rows: this.rows,
      ...this.#fates,
      reasons: Object.fromEntries(this.#reasons),
      filled: Object.fromEntries(this.#filled),
    };
  }
}

/**
 * Adds the filled cells of files.
 *
 * @param files - counts by file
 * @returns filled cells by column
 */
export function filledIn(files: readonly FileCounts[]): ReadonlyMap<string, number> {
  const all = new Map<string, number>();
  for (const { filled } of files) {
    for (const [column, count] of Object.entries(filled)) {
      all.set(column, (all.get(column) ?? 0) + count);
    }
  }
  return all;
}
