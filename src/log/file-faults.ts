/**
 * Faults for which a whole log is refused.
 */

import type { Problem } from "../problems/problem.js";
import type { CsvFault } from "./csv.js";

const UNREADABLE: Readonly<
  Record<CsvFault["code"], { readonly expected: string; readonly remedy: string }>
> = {
  "log-quote": {
    expected: "a closing quote for the one that opens a cell here, and a separator behind it",
    remedy: "Close the quote, and double every quote inside the text.",
  },
  "log-binary": {
    expected: "a text file",
    remedy: "Save the log as CSV; this looks like a workbook or a damaged file.",
  },
  "log-encoding": {
    expected: "text in the encoding named",
    remedy:
      "Save the log as UTF-8, or name its encoding with `encoding:` under `log:` in plant.yaml, such as windows-1252.",
  },
};

/**
 * A file that cannot be cut into records.
 *
 * @param file - file as the user named it
 * @param fault - what is wrong
 * @returns the problem, with the line
 */
export function unreadable(file: string, fault: CsvFault): Problem {
  const { code, line } = fault;
  return { code, severity: "refused", file, line, ...UNREADABLE[code] };
}

/**
 * A file without lots.
 *
 * @param file - file as the user named it
 * @param code - `log-empty` without headings, `log-no-rows` with nothing below them
 * @returns the problem
 */
export function emptyFile(file: string, code: "log-empty" | "log-no-rows"): Problem {
  const expected =
    code === "log-empty"
      ? "a row of headings and rows of lots"
      : "at least one lot below the headings";
  return { code, severity: "refused", file, expected, remedy: "Export the log again." };
}

/**
 * A file whose content was given before.
 *
 * @param file - file as the user named it
 * @returns the problem
 */
export function fileTwice(file: string): Problem {
  return {
    code: "log-twice",
    severity: "refused",
    file,
    expected: "every file once",
    remedy: "The same content was given before; leave one of the two out.",
  };
}
