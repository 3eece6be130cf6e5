/**
 * What meters can correct: every machine and carrier that one of them counts, and boilers whose fuel they count.
 */

import type { Carrier } from "../account/calibration.js";
import type { Program } from "../account/program.js";
import type { Group } from "../ledger/ledger.js";
import { type Quantity, weighedSum } from "../numbers/quantity.js";
import { ratio } from "../steps/algebra.js";
import type { MeterInUse } from "./in-use.js";
import { machineAmount } from "./machine-amount.js";
import { amountsUnder, type MeteredPart, meteredParts } from "./metered-flows.js";

/** Something that is corrected as one. */
export interface State {
  /** Site. */
  readonly site: string;
  /** Machine; `boiler` for the boiler of the site. */
  readonly machine: string;
  /** Carrier; `boiler` for fuel per steam. */
  readonly carrier: Carrier | "boiler";
  /** What it comes to over all lots as printed. */
  readonly amount: Quantity;
}

/**
 * Finds them.
 *
 * @param program - the program, not corrected
 * @param groups - all lots
 * @param meters - meters in use
 * @returns each once
 */
export function statesOf(
  program: Program,
  groups: readonly Group[],
  meters: readonly MeterInUse[],
): readonly State[] {
  const amounts = amountsUnder(program, groups, () => 1);
  const states = new Map<string, State>();
  for (const { site, parts, quantity } of meters) {
    for (const { machine, carrier } of parts) {
      if (carrier === undefined) continue;
      const key = keyOf(site, machine, carrier);
      if (states.has(key)) continue;
      const amount = machineAmount(program, { site, machine, carrier }, amounts);
      states.set(key, { site, machine, carrier, amount });
    }
    const key = keyOf(site, "boiler", "boiler");
    if (states.has(key) || !parts.some(({ boiler }) => boiler)) continue;
    const asked = { site, quantity };
    const fired = meteredParts(program, asked, amounts, `boiler of ${site}`);
    const steam = meteredParts(
      program,
      { site, quantity: "steam", machines: machinesOf(fired) },
      amounts,
      `users of ${site}`,
    );
    const total = (id: string, some: readonly MeteredPart[]): Quantity =>
      weighedSum(
        id,
        "1",
        "Σ",
        some.map(({ amount }) => ({ of: amount, weight: 1 })),
      );
    const amount = ratio(
      `boiler of ${site}`,
      "1",
      total(
        `fired in the boiler of ${site}`,
        fired.filter(({ boiler }) => boiler),
      ),
      total(`steam used at ${site}`, steam),
    );
    states.set(key, { site, machine: "boiler", carrier: "boiler", amount });
  }
  return [...states.values()];
}

function machinesOf(parts: readonly MeteredPart[]): readonly string[] {
  return [...new Set(parts.filter(({ boiler }) => boiler).map(({ machine }) => machine))];
}

/**
 * Name of a state.
 *
 * @param site - site
 * @param machine - machine
 * @param carrier - carrier
 * @returns the name
 */
export function keyOf(site: string, machine: string, carrier: string): string {
  return `${site}/${machine}/${carrier}`;
}
