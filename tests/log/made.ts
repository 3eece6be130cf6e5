import type { LogDialect } from "../../src/log/dialect.js";
import type { LogRules } from "../../src/log/judge-cell.js";
import type { Lot } from "../../src/log/lot.js";
import {
  type AsideRow,
  type FileCounts,
  type LogAccount,
  type LogFile,
  type LogOptions,
  readLogs,
} from "../../src/log/read-logs.js";
import type { Problem } from "../../src/problems/problem.js";

/** What is known in the tests of logs. */
export const RULES: LogRules = {
  routes: new Set(["pigment-calender", "reactive", "disperse"]),
  fibres: new Set(["cotton", "viscose", "flax", "polyester", "polyamide", "elastane"]),
  sites: new Set(["main"]),
  today: "2026-06-30",
};

/** Row of headings: the required columns and those that the tests vary. */
export const HEAD =
  "lot,date,client,fibre,gsm,width_m,length_m,rejected_m,route,ink_ml,reprint_of,note";

const SOUND: Readonly<Record<string, string>> = {
  lot: "L-1",
  date: "2026-03-14",
  client: "Client Elm",
  fibre: "cotton",
  gsm: "140",
  width_m: "1.5",
  length_m: "200",
  route: "reactive",
};

/**
 * A row under {@link HEAD} that is taken as it stands, apart from what is changed.
 *
 * @param changes - cells by our column names
 * @param head - row of headings
 * @returns the row, without a line break
 */
export function row(changes: Readonly<Record<string, string>> = {}, head = HEAD): string {
  const cells = { ...SOUND, ...changes };
  return head
    .split(",")
    .map((name) => cells[name] ?? "")
    .join(",");
}

/**
 * Bytes cut into chunks.
 *
 * @param bytes - a file
 * @param size - bytes in a chunk
 * @yields chunks
 * @returns chunks
 */
export async function* cut(
  bytes: Uint8Array,
  size = Math.max(1, bytes.length),
): AsyncGenerator<Uint8Array> {
  await Promise.resolve();
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/**
 * A log in memory.
 *
 * @param content - text as UTF-8, or bytes
 * @param name - its name
 * @returns the log
 */
export function file(content: string | Uint8Array, name = "log.csv"): LogFile {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  return { name, open: () => cut(bytes) };
}

/** What came of reading. */
export interface Outcome {
  /** Lots handed on since the last restart. */
  readonly lots: Lot[];
  /** Rows set aside since the last restart. */
  readonly aside: AsideRow[];
  /** How often reading began again. */
  restarts: number;
  /** Counts and problems. */
  readonly account: LogAccount;
}

/**
 * Reads logs to the end.
 *
 * @param files - logs, or texts of logs
 * @param dialect - how they are written
 * @param options - period
 * @param rules - what is known
 * @returns lots, rows set aside and counts
 */
export async function read(
  files: readonly (LogFile | string)[],
  dialect: LogDialect = {},
  options: LogOptions = {},
  rules: LogRules = RULES,
): Promise<Outcome> {
  const lots: Lot[] = [];
  const aside: AsideRow[] = [];
  let restarts = 0;
  const logs = files.map((one, i) => (typeof one === "string" ? file(one, `log-${i}.csv`) : one));
  const account = await readLogs(
    logs,
    dialect,
    rules,
    {
      lot: (lot) => lots.push(lot),
      aside: (one) => aside.push(one),
      restart: () => {
        lots.length = 0;
        aside.length = 0;
        restarts += 1;
      },
    },
    options,
  );
  return { lots, aside, restarts, account };
}

/**
 * The one problem of a log with a single row.
 *
 * @param changes - cells that differ from a sound row
 * @param dialect - how the log is written
 * @returns the problem
 * @throws Error when there is none or more than one
 */
export async function problemOf(
  changes: Readonly<Record<string, string>>,
  dialect: LogDialect = {},
): Promise<Problem> {
  const { account } = await read([file(`${HEAD}\n${row(changes)}\n`)], dialect);
  const [problem, ...more] = account.problems;
  if (problem === undefined || more.length > 0) {
    throw new Error(`expected one problem, not ${JSON.stringify(account.problems)}`);
  }
  return problem;
}

/**
 * Counts of all files together.
 *
 * @param account - what came of reading
 * @returns rows read and what became of them
 */
export function totals(
  account: LogAccount,
): Pick<FileCounts, "rows" | "accepted" | "corrected" | "setAside" | "outside"> {
  const sum = (key: "rows" | "accepted" | "corrected" | "setAside" | "outside"): number =>
    account.files.reduce((total, one) => total + one[key], 0);
  return {
    rows: sum("rows"),
    accepted: sum("accepted"),
    corrected: sum("corrected"),
    setAside: sum("setAside"),
    outside: sum("outside"),
  };
}
