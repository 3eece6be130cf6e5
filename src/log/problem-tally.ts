/**
 * Problems counted by code; the first ones are kept in full.
 */

import type { Problem, Severity } from "../problems/problem.js";

/** Problems kept in full; all are counted. */
export const PROBLEMS_KEPT = 1000;

/** A growing count of problems. */
export class ProblemTally {
  readonly #refusals: Problem[] = [];
  readonly #others: Problem[] = [];
  readonly #counts = new Map<string, { readonly severity: Severity; count: number }>();

  /**
   * Whether something was refused.
   *
   * @returns true from the first refusal on
   */
  get refused(): boolean {
    return this.#refusals.length > 0;
  }

  /**
   * How often each problem was met.
   *
   * @returns severity and count by code
   */
  get counts(): ReadonlyMap<string, { readonly severity: Severity; readonly count: number }> {
    return this.#counts;
  }

  /**
   * Notes problems.
   *
   * @param problems - in the order they were met
   */
  note(problems: readonly Problem[]): void {
    for (const problem of problems) {
      const found = this.#counts.get(problem.code);
      if (found === undefined)
        this.#counts.set(problem.code, { severity: problem.severity, count: 1 });
      else found.count += 1;
      const list = problem.severity === "refused" ? this.#refusals : this.#others;
      if (list.length < PROBLEMS_KEPT) list.push(problem);
    }
  }

  /**
   * The problems kept, refusals first: a thousand rows set aside must not hide why a file was refused.
   *
   * @returns at most `PROBLEMS_KEPT` problems
   */
  kept(): readonly Problem[] {
    return [...this.#refusals, ...this.#others].slice(0, PROBLEMS_KEPT);
  }
}
