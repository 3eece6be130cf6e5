/**
 * Totals of both arms in one world, by another way than the account takes: no draws, no groups, term by term.
 */

import type { IndicatorId } from "../../src/account/indicators.js";
import { fenceOf, unityOf } from "../../src/account/outlet.js";
import { type Program, writeProgram } from "../../src/account/program.js";
import type { Group } from "../../src/ledger/ledger.js";
import { interval95, medianOf } from "../../src/numbers/distributions.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { groupsOf, lotsOf, WORLD_MILL } from "./worlds.js";
import { machineOf } from "./worlds-truth.js";

/** Day of the reports. */
export const AS_OF = "2026-11-25";

/**
 * The program of the mill, with every class of lots that a world can have. Rates and conversions are the same in
 * all worlds; only the amounts change.
 *
 * @returns the program, over a log with all settings at their medians
 */
export function programOfWorlds(): Program {
  // Rates do not hang on what lots log, so any value serves until the settings are known.
  const { actual } = lotsOf({ world: 0, setting: () => 0.5 });
  const program = writeProgram(WORLD_MILL, SHIPPED, groupsOf(actual), AS_OF);
  const setting = settingsOf(program, (leaf) => medianOf(leaf.spread));
  return withAmounts(program, groupsOf(lotsOf({ world: 0, setting }).logged));
}

/**
 * Values of settings by their streams.
 *
 * @param program - the program
 * @param value - value of a leaf
 * @returns value of a stream
 */
export function settingsOf(
  program: Program,
  value: (leaf: Leaf) => number,
): (stream: string) => number {
  const leaves = new Map(program.nodes.leaves().map(({ leaf }) => [leaf.id, leaf]));
  return (stream) => {
    const leaf = leaves.get(stream);
    if (leaf === undefined) throw new Error(`The mill has no setting ${stream}.`);
    return value(leaf);
  };
}

/**
 * A program over other lots of the same classes.
 *
 * @param program - the program
 * @param groups - groups of the other lots
 * @returns the program with their amounts
 */
export function withAmounts(program: Program, groups: readonly Group[]): Program {
  const sums = program.classes.map(() => new Float64Array(AMOUNTS.length));
  for (const { key, amounts } of groups) {
    const sum = sums[program.classOf(key) ?? -1];
    if (sum === undefined) throw new Error(`No class holds lots of ${key.fabric} by ${key.route}.`);
    amounts.forEach((value, i) => (sum[i] = (sum[i] ?? 0) + value));
  }
  return {
    ...program,
    classes: program.classes.map((lotClass, at) => ({ ...lotClass, amounts: sums[at]! })),
  };
}

/**
 * Totals of both arms for one value of each leaf, term by term: flow at the machine, flows at the fence,
 * indicators.
 *
 * @param program - terms with their amounts
 * @param truth - value of each leaf
 * @returns totals by arm and indicator
 */
export function totalsAt(
  program: Program,
  truth: (leaf: Leaf) => number,
): Readonly<Record<"pigment" | "dye", ReadonlyMap<IndicatorId, number>>> {
  const unity = unityOf(program.nodes);
  const values = program.nodes.evaluate(truth);
  const totals = { pigment: new Map<IndicatorId, number>(), dye: new Map<IndicatorId, number>() };
  for (const { lotClass: at, arm, flow, amount, rate } of program.terms) {
    const lotClass = program.classes[at]!;
    const atMachine = lotClass.amounts[amount]! * values[rate]!;
    const outlet = lotClass.outlets[arm];
    for (const { to, node } of fenceOf(outlet, flow, unity)) {
      for (const [id, intensities] of outlet.indicators) {
        const intensity = intensities.get(to);
        if (intensity === undefined) continue;
        const part = atMachine * values[node]! * values[intensity]!;
        totals[arm].set(id, (totals[arm].get(id) ?? 0) + part);
      }
    }
  }
  return totals;
}

/**
 * The side of each setting of a machine on which both arms together take more final energy, all others at
 * their medians.
 *
 * @param program - the program, with amounts
 * @returns 1 where it is the high side, −1 where it is the low one, by stream
 */
export function wastefulIn(program: Program): (stream: string) => number {
  const sides = new Map<string, number>();
  const energyWith = (moved: Leaf, value: number): number => {
    const { pigment, dye } = totalsAt(program, (leaf) =>
      leaf.id === moved.id ? value : medianOf(leaf.spread),
    );
    return (pigment.get("energy") ?? 0) + (dye.get("energy") ?? 0);
  };
  for (const { leaf } of program.nodes.leaves()) {
    if (machineOf(leaf) === undefined || leaf.spread.shape === "fixed") continue;
    const [low, high] = interval95(leaf.spread);
    sides.set(leaf.id, energyWith(leaf, high) < energyWith(leaf, low) ? -1 : 1);
  }
  return (stream) => sides.get(stream) ?? 1;
}
