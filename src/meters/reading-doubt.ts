/**
 * How far a sum of readings may be from what lots take by a model that is right: the error of the meter, and the
 * scatter of lots.
 */

import type { Program } from "../account/program.js";
import type { Group } from "../ledger/ledger.js";
import type { Leaf } from "../numbers/quantity.js";
import type { Counted } from "./months.js";

/** Share within which 95 of 100 readings are right where the plant file says none. Common practice, no source. */
export const ACCURACY = { water: 0.02, electricity: 0.02, gas: 0.02, steam: 0.05 } as const;

/**
 * Standard deviation of what a lot takes about what its settings ask for, as a share. Draws hold doubt about means
 * alone, so over n lots a reading and its model differ by this over √n besides. Common practice, no source.
 */
const SCATTER = 0.12;

/**
 * Doubt that the scatter of lots adds to a sum over them.
 *
 * @param lots - number of lots
 * @returns share within which 95 of 100 sums lie
 */
export function scatterOf(lots: number): number {
  return (1.959964 * SCATTER) / Math.sqrt(lots);
}

/** Machines of a site, or all of it. */
export interface Place {
  /** Site. */
  readonly site: string;
  /** Machines; all of the site when absent. */
  readonly machines?: readonly string[];
}

/**
 * Number of lots that pass machines.
 *
 * @param program - the program
 * @param groups - the lots
 * @param where - where they pass
 * @returns lots, 1 at least
 */
export function lotsBehind(program: Program, groups: readonly Group[], where: Place): number {
  const { site, machines } = where;
  let lots = 0;
  for (const group of groups) {
    const { key } = group;
    const arm = program.classes[program.classOf(key) ?? -1]?.arms[key.own];
    if (arm === undefined || key.site !== site) continue;
    if (machines === undefined || arm.steps.some(({ machine }) => machines.includes(machine)))
      lots += group.lots;
  }
  return Math.max(1, lots);
}

/**
 * A sum of readings with its error.
 *
 * @param name - the meter
 * @param total - the sum
 * @param accuracy - share within which 95 of 100 are right
 * @param quantity - what it counts
 * @returns the leaf
 */
export function readingLeaf(
  name: string,
  total: number,
  accuracy: number,
  quantity: Counted,
): Leaf {
  return {
    kind: "leaf",
    id: `meter.reading @ meter ${name}`,
    factor: "meter.reading",
    unit: { water: "L", electricity: "kWh", gas: "kWh", steam: "kg" }[quantity],
    words: `what meter ${name} counted`,
    spread: {
      shape: "lognormal",
      value: total,
      gsd: Math.exp(accuracy / 1.959964),
      limits: [0, Infinity],
    },
    provenance: "plant",
    source: "meters.csv",
  };
}
