/**
 * All that is printed. Results go to standard output, messages to standard error.
 */

import type { Problem, Severity } from "../problems/problem.js";
import { sentence } from "../problems/sentence.js";
import { EXIT } from "./exit.js";

// A reader such as `head` may close the pipe before all is printed; that is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});

const COLOURS = { refused: 31, "set-aside": 33, corrected: 36, warning: 33 } as const;

// What goes into a file or a pipe is read by programs: no colour there, and no word on what goes on.
function onTerminal(): boolean {
  return process.stderr.isTTY && process.env["TERM"] !== "dumb";
}

function coloured(): boolean {
  return onTerminal() && (process.env["NO_COLOR"] ?? "") === "";
}

// Whether a line on what goes on stands on the terminal; it gives way to whatever else is printed.
let standing = false;

/**
 * Prints a line of result.
 *
 * @param line - the line
 */
export function out(line = ""): void {
  progress("");
  process.stdout.write(`${line}\n`);
}

/**
 * Prints a result as data.
 *
 * @param value - plain data
 */
export function data(value: unknown): void {
  out(JSON.stringify(value, null, 2));
}

/**
 * Prints a line of message.
 *
 * @param line - the line
 */
export function err(line: string): void {
  progress("");
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

/**
 * Says why a command was refused: in sentences on standard error, or as data on standard output.
 *
 * @param problems - the problems
 * @param json - whether data was asked for
 * @returns exit code
 */
export function refuse(problems: readonly Problem[], json = false): number {
  if (json) data({ problems });
  else tell(problems);
  return EXIT.refused;
}

function label(severity: Severity): string {
  return coloured() ? `\u001b[${COLOURS[severity]}m${severity}:\u001b[0m` : `${severity}:`;
}

/**
 * Says what is going on, on a terminal only. The line goes when anything is printed.
 *
 * @param what - the stage, such as `reading the log`; empty when there is none
 */
export function progress(what: string): void {
  if (!onTerminal() || (what === "" && !standing)) return;
  standing = what !== "";
  process.stderr.write(`\r\u001b[K${standing ? `${what} …` : ""}`);
}
