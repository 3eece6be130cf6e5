/**
 * Reads logs lot by lot. Every row is accepted, corrected, set aside or outside the period, and the four add
 * up to the rows read.
 */

import { Digest, hash64 } from "../numbers/digest.js";
import type { Problem } from "../problems/problem.js";
import { COLUMNS } from "./columns.js";
import { CsvFault, type CsvRecord, csvRecords } from "./csv.js";
import type { LogDialect } from "./dialect.js";
import { judgeRow, type Layout, layOut, type LogRules } from "./judge-row.js";
import { LotTable } from "./lot-table.js";
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

/** Problems kept in full; all are counted. */
export const PROBLEMS_KEPT = 1000;

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
  refused = false;
  readonly #dialect: LogDialect;
  readonly #rules: LogRules;
  readonly #sink: LogSink;
  readonly #options: LogOptions;
  readonly #barred: ReadonlySet<string>;
  readonly #table = new LotTable();
  readonly #files: FileCounts[] = [];
  readonly #problems: Problem[] = [];
  readonly #counts = new Map<string, { severity: Problem["severity"]; count: number }>();
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

  async read(file: LogFile): Promise<void> {
    const digest = new Digest();
    let bytes = 0;
    const counts = { rows: 0, accepted: 0, corrected: 0, setAside: 0, outside: 0 };
    let layout: Layout | undefined;
    let headings: readonly string[] = [];
    let unused: readonly string[] = [];
    async function* watched(): AsyncGenerator<Uint8Array> {
      for await (const chunk of file.open()) {
        digest.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    }
    const mark = this.#dialect.separator;
    const separator = mark === "tab" ? "\t" : mark;
    try {
      reading: for await (const batch of csvRecords(
        watched(),
        this.#dialect.encoding ?? "utf-8",
        separator,
      )) {
        for (const record of batch) {
          if (layout === undefined) {
            const laid = layOut(file.name, record, this.#dialect);
            ({ unused } = laid);
            headings = record.fields;
            this.#note(laid.problems);
            if (laid.layout === undefined) break reading;
            ({ layout } = laid);
          } else {
            counts.rows += 1;
            counts[this.#row(record, layout, headings)] += 1;
          }
        }
      }
    } catch (error) {
      if (!(error instanceof CsvFault)) throw error;
      this.#note([fileFault(file.name, error)]);
    }
    const sha256 = digest.hex();
    if (!this.refused && layout === undefined)
      this.#note([empty(file.name, "log-empty", "a row of headings and rows of lots")]);
    else if (!this.refused && counts.rows === 0)
      this.#note([empty(file.name, "log-no-rows", "at least one lot below the headings")]);
    if (this.#files.some((other) => other.sha256 === sha256)) {
      this.#note([
        {
          code: "log-twice",
          severity: "refused",
          file: file.name,
          expected: "every file once",
          remedy: "The same content was given before; leave one of the two out.",
        },
      ]);
    }
    this.#files.push({ name: file.name, bytes, sha256, ...counts, unused });
  }

  account(): LogAccount {
    return {
      files: this.#files,
      problems: this.#problems,
      counts: this.#counts,
      filled: this.#filled,
      refused: this.refused,
    };
  }

  #row(
    record: CsvRecord,
    layout: Layout,
    headings: readonly string[],
  ): "accepted" | "corrected" | "setAside" | "outside" {
    const { lot, problems } = judgeRow(record, layout, this.#dialect, this.#rules);
    if (lot === undefined) return this.#setAside(record, layout, headings, problems);
    const { from, to } = this.#options;
    if ((from !== undefined && lot.date < from) || (to !== undefined && lot.date > to))
      return "outside";
    const name = hash64(lot.lot);
    const key = name.join(":");
    const { fields, line } = record;
    if (this.#barred.has(key)) {
      return this.#setAside(record, layout, headings, [
        {
          code: "lot-in-conflict",
          severity: "set-aside",
          file: layout.file,
          line,
          column: "lot",
          value: lot.lot,
          expected: "one content for a lot",
          remedy: "Rows of this lot differ; keep the right one, or give each its own name.",
        },
      ]);
    }
    const seen = this.#table.see(name, hash64(fields.join("\u001f")));
    if (seen === "different") {
      this.conflicts.add(key);
      return "setAside";
    }
    if (seen === "same") {
      this.#note([
        {
          code: "lot-repeated",
          severity: "corrected",
          file: layout.file,
          line,
          column: "lot",
          value: lot.lot,
          expected: "each lot once",
          remedy: "The row equals an earlier one and was counted once.",
        },
      ]);
      return "corrected";
    }
    this.#note(problems);
    for (const { column, at, constant } of layout.columns) {
      if ((at < 0 ? constant : (fields[at] ?? "")).trim() !== "") {
        this.#filled.set(column.name, (this.#filled.get(column.name) ?? 0) + 1);
      }
    }
    this.#sink.lot(lot);
    return problems.length > 0 ? "corrected" : "accepted";
  }

  #setAside(
    record: CsvRecord,
    layout: Layout,
    headings: readonly string[],
    problems: readonly Problem[],
  ): "setAside" {
    this.#note(problems);
    this.#sink.aside({
      file: layout.file,
      line: record.line,
      headings,
      fields: record.fields,
      problems,
    });
    return "setAside";
  }

  #note(problems: readonly Problem[]): void {
    for (const problem of problems) {
      const found = this.#counts.get(problem.code);
      if (found === undefined)
        this.#counts.set(problem.code, { severity: problem.severity, count: 1 });
      else found.count += 1;
      if (problem.severity === "refused") this.refused = true;
      if (this.#problems.length < PROBLEMS_KEPT) this.#problems.push(problem);
    }
  }
}

function empty(file: string, code: string, expected: string): Problem {
  return { code, severity: "refused", file, expected, remedy: "Export the log again." };
}

function fileFault(file: string, fault: CsvFault): Problem {
  const said = {
    "log-quote": [
      "a closing quote for every opening one",
      "Close the quote or double it inside a text.",
    ],
    "log-binary": [
      "a text file",
      "Save the log as CSV; this looks like a workbook or a damaged file.",
    ],
    "log-encoding": [
      "text in the encoding named",
      "Save the log as UTF-8, or name its encoding with `encoding:` under `log:` in plant.yaml, such as windows-1252.",
    ],
  }[fault.code];
  return {
    code: fault.code,
    severity: "refused",
    file,
    line: fault.line,
    expected: said[0] ?? "",
    remedy: said[1] ?? "",
  };
}

/** Names of the optional columns, for coverage. */
export const OPTIONAL_COLUMNS: readonly string[] = COLUMNS.filter((column) => !column.required).map(
  (column) => column.name,
);
