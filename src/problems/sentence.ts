import type { Problem } from "./problem.js";

/** Longest piece of a user's value shown in a message; the rest is cut with an ellipsis. [characters] */
const LONGEST_VALUE = 60;

/**
 * Says a problem in one line: place, value, expectation, remedy.
 *
 * @param problem - the fault
 * @returns for instance `log.csv, line 7, column length_m: "-3"; expected a length above 0 m. Correct the length.`
 */
export function sentence(problem: Problem): string {
  const place = [
    problem.file,
    problem.line === undefined ? undefined : `line ${problem.line}`,
    problem.column === undefined ? undefined : `column ${problem.column}`,
    problem.key === undefined ? undefined : `key ${shown(problem.key)}`,
  ].filter((part) => part !== undefined);
  const value = problem.value === undefined ? "" : `"${shown(problem.value)}"; `;
  const head = place.length > 0 ? `${place.join(", ")}: ` : "";
  return `${head}${value}expected ${problem.expected}. ${problem.remedy}`;
}

// Line breaks and control characters would let a log forge further lines of output.
function shown(value: string): string {
  // eslint-disable-next-line no-control-regex -- control characters are what is looked for
  const plain = value.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g, " ");
  return plain.length > LONGEST_VALUE ? `${plain.slice(0, LONGEST_VALUE)}…` : plain;
}
