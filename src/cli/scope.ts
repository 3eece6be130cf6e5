/**
 * Why no lot is left of those asked for.
 */

import { nearest } from "../factors/nearest.js";
import type { Problem } from "../problems/problem.js";
import { openMill } from "./workspace.js";

/** What narrows the lots. */
export interface Scope {
  /** Plant file. */
  readonly plant: string;
  /** First day. */
  readonly from?: string;
  /** Last day. */
  readonly to?: string;
  /** Client. */
  readonly client?: string;
  /** Site. */
  readonly site?: string;
  /** Order. */
  readonly order?: string;
  /** Route. */
  readonly route?: string;
}

/**
 * Says more where nothing was found. Sites and routes stand in the plant file and are named. Clients and
 * orders are not, as what a command says may be shown to one of them.
 *
 * @param problems - problems of the assessment
 * @param scope - what was asked for
 * @returns the same, with a `nothing-to-report` that names the option at fault where it can be told
 */
export function whyEmpty(problems: readonly Problem[], scope: Scope): readonly Problem[] {
  return problems.flatMap((problem) =>
    problem.code === "nothing-to-report" ? [...reasons(problem, scope)] : [problem],
  );
}

function reasons(problem: Problem, scope: Scope): readonly Problem[] {
  const plant = openMill(scope).mill?.plant;
  const unknown = [
    { option: "--site", given: scope.site, known: Object.keys(plant?.sites ?? {}) },
    { option: "--route", given: scope.route, known: Object.keys(plant?.routes ?? {}) },
  ].flatMap(({ option, given, known }): readonly Problem[] => {
    if (given === undefined || known.includes(given)) return [];
    const near = nearest(given, known);
    return [
      {
        ...problem,
        value: given,
        expected: `one of ${known.join(", ")} after ${option}`,
        remedy: near === undefined ? "Take one of them." : `Did you mean ${near}?`,
      },
    ];
  });
  if (unknown.length > 0) return unknown;
  const asked = [
    ["--client", scope.client],
    ["--site", scope.site],
    ["--order", scope.order],
    ["--route", scope.route],
    ["--from", scope.from],
    ["--to", scope.to],
  ].flatMap(([option = "", given]) => (given === undefined ? [] : [`${option} ${given}`]));
  const named = scope.client !== undefined || scope.order !== undefined;
  return [
    {
      ...problem,
      ...(asked.length === 0 ? {} : { value: asked.join(" ") }),
      ...(named
        ? {
            remedy:
              "Check the spelling of client and order against the log, letter by letter, or widen the period.",
          }
        : {}),
    },
  ];
}
