/**
 * What a program comes to, step by step: readings that are taken once with every factor at its median, and once
 * for each draw.
 */

import { pairsOf } from "../../src/account/account.js";
import { drawsOf } from "../../src/account/draws.js";
import type { IndicatorId } from "../../src/account/indicators.js";
import type { LotClass, Program } from "../../src/account/program.js";
import { medianOf } from "../../src/numbers/distributions.js";
import { quantiles } from "../../src/numbers/quantiles.js";
import type { Workflow } from "../../src/plant/shipped-routes.js";
import { AMOUNTS } from "../../src/steps/amounts.js";

/** Value of a node. */
type Node = (at: number) => number;

/** A number read off a program. */
export interface Reading {
  /** Nodes it asks for. */
  readonly needs: readonly number[];
  /** Its value for one set of node values. */
  readonly value: (node: Node) => number;
}

/** A median with its 95 % interval. */
export interface Ranged {
  readonly median: number;
  readonly low: number;
  readonly high: number;
}

const MASS = AMOUNTS.findIndex(({ name }) => name === "mass");

/**
 * Class of the lots on a pigment route.
 *
 * @param program - the program
 * @param route - name of the pigment route
 * @returns place of the class and the class itself
 */
function classOf(program: Program, route: string): readonly [number, LotClass] {
  const at = program.classes.findIndex(({ arms }) => arms.pigment.route.name === route);
  const found = program.classes[at];
  if (found === undefined) throw new Error(`No lot went by ${route}.`);
  return [at, found];
}

/** Steps of an arm. */
export interface Place {
  /** Pigment route; its dye counterpart is the same for all. */
  readonly route: string;
  /** Arm. */
  readonly arm: Workflow;
  /** Roles; all of the arm when absent. */
  readonly roles?: readonly string[];
}

/**
 * Sum of an indicator over steps.
 *
 * @param program - the program
 * @param place - the steps
 * @param indicator - the indicator, at the fence
 * @returns its sum per kg of conditioned cloth
 * @throws Error when the arm lacks one of the roles
 */
export function perKilogram(program: Program, place: Place, indicator: IndicatorId): Reading {
  const [at, lotClass] = classOf(program, place.route);
  const mass = lotClass.amounts[MASS] ?? NaN;
  const had = lotClass.arms[place.arm].steps.map(({ role }) => role);
  const roles = place.roles ?? had;
  const missing = roles.find((role) => !had.includes(role));
  if (missing !== undefined) throw new Error(`The ${place.arm} arm has no step ${missing}.`);
  const parts = program.terms.flatMap((term) => {
    if (term.lotClass !== at || term.arm !== place.arm || !roles.includes(term.role)) return [];
    const amount = lotClass.amounts[term.amount] ?? 0;
    const pairs = pairsOf(program, term, indicator);
    return amount === 0 || pairs.length === 0 ? [] : [{ amount, rate: term.rate, pairs }];
  });
  return {
    needs: parts.flatMap(({ rate, pairs }) => [rate, ...pairs.flat()]),
    value: (node) => {
      let sum = 0;
      for (const { amount, rate, pairs } of parts) {
        let per = 0;
        for (const [conversion, intensity] of pairs) per += node(conversion) * node(intensity);
        sum += amount * node(rate) * per;
      }
      return sum / mass;
    },
  };
}

/**
 * A formula of settings.
 *
 * @param program - the program
 * @param ids - ids of the settings
 * @param formula - what they come to, in the order of the ids
 * @returns the reading
 * @throws Error when the program reads no such setting
 */
export function ofSettings(
  program: Program,
  ids: readonly string[],
  formula: (...values: number[]) => number,
): Reading {
  const leaves = program.nodes.leaves();
  const needs = ids.map((id) => {
    const found = leaves.find(({ leaf }) => leaf.factor === id);
    if (found === undefined) throw new Error(`No step reads ${id}.`);
    return found.at;
  });
  return { needs, value: (node) => formula(...needs.map(node)) };
}

/**
 * Quotient of two readings.
 *
 * @param above - numerator
 * @param below - denominator
 * @param scale - factor
 * @returns scale × above / below
 */
export function quotient(above: Reading, below: Reading, scale = 1): Reading {
  return {
    needs: [...above.needs, ...below.needs],
    value: (node) => (scale * above.value(node)) / below.value(node),
  };
}

/**
 * Readings with every factor at its median.
 *
 * @param program - the program
 * @param readings - what to read
 * @returns one value for each
 */
export function atMedians(program: Program, readings: readonly Reading[]): readonly number[] {
  const values = program.nodes.evaluate(({ spread }) => medianOf(spread));
  return readings.map(({ value }) => value((at) => values[at] ?? NaN));
}

/**
 * Readings draw by draw.
 *
 * @param program - the program
 * @param readings - what to read
 * @param count - number of draws
 * @param seed - seed
 * @returns all draws of each
 */
export function drawsAt(
  program: Program,
  readings: readonly Reading[],
  count: number,
  seed: number,
): readonly Float64Array[] {
  const found = readings.map(() => new Float64Array(count));
  const needed = new Set(readings.flatMap(({ needs }) => needs));
  drawsOf(program.nodes, count, seed).each(needed, (start, end, values) => {
    for (let i = 0; i < end - start; i++) {
      const node: Node = (at) => values[at]?.[i] ?? NaN;
      readings.forEach(({ value }, r) => {
        found[r]![start + i] = value(node);
      });
    }
  });
  return found;
}

/**
 * Median and 95 % interval of draws.
 *
 * @param draws - the draws
 * @returns their quantiles
 */
export function rangeOf(draws: Float64Array): Ranged {
  const [low = NaN, median = NaN, high = NaN] = quantiles(draws, [0.025, 0.5, 0.975]);
  return { low, median, high };
}
