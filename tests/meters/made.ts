/** A small mill with a year of lots, and readings of it in which the truth is known. */

import { drawsOf, leafRange } from "../../src/account/draws.js";
import { type Program, writeProgram } from "../../src/account/program.js";
import type { Group } from "../../src/ledger/ledger.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { type MeterInUse, metersInUse } from "../../src/meters/in-use.js";
import { amountsUnder, meteredAt } from "../../src/meters/metered-flows.js";
import type { Counted } from "../../src/meters/months.js";
import type { Reading } from "../../src/meters/reading.js";
import type { Plant } from "../../src/plant/plant.js";
import { PLAIN_LOT } from "../account/plant-file.js";
import { smallMill } from "../report/compose/small-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";

/** Conditions of gas and steam. */
export const CONDITIONS = { netPerGross: 0.9, steamEnthalpy: 2768 };

/** Months of the log. */
export const MONTHS = Array.from(
  { length: 12 },
  (_, i) => `2025-${String(i + 1).padStart(2, "0")}`,
);

/** Metres of every route by month; they vary by 3 to 1. */
const METRES = [900, 1500, 700, 1200, 1800, 600, 1000, 500, 1300, 1600, 1100, 800];

/** Length of every lot. [m] */
const LOT = 50;

/** The made mill. */
export interface MadeMill {
  /** The print house. */
  readonly plant: Plant;
  /** Its lots. */
  readonly groups: readonly Group[];
  /** Program, not corrected. */
  readonly program: Program;
  /** What lots take behind a meter in a month, at medians. */
  readonly takes: (month: string, quantity: Counted, machines?: readonly string[]) => number;
}

/**
 * Makes the mill.
 *
 * @param meters - meters of its plant file
 * @returns mill, lots and program
 */
export function madeMill(meters: Readonly<Record<string, unknown>>): MadeMill {
  const plant = smallMill({ meters });
  const ledger = new Ledger();
  MONTHS.forEach((month, i) => {
    for (const route of ["pigment-calender", "reactive"]) {
      for (let at = 0; at < (METRES[i] ?? 0) / LOT; at++) {
        const lot: Lot = {
          ...PLAIN_LOT,
          lot: `${month} ${route} ${at}`,
          date: `${month}-15`,
          route,
          length: LOT,
        };
        ledger.add(lot, plant);
      }
    }
  });
  const { groups } = ledger.settled();
  const program = writeProgram(plant, SHIPPED, groups, "2026-11-25");
  const medians = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  return {
    plant,
    groups,
    program,
    takes: (month, quantity, machines) => {
      const amounts = amountsUnder(program, groups, (one) => (one === month ? 1 : 0));
      const asked = { site: "main", quantity, ...(machines === undefined ? {} : { machines }) };
      return [...meteredAt(program, asked, amounts, medians).values()].reduce((a, b) => a + b, 0);
    },
  };
}

/**
 * Readings of whole months.
 *
 * @param meter - the meter
 * @param of - amount by month
 * @returns a reading a month
 */
export function monthly(meter: string, of: (month: string) => number): readonly Reading[] {
  return MONTHS.map((month) => {
    const [year = 0, number = 1] = month.split("-").map(Number);
    const to = new Date(Date.UTC(year, number, 0)).toISOString().slice(0, 10);
    return { meter, from: `${month}-01`, to, amount: of(month) };
  });
}

/**
 * Meters in use.
 *
 * @param mill - the mill
 * @param readings - its readings
 * @returns them
 */
export function inUse(mill: MadeMill, readings: readonly Reading[]): readonly MeterInUse[] {
  const { plant, program, groups } = mill;
  return metersInUse({
    plant,
    program,
    groups,
    readings,
    conditions: CONDITIONS,
    isWhole: () => true,
  });
}

/**
 * Draws of a quantity of a program.
 *
 * @param program - the program
 * @param node - its number
 * @param count - number of draws
 * @returns the draws
 */
export function drawsOfNode(program: Program, node: number, count: number): Float64Array {
  return drawsOf(program.nodes, count, 1).of(node);
}
