/**
 * Meters of a world: what they read where the truth is known, and the account that they correct.
 */

import { type Account, accountOf } from "../../src/account/account.js";
import { calibrated } from "../../src/account/calibration.js";
import type { Program } from "../../src/account/program.js";
import type { Group } from "../../src/ledger/ledger.js";
import { calibrate } from "../../src/meters/calibrate.js";
import { metersInUse } from "../../src/meters/in-use.js";
import { amountsUnder, meteredAt } from "../../src/meters/metered-flows.js";
import type { Counted } from "../../src/meters/months.js";
import type { Reading } from "../../src/meters/reading.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import type { MeterText } from "../../src/plant/meter-part.js";
import type { Plant } from "../../src/plant/plant.js";
import { WORLD_MILL } from "./worlds.js";

/** Which meters a world has. */
export type WorldMeters = "site" | "machines";

const SITE: Readonly<Record<string, MeterText>> = {
  "water-main": { quantity: "water", unit: "L", covers: "site" },
  "power-main": { quantity: "electricity", unit: "kWh", covers: "site" },
  "gas-main": { quantity: "gas", unit: "kWh", covers: "site", basis: "net" },
};

const MACHINES: Readonly<Record<string, MeterText>> = {
  ...SITE,
  "range-water": at("water", "L", "range", "water-main"),
  "range-steam": at("steam", "kg", "range"),
  "steamer-steam": at("steam", "kg", "steamer"),
  "stenter-gas": { ...at("gas", "kWh", "stenter-1", "gas-main"), basis: "net" },
  "printer-power": at("electricity", "kWh", "printer", "power-main"),
  "printer-water": at("water", "L", "printer", "water-main"),
};

/** Ends of the share of a meter that no lot asks for, as the truth has it: of a site and of a machine. */
const NO_LOT = { site: [0.03, 0.4], machine: [0.005, 0.08] } as const;

/** Half the interval within which 95 of 100 readings are right. */
const ACCURACY = { water: 0.02, electricity: 0.02, gas: 0.02, steam: 0.05 } as const;

const CONDITIONS = { netPerGross: 0.9, steamEnthalpy: 2768 };

/** One world. */
export interface MeteredWorld {
  /** Which meters it has. */
  readonly meters: WorldMeters;
  /** The program; its quantities are copied. */
  readonly program: Program;
  /** Lots as they were. */
  readonly actual: readonly Group[];
  /** Program and lots as they are logged. */
  readonly logged: { readonly program: Program; readonly groups: readonly Group[] };
  /** True value of a leaf. */
  readonly truth: (leaf: Leaf) => number;
  /** Standard normal score of the world, by name. */
  readonly score: (name: string) => number;
  /** Draws of the report. */
  readonly draws: number;
  /** Its seed. */
  readonly seed: number;
}

/**
 * The account of a world as its meters correct it.
 *
 * @param world - the world
 * @returns the account
 */
export function meteredAccount(world: MeteredWorld): Account {
  const { meters, logged, draws, seed } = world;
  const text = meters === "site" ? SITE : MACHINES;
  const plant: Plant = { ...WORLD_MILL, text: { ...WORLD_MILL.text, meters: text } };
  // Sums of this world must not stay for the next.
  const program: Program = {
    ...logged.program,
    nodes: logged.program.nodes.with((leaf) => leaf),
  };
  const asked = { plant, program, groups: logged.groups, conditions: CONDITIONS };
  const inUse = metersInUse({ ...asked, readings: readingsOf(world, text), isWhole: () => true });
  const found = calibrate({ program, groups: logged.groups, meters: inUse, draws, seed });
  if (found === undefined) throw new Error("The meters of a world correct nothing.");
  return accountOf(calibrated(program, found.calibration), draws, seed);
}

function readingsOf(
  { program, actual, truth, score }: MeteredWorld,
  text: Readonly<Record<string, MeterText>>,
): readonly Reading[] {
  const values = program.nodes.evaluate(truth);
  const months = [...new Set(actual.map(({ key }) => key.month))].sort();
  const takes = (month: string, meter: MeterText): number => {
    const amounts = amountsUnder(program, actual, (one) => (one === month ? 1 : 0));
    const machines = meter.covers === "site" ? {} : { machines: meter.covers.machines };
    const what = { site: "main", quantity: meter.quantity as Counted, ...machines };
    return [...meteredAt(program, what, amounts, values).values()].reduce((a, b) => a + b, 0);
  };
  const lots = new Map(
    Object.entries(text).map(([name, meter]) => [name, months.map((month) => takes(month, meter))]),
  );
  // What no lot asks for runs evenly, whatever is printed.
  const streams = new Map<string, number>();
  for (const [name, meter] of Object.entries(text)) {
    const [low, high] = NO_LOT[meter.covers === "site" ? "site" : "machine"];
    const middle = Math.sqrt(low * high);
    const share = Math.min(
      0.8,
      middle * Math.exp((Math.log(high / low) / 3.919928) * score(`no lot at ${name}`)),
    );
    const all = (lots.get(name) ?? []).reduce((sum, value) => sum + value, 0);
    streams.set(name, ((share / (1 - share)) * all) / months.length);
  }
  return Object.entries(text).flatMap(([name, meter]) => {
    const below = Object.keys(text).filter((other) => text[other]?.within === name);
    const error = ACCURACY[meter.quantity as Counted] / 1.959964;
    const by = Math.exp(error * score(`meter ${name}`));
    const stream = [name, ...below].reduce((sum, one) => sum + (streams.get(one) ?? 0), 0);
    return months.map((month, i): Reading => ({
      meter: name,
      from: `${month}-01`,
      to: lastOf(month),
      amount: ((lots.get(name)?.[i] ?? 0) + stream) * by,
    }));
  });
}

function lastOf(month: string): string {
  const [year = 0, number = 1] = month.split("-").map(Number);
  return new Date(Date.UTC(year, number, 0)).toISOString().slice(0, 10);
}

function at(quantity: Counted, unit: string, machine: string, within?: string): MeterText {
  return {
    quantity,
    unit,
    covers: { machines: [machine] },
    ...(within === undefined ? {} : { within }),
  };
}
