/**
 * `millrace check`: reads and judges the log, and writes no report.
 */

import { OPTIONAL_COLUMNS } from "../log/read-logs.js";
import { checkPeriod } from "./arguments.js";
import { asideCode, asideLimit } from "./aside.js";
import { EXIT } from "./exit.js";
import { writeAll } from "./files.js";
import { investCheck } from "./invest-file.js";
import { foldersAmong } from "./paths.js";
import { data, err, out, progress, refuse, tell } from "./say.js";
import { meterCheck } from "./metering.js";
import { openMill, readMill, type Reading, separatorOf } from "./workspace.js";

/** Options of the command. */
export interface CheckOptions {
  /** Plant file. */
  readonly plant: string;
  /** Folder for setaside.csv. */
  readonly out: string;
  /** First day. */
  readonly from?: string;
  /** Last day. */
  readonly to?: string;
  /** Day after which no lot can have been printed. */
  readonly asOf: string;
  /** Most rows set aside, N or P%. */
  readonly maxAside?: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/**
 * Runs the command.
 *
 * @param logs - paths of logs
 * @param options - options
 * @returns exit code
 */
export async function check(logs: readonly string[], options: CheckOptions): Promise<number> {
  checkPeriod(options);
  const limit = asideLimit(options.maxAside);
  const folders = foldersAmong(options.plant, logs);
  if (folders.length > 0) return refuse(folders, options.json);
  const opened = openMill(options);
  if (opened.mill === undefined) return refuse(opened.problems, options.json);
  progress("reading the log");
  const read = await readMill(opened.mill, logs, { ...options, today: options.asOf });
  progress("");
  if (read.reading === undefined) return refuse(read.problems, options.json);
  const { account, aside } = read.reading;
  const purchase = account.refused
    ? undefined
    : investCheck(
        opened.mill,
        options.plant,
        read.reading,
        options.from === undefined && options.to === undefined,
      );
  const code =
    account.refused || purchase?.problems.some(({ severity }) => severity === "refused") === true
      ? EXIT.refused
      : asideCode(account.files, limit);
  const written =
    aside.count > 0
      ? writeAll(
          options.out,
          new Map([["setaside.csv", aside.csv(separatorOf(opened.mill.dialect))]]),
        )
      : [];
  const meters = account.refused ? undefined : await meterCheck(opened.mill, options.asOf);
  if (options.json === true) {
    const readings = meters === undefined ? {} : { meters };
    const invest = purchase === undefined ? {} : { invest: purchase };
    data({
      ...checkData(read.reading),
      ...readings,
      ...invest,
      setaside: written[0] ?? null,
      exit: code,
    });
    return code;
  }
  tell(
    account.problems.filter((problem) => problem.severity !== "corrected"),
    40,
  );
  if (account.refused) return code;
  printCounts(read.reading);
  if (meters !== undefined) {
    out(`meters.csv: ${meters.readings} readings`);
    tell(meters.problems, 40);
  }
  if (purchase !== undefined) {
    out(
      purchase.options > 0
        ? `${purchase.file}: ${purchase.options} options`
        : `${purchase.file}: refused, see below`,
    );
    tell(purchase.problems, 40);
  }
  if (written[0] !== undefined) out(`Rows set aside: ${written[0]}`);
  if (code === EXIT.aside)
    err(`More rows were set aside than --max-aside ${options.maxAside ?? ""} allows.`);
  return code;
}

/**
 * Counts of a reading as data.
 *
 * @param reading - the reading
 * @returns counts by file and code, coverage and problems
 */
export function checkData(reading: Reading): object {
  const { account } = reading;
  return {
    files: account.files,
    counts: Object.fromEntries(account.counts),
    filled: Object.fromEntries(account.filled),
    problems: account.problems,
  };
}

function printCounts(reading: Reading): void {
  const { account } = reading;
  for (const file of account.files) {
    out(
      `${file.name}: ${file.rows} rows read = ${file.accepted} accepted + ${file.corrected} corrected + ${file.setAside} set aside${file.outside > 0 ? ` + ${file.outside} outside the period` : ""}`,
    );
    if (file.unused.length > 0) out(`  headings not used: ${file.unused.join(", ")}`);
  }
  const codes = [...account.counts].sort(([, a], [, b]) => b.count - a.count);
  if (codes.length > 0) out("By reason:");
  for (const [code, { severity, count }] of codes)
    out(`  ${String(count).padStart(6)}  ${severity.padEnd(9)}  ${code}`);
  const taken = account.files.reduce((sum, file) => sum + file.accepted + file.corrected, 0);
  out("Filled cells of optional columns, of the rows taken:");
  for (const column of OPTIONAL_COLUMNS) {
    const filled = account.filled.get(column) ?? 0;
    if (filled > 0)
      out(
        `  ${column.padEnd(16)} ${String(Math.round((100 * filled) / Math.max(1, taken))).padStart(3)} %`,
      );
  }
}
