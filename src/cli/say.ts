/**
 * All that is printed. Results go to standard output, messages to standard error.
 */

import type { Problem, Severity } from "../problems/problem.js";
import { sentence } from "../problems/sentence.js";

// A reader such as `head` may close the pipe before all is printed; that is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

const COLOURS = { refused: 31, "set-aside": 33, corrected: 36, warning: 33 } as const;

function coloured(): boolean {
  return process.stderr.isTTY && (process.env["NO_COLOR"] ?? "") === "";
}

/**
 * Prints a line of result.
 *
 * @param line - the line
 */
export function out(line = ""): void {
  process.stdout.write(`${line}\n`);
}

/**
 * Prints a line of message.
 *
 * @param line - the line
 */
export function err(line: string): void {
  process.stderr.write(`${line}\n`);
}

/**
 * Prints problems, one a line.
 *
 * @param problems - the problems
 * @param most - longest list; the rest is counted
 */
export function tell(problems: readonly Problem[], most = 200): void {
  for (const problem of problems.slice(0, most)) {
    err(`${label(problem.severity)} ${sentence(problem)}`);
  }
  if (problems.length > most) err(`… and ${problems.length - most} more of the kind.`);
}

function label(severity: Severity): string {
  return coloured() ? `\u001b[${COLOURS[severity]}m${severity}\u001b[0m` : `${severity}:`;
}

/**
 * Says what is going on, on a terminal only.
 *
 * @param what - the stage, such as `reading the log`
 */
export function progress(what: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${what === "" ? "" : `${what} …`}`);
}
