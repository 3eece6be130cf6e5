/**
 * Degree days of heating by month, from a file beside the plant file: `month,degree_days,base_c`. A degree day is a
 * day that was one kelvin colder than the base temperature; without the base the number says nothing.
 */

import { readNumber } from "../log/cells.js";
import { CsvFault, csvRecords } from "../log/csv.js";
import { unreadable } from "../log/file-faults.js";
import type { Problem } from "../problems/problem.js";

/** Degree days. */
export interface DegreeDays {
  /** Base temperature. [°C] */
  readonly base: number;
  /** Degree days by month. [K d] */
  readonly byMonth: ReadonlyMap<string, number>;
}

/** What the reader hands back. */
export interface DegreeDaysRead {
  /** Degree days; absent where none could be read. */
  readonly degreeDays?: DegreeDays;
  /** What is wrong with rows. */
  readonly problems: readonly Problem[];
}

const HEADS = ["month", "degree_days", "base_c"] as const;

/**
 * Reads the file.
 *
 * @param name - file as the user named it
 * @param chunks - its bytes
 * @returns degree days and what is wrong
 */
export async function readDegreeDays(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
): Promise<DegreeDaysRead> {
  const problems: Problem[] = [];
  const byMonth = new Map<string, number>();
  let heads: readonly string[] | undefined;
  let base: number | undefined;
  const refuse = (
    line: number,
    column: string,
    value: string,
    expected: string,
    remedy: string,
  ): void => {
    const code = `degree-days-${column}`;
    const severity = "set-aside" as const;
    problems.push({ code, severity, file: name, line, column, value, expected, remedy });
  };
  const numberOf = (text: string): number => {
    const read = readNumber(text, {}, undefined, undefined);
    return "number" in read ? read.number : NaN;
  };
  try {
    for await (const batch of csvRecords(chunks, "utf-8", undefined))
      for (const { line, fields } of batch) {
        if (heads === undefined) {
          heads = fields.map((field) => field.trim());
          for (const head of HEADS)
            if (!heads.includes(head)) refuse(line, head, "", `a column ${head}`, "Add it.");
          if (problems.length > 0) return { problems };
          continue;
        }
        const columns = heads;
        const cell = (head: string): string => (fields[columns.indexOf(head)] ?? "").trim();
        const [month, days, below] = [
          cell("month"),
          numberOf(cell("degree_days")),
          numberOf(cell("base_c")),
        ];
        if (!/^\d{4}-(?:0[1-9]|1[0-2])$/u.test(month) || byMonth.has(month))
          refuse(line, "month", month, "a month such as 2026-01, once", "Correct the month.");
        else if (!(days >= 0 && days <= 2500))
          refuse(line, "degree_days", cell("degree_days"), "0 to 2,500 K d", "Correct the number.");
        else if (!(below >= 5 && below <= 25) || below !== (base ?? below))
          refuse(
            line,
            "base_c",
            cell("base_c"),
            "one base temperature of 5 to 25 °C for all months",
            "Take all months from one table.",
          );
        else {
          base = below;
          byMonth.set(month, days);
        }
      }
  } catch (error) {
    if (!(error instanceof CsvFault)) throw error;
    problems.push(unreadable(name, error));
  }
  return { ...(base === undefined ? {} : { degreeDays: { base, byMonth } }), problems };
}
