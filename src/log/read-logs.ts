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
import { garbledCell, garbledText, isGarbled } from "./garbled.js";
import { headingFaults, LOOKED_THROUGH } from "./heading-line.js";
import { LIMIT_NOT_USED, type LogRules } from "./judge-cell.js";
import { judgeRow } from "./judge-row.js";
import {
  cellOf,
  headingOf,
  type LaidOut,
  type Layout,
  layOut,
  type PlacedColumn,
} from "./layout.js";
import {
  type FileCounts,
  FileTally,
  filledIn,
  type LogAccount,
  type RowFate,
} from "./log-account.js";
import { LotNames } from "./lot-names.js";
import { LotTable } from "./lot-table.js";
import { ProblemTally } from "./problem-tally.js";
import type { LogFile, LogOptions, LogSink } from "./reading.js";

export type { FileCounts, LogAccount } from "./log-account.js";
export type { AsideRow, LogFile, LogOptions } from "./reading.js";

/**
 * Reads all logs.
 *
 * Rows of one lot are equal when the filled cells of the columns in use read the same, spaces around them
 * apart; a column that is mapped to nothing, and so is not used, makes no difference. One of equal rows is
 * kept. Rows that differ are all set aside, so that their order cannot matter.
 *
 * A row outside the period counts as outside though it has faults, or other rows of its lot differ from it,
 * as long as its day can be read and its cells told apart: what is wrong there concerns no lot asked for.
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
  const first = new Pass(dialect, rules, sink, options, new LotNames());
  for (const file of files) await first.read(file);
  if (first.conflicts.size === 0 || first.refused) return first.account();
  // A lot with two contents shows only when its first row has been handed on: begin again without it.
  sink.restart();
  const second = new Pass(dialect, rules, sink, options, first.conflicts);
  for (const file of files) await second.read(file);
  return second.account();
}

/** A file while it is read. */
interface OpenFile {
  readonly name: string;
  readonly tally: FileTally;
  /** Whether garbled text was found, which is said once. */
  garbled: boolean;
}

class Pass {
  readonly conflicts = new LotNames();
  readonly #dialect: LogDialect;
  readonly #rules: LogRules;
  readonly #sink: LogSink;
  readonly #options: LogOptions;
  readonly #barred: LotNames;
  readonly #table = new LotTable();
  readonly #files: FileCounts[] = [];
  readonly #digests = new Set<string>();
  readonly #problems = new ProblemTally();

