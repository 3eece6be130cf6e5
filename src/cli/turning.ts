/**
 * Values at which nothing would be saved, of every setting and factor, as data and in print.
 */

import type { BreakEvens, FactorBreakEven } from "../compare/break-even.js";
import { digits } from "./explanation.js";
import { out } from "./say.js";

/** One setting or factor, turned alone over its plausible range. */
interface TurningValue {
  readonly factor: string;
  readonly words: string;
  readonly unit: string;
  readonly today: number;
  /** Values at which the median share saved is nothing, the nearest first; none where it stays on one side. */
  readonly at: readonly number[];
  readonly range: readonly [number, number];
}

/** Break-evens of all settings and factors. */
export interface TurningValues {
  /** Those with a break-even, the nearest to today first, then those without. */
  readonly settings: readonly TurningValue[];
  /** How many settings and factors do not move the share saved. */
  readonly idle: number;
}

/**
 * Break-evens as data.
 *
 * @param answer - what was found; nothing where no share is saved or lost
 * @returns settings and factors
 */
export function turningValues(answer: BreakEvens | undefined): TurningValues {
  if (answer === undefined) return { settings: [], idle: 0 };
  const { found, none, idle } = answer;
  return { settings: [...found, ...none].map(valueOf), idle };
}

function valueOf({ factor, leaf, today, roots, range }: FactorBreakEven): TurningValue {
  const at = roots.map(({ value }) => value);
  return { factor, words: leaf.words, unit: leaf.unit, today, at, range };
}

/**
 * Prints break-evens.
 *
 * @param values - settings and factors
 */
export function printTurning(values: TurningValues): void {
  const { settings, idle } = values;
  out("");
  out("Values at which the median share saved is nothing, each setting or factor turned alone:");
  for (const { factor, words, unit, today, at, range } of settings) {
    const of = unit === "1" ? "" : ` ${unit}`;
    const turns = at.length === 0 ? "none" : at.map((value) => digits(value)).join(" and ");
    out(
      `  ${factor}: ${turns}${at.length === 0 ? "" : of} (today ${digits(today)}${of}; tried ${digits(range[0])} to ${digits(range[1])})`,
    );
    out(`      ${words}`);
  }
  out(`${idle} more settings and factors do not move it.`);
}
