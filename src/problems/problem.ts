/**
 * What can be wrong with something a user gave, as data. Sentences are made in `sentence.ts`.
 */

/**
 * How far a problem reaches.
 *
 * - `refused`: the whole input is refused (exit code 3)
 * - `set-aside`: one row is kept out of the sums, counted and written to setaside.csv
 * - `corrected`: one row was read in a stated, harmless other way
 * - `warning`: nothing was changed, but a reader should look
 */
export type Severity = "refused" | "set-aside" | "corrected" | "warning";

/** One fault, named so that its owner can mend it. */
export interface Problem {
  /** Stable code to branch on, in kebab case, such as `log-missing-column`. */
  readonly code: string;
  /** How far the problem reaches. */
  readonly severity: Severity;
  /** File it was found in, as the user named it. */
  readonly file?: string;
  /** Line in that file, counted from 1. */
  readonly line?: number;
  /** Heading of the column in a table. */
  readonly column?: string;
  /** Path of the key in a YAML file, such as `routes.reactive.steps[2]`. */
  readonly key?: string;
  /** Value as it was read. */
  readonly value?: string;
  /** What was expected, as a noun phrase: `a length above 0 m`. */
  readonly expected: string;
  /** What to do next, as an instruction: `Correct the length or leave the row out.` */
  readonly remedy: string;
}

/** A value, or the problems that stand in its way; never both empty. */
export interface Judged<T> {
  /** The value; absent when a problem with severity `refused` stands. */
  readonly value?: T;
  /** All problems found in one run, in the order of the file. */
  readonly problems: readonly Problem[];
}