  constructor(
    dialect: LogDialect,
    rules: LogRules,
    sink: LogSink,
    options: LogOptions,
    barred: LotNames,
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

  async read(log: LogFile): Promise<void> {
    const digest = new Digest();
    let bytes = 0;
    async function* watched(): AsyncGenerator<Uint8Array> {
      for await (const chunk of log.open()) {
        digest.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    }
    const file: OpenFile = { name: log.name, tally: new FileTally(), garbled: false };
    const { separator: mark, encoding = "utf-8", heading_line: headings } = this.#dialect;
    const separator = mark === "tab" ? "\t" : mark;
    let laid: LaidOut | undefined;
    const top: CsvRecord[] = [];
    try {
      for await (const batch of csvRecords(watched(), encoding, separator, headings)) {
        for (const record of batch) {
          if (laid === undefined) {
            laid = layOut(log.name, record, this.#dialect);
            if (laid.layout !== undefined) this.#note(laid.problems, file);
          } else if (laid.layout !== undefined) {
            file.tally.row(this.#row(record, laid.layout, file));
            continue;
          }
          if (top.length <= LOOKED_THROUGH) top.push(record);
        }
      }
      if (laid === undefined) this.#note([emptyFile(log.name, "log-empty")], file);
      else if (laid.layout !== undefined && file.tally.rows === 0)
        this.#note([emptyFile(log.name, "log-no-rows")], file);
      else if (this.#digests.has(digest.hex())) this.#note([fileTwice(log.name)], file);
      this.#digests.add(digest.hex());
    } catch (error) {
      if (!(error instanceof CsvFault)) throw error;
      this.#note([unreadable(log.name, error)], file);
    }
    const { layout, problems = [], unused = [] } = laid ?? {};
    if (layout === undefined) this.#note(headingFaults(problems, top, this.#dialect), file);
    this.#files.push(file.tally.counts({ name: log.name, bytes, sha256: digest.hex(), unused }));
  }

  account(): LogAccount {
    return {
      files: this.#files,
      problems: this.#problems.kept(),
      counts: this.#problems.counts,
      filled: filledIn(this.#files),
      refused: this.refused,
    };
  }

  #row(record: CsvRecord, layout: Layout, file: OpenFile): RowFate {
    const { lot, day, problems } = judgeRow(record, layout, this.#dialect, this.#rules);
    if (lot === undefined) {
      if (day !== undefined && this.#isOutside(day)) return "outside";
      return this.#setAside(record, layout, problems, file);
    }
    const said = (
      problem: Pick<Problem, "code" | "severity" | "expected" | "remedy">,
    ): Problem => ({
      file: layout.file,
      line: record.line,
      column: headingOf(layout, "lot"),
      value: lot.lot,
      ...problem,
    });
    const outside = this.#isOutside(lot.date);
    const name = hash64(lot.lot);
    if (this.#barred.has(name)) {
      if (outside) return "outside";
      const conflict = said({
        code: "lot-in-conflict",
        severity: "set-aside",
        expected: "one content for a lot",
        remedy: "Rows of this lot differ; keep the right one, or give each its own name.",
      });
      return this.#setAside(record, layout, [conflict], file);
    }
    const { filled, content } = filledOf(record, layout);
    const seen = this.#table.see(name, hash64(content));
    if (seen === "different") {
      this.conflicts.add(name);
      return "setAside";
    }
    if (outside) return "outside";
    if (!file.garbled && isGarbled(content)) this.#noteGarbled(filled, record, file);
    if (seen === "same") {
      const repeated = said({
        code: "lot-repeated",
        severity: "corrected",
        expected: "each lot once",
        remedy: "The row equals an earlier one and was counted once.",
      });
      this.#note([repeated], file);
      return "corrected";
    }
    this.#sink.lot(lot);
    if (problems.length === 0) {
      file.tally.fill(filled);
      return "accepted";
    }
    this.#note(problems, file);
    const left = new Set(
      problems.filter(({ code }) => code === LIMIT_NOT_USED.code).map((one) => one.column),
    );
    file.tally.fill(filled.filter(({ heading }) => !left.has(heading)));
    return "corrected";
  }

  #isOutside(day: string): boolean {
    const { from, to } = this.#options;
    return (from !== undefined && day < from) || (to !== undefined && day > to);
  }

  #setAside(
    record: CsvRecord,
    layout: Layout,
    problems: readonly Problem[],
    file: OpenFile,
  ): "setAside" {
    this.#noteGarbled(layout.columns, record, file);
    this.#note(problems, file);
    const { headings } = layout;
    this.#sink.aside({
      ...{ file: layout.file, line: record.line, headings, fields: record.fields, problems },
    });
    return "setAside";
  }

  #noteGarbled(columns: readonly PlacedColumn[], record: CsvRecord, file: OpenFile): void {
    const found = file.garbled ? undefined : garbledCell(columns, record);
    if (found === undefined) return;
    file.garbled = true;
    const place = { file: file.name, line: record.line, ...found };
    this.#note([garbledText(place, this.#dialect.encoding ?? "utf-8")], file);
  }

  #note(problems: readonly Problem[], file: OpenFile): void {
    this.#problems.note(problems);
    file.tally.note(problems);
  }
}

/** Cells of a row that are not blank. */
interface FilledCells {
  readonly filled: readonly PlacedColumn[];
  /** By name of the column, so that the order of columns, blank ones and those not used make no difference. */
  readonly content: string;
}

function filledOf(record: CsvRecord, layout: Layout): FilledCells {
  const filled: PlacedColumn[] = [];
  let content = "";
  for (const placed of layout.columns) {
    const cell = cellOf(record, placed);
    if (isBlank(cell)) continue;
    filled.push(placed);
    content += `${placed.column.name}\u001e${cell}\u001f`;
  }
  return { filled, content };
}

/** Names of the optional columns, for coverage. */
export const OPTIONAL_COLUMNS: readonly string[] = COLUMNS.filter((column) => !column.required).map(
  (column) => column.name,
);
