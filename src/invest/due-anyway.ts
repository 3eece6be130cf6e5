/**
 * What one has to lay out by carrying on, round by round; and what options are worth without sparing any of it.
 */

import { costOf, paidIn } from "./cost.js";
import { discounted, gainOf } from "./gain.js";
import { pricePath } from "./price-path.js";
import type { CapitalLine, Study } from "./study.js";
import { centralWorld } from "./world.js";

/** A line of capital with the years it is paid in. */
export interface DueLine {
  /** The line. */
  readonly line: CapitalLine;
  /** Years it is paid in. */
  readonly years: readonly number[];
  /** Money of each of them. */
  readonly money: readonly number[];
}

/** Capital of carrying on over a life. */
export interface DueAnyway {
  /** Lines in the order of the file. */
  readonly lines: readonly DueLine[];
  /** Present value of all of it, less what is left of it at the end. */
  readonly present: number;
}

/**
 * Capital of carrying on.
 *
 * @param study - the study
 * @param life - years looked at
 * @returns lines with all their rounds, and their present value
 */
export function dueAnyway(study: Study, life: number): DueAnyway {
  const world = centralWorld();
  const lines = study.carryOn.capital
    .filter(({ year }) => year <= life)
    .map((line): DueLine => {
      const years = paidIn(line, life);
      const path = pricePath(study, world, line, life);
      return { line, years, money: years.map((year) => path[year] ?? 0) };
    });
  const present = costOf(study, study.carryOn, life, world)
    .lines.filter(({ heading }) => heading === "capital")
    .flatMap(({ money }) => discounted(study, study.discount.central, money))
    .reduce((sum, each) => sum + each, 0);
  return { lines, present };
}

/**
 * Worth of every option if carrying on had nothing to lay out.
 *
 * @param study - the study
 * @returns worth at central values by option
 */
export function withoutSpared(study: Study): ReadonlyMap<string, number> {
  const other = { ...study, carryOn: { ...study.carryOn, capital: [] } };
  return new Map(
    study.options.map((option) => [option.name, gainOf(other, option, centralWorld()).worth]),
  );
}
