/**
 * Reads logs lot by lot. Every row is accepted, corrected, set aside or outside the period, and the four add
 * up to the rows read.
 */

import { Digest, hash64 } from "../numbers/digest.js";
import type { Problem } from "../problems/problem.js";
import { isBlank } from "./cells.js";
import { COLUMNS } from "./columns.js";
import { CsvFault, type CsvRecord, csvRecords } from "./csv.js";
import type { LogDialect } from "./dialect.js";
import { emptyFile, fileTwice, unreadable } from "./file-faults.js";
import type { LogRules } from "./judge-cell.js";
import { judgeRow } from "./judge-row.js";
import { cellOf, headingOf, type Layout, layOut, type PlacedColumn } from "./layout.js";
import { LotTable } from "./lot-table.js";
import type { Lot } from "./lot.js";
import { ProblemTally } from "./problem-tally.js";

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
  /** Rows outside the period asked for. */
  readonly outside: number;
  /** Headings mapped to nothing. */
  readonly unused: readonly string[];
}

/** Outcome of reading. */
export interface LogAccount {
  /** By file. */
  readonly files: readonly FileCounts[];
  /** Problems, at most `PROBLEMS_KEPT`; refusals first. */
  readonly problems: readonly Problem[];
  /** How often each problem was met, by severity and code. */
  readonly counts: ReadonlyMap<
    string,
    { readonly severity: Problem["severity"]; readonly count: number }
  >;
  /** Filled cells by column, over the rows taken. */
  readonly filled: ReadonlyMap<string, number>;
  /** Whether reading was refused. */
  readonly refused: boolean;
}

/**
 * Reads all logs.
 *
 * @param files - the logs
 * @param dialect - how they are written
 * @param rules - what is known
 * @param sink - where lots go
 * @param options - period
 * @returns counts and problems
 */
export async function readLogs(
  files: readonly LogFile[],
  dialect: LogDialect,
  rules: LogRules,
  sink: LogSink,
  options: LogOptions = {},
): Promise<LogAccount> {
  const first = new Pass(dialect, rules, sink, options, new Set());
  for (const file of files) await first.read(file);
  if (first.conflicts.size === 0 || first.refused) return first.account();
  // A lot with two contents shows only when its first row has been handed on: begin again without it.
  sink.restart();
  const second = new Pass(dialect, rules, sink, options, first.conflicts);
  for (const file of files) await second.read(file);
  return second.account();
}

class Pass {
  readonly conflicts = new Set<string>();
  readonly #dialect: LogDialect;
  readonly #rules: LogRules;
  readonly #sink: LogSink;
  readonly #options: LogOptions;
  readonly #barred: ReadonlySet<string>;
  readonly #table = new LotTable();
  readonly #files: FileCounts[] = [];
  readonly #digests = new Set<string>();
  readonly #problems = new ProblemTally();
  readonly #filled = new Map<string, number>();

  constructor(
    dialect: LogDialect,
    rules: LogRules,
    sink: LogSink,
    options: LogOptions,
    barred: ReadonlySet<string>,
  ) {
    this.#dialect = dialect;
    this.#rules = rules;
    this.#sink = sink;
    this.#options = options;
    this.#barred = barred;
  }

  get refused(): boolean {
    return this.#problems.refused;
  }

  async read(file: LogFile): Promise<void> {
    const digest = new Digest();
    let bytes = 0;
    async function* watched(): AsyncGenerator<Uint8Array> {
      for await (const chunk of file.open()) {
        digest.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    }
    const counts = { rows: 0, accepted: 0, corrected: 0, setAside: 0, outside: 0 };
    const { separator: mark, encoding = "utf-8" } = this.#dialect;
    const separator = mark === "tab" ? "\t" : mark;
    let laid: ReturnType<typeof layOut> | undefined;
    try {
      for await (const batch of csvRecords(watched(), encoding, separator)) {
        for (const record of batch) {
          if (laid === undefined) {
            laid = layOut(file.name, record, this.#dialect);
            this.#problems.note(laid.problems);
          } else if (laid.layout !== undefined) {
            counts.rows += 1;
            counts[this.#row(record, laid.layout)] += 1;
          }
        }
      }
      if (laid === undefined) this.#problems.note([emptyFile(file.name, "log-empty")]);
      else if (laid.layout !== undefined && counts.rows === 0)
        this.#problems.note([emptyFile(file.name, "log-no-rows")]);
      else if (this.#digests.has(digest.hex())) this.#problems.note([fileTwice(file.name)]);
      this.#digests.add(digest.hex());
    } catch (error) {
      if (!(error instanceof CsvFault)) throw error;
      this.#problems.note([unreadable(file.name, error)]);
    }
    const { unused = [] } = laid ?? {};
    this.#files.push({ name: file.name, bytes, sha256: digest.hex(), ...counts, unused });
  }

  account(): LogAccount {
    return {
      files: this.#files,
      problems: this.#problems.kept(),
      counts: this.#problems.counts,
      filled: this.#filled,
      refused: this.refused,
    };
  }

  #row(record: CsvRecord, layout: Layout): "accepted" | "corrected" | "setAside" | "outside" {
    const { lot, problems } = judgeRow(record, layout, this.#dialect, this.#rules);
    if (lot === undefined) return this.#setAside(record, layout, problems);
    const said = (
      problem: Pick<Problem, "code" | "severity" | "expected" | "remedy">,
    ): Problem => ({
      file: layout.file,
      line: record.line,
      column: headingOf(layout, "lot"),
      value: lot.lot,
      ...problem,
    });
    const name = hash64(lot.lot);
    if (this.#barred.size > 0 && this.#barred.has(name.join(":"))) {
      return this.#setAside(record, layout, [
        said({
          code: "lot-in-conflict",
          severity: "set-aside",
          expected: "one content for a lot",
          remedy: "Rows of this lot differ; keep the right one, or give each its own name.",
        }),
      ]);
    }
    const filled = layout.columns.filter((placed) => !isBlank(cellOf(record, placed)));
    const seen = this.#table.see(name, hash64(contentOf(record, filled)));
    if (seen === "different") {
      this.conflicts.add(name.join(":"));
      return "setAside";
    }
    const { from, to } = this.#options;
    if ((from !== undefined && lot.date < from) || (to !== undefined && lot.date > to)) {
      return "outside";
    }
    if (seen === "same") {
      this.#problems.note([
        said({
          code: "lot-repeated",
          severity: "corrected",
          expected: "each lot once",
          remedy: "The row equals an earlier one and was counted once.",
        }),
      ]);
      return "corrected";
    }
    this.#problems.note(problems);
    for (const placed of filled) {
      const { name: column } = placed.column;
      this.#filled.set(column, (this.#filled.get(column) ?? 0) + 1);
    }
    this.#sink.lot(lot);
    return problems.length > 0 ? "corrected" : "accepted";
  }

  #setAside(record: CsvRecord, layout: Layout, problems: readonly Problem[]): "setAside" {
    const { file, headings } = layout;
    this.#problems.note(problems);
    this.#sink.aside({ file, line: record.line, headings, fields: record.fields, problems });
    return "setAside";
  }
}

// By name of the column, so that the order of columns, blank ones and those not used make no difference.
function contentOf(record: CsvRecord, filled: readonly PlacedColumn[]): string {
  let content = "";
  for (const placed of filled) {
    content += `${placed.column.name}\u001e${cellOf(record, placed)}\u001f`;
  }
  return content;
}

/** Names of the optional columns, for coverage. */
export const OPTIONAL_COLUMNS: readonly string[] = COLUMNS.filter((column) => !column.required).map(
  (column) => column.name,
);
