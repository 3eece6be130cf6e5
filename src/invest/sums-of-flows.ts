/**
 * Flows by machine added up into quantities.
 */

import { mean } from "../numbers/quantiles.js";
import { addedBy, avoidedBy, type Charged } from "./avoidable.js";
import type { Drawn } from "./inputs.js";
import type { FlowsByMachine } from "./lot-flows.js";
import type { Quantities } from "./study.js";

/**
 * Flows of lots, standby included.
 *
 * @param flows - by flow and machine
 * @param id - start of their ids
 * @returns quantities by flow
 */
export function totalFlows(flows: FlowsByMachine, id: string): Quantities {
  return new Map(
    [...flows].map(([flow, machines]) => [
      flow,
      quantity(`${id}.${flow}`, [...machines.values()].map(addedBy)),
    ]),
  );
}

/**
 * Flows of lots that leave their machines, and what stays behind there.
 *
 * @param flows - by flow and machine
 * @param removed - machines taken out
 * @param id - start of their ids
 * @returns both by flow
 */
export function goingFlows(
  flows: FlowsByMachine,
  removed: ReadonlySet<string>,
  id: string,
): { readonly leaves: Quantities; readonly stays: Quantities } {
  const leaves = new Map<string, Drawn>();
  const stays = new Map<string, Drawn>();
  for (const [flow, machines] of flows) {
    const goes = [...machines].map(([machine, charged]) =>
      avoidedBy(charged, removed.has(machine)),
    );
    const kept = [...machines].flatMap(([machine, { waiting }]) =>
      removed.has(machine) ? [] : [waiting],
    );
    leaves.set(flow, quantity(`${id}.leaves.${flow}`, goes));
    stays.set(flow, quantity(`${id}.stays.${flow}`, kept));
  }
  return { leaves, stays };
}

/** What tells which machines leave for good. */
export interface Leaving {
  /** Machines taken out. */
  readonly removed: ReadonlySet<string>;
  /** Kind of each machine, by name. */
  readonly kinds: ReadonlyMap<string, string>;
}

/**
 * What lots leave behind kind by kind of machine: a lot that is printed on another printer leaves nothing at the
 * printers, one that is no longer steamed leaves all of its steam. Of these gross quantities, not of what is left
 * once all kinds are set against each other, a share may be paid for all the same.
 *
 *     gone = Σ over kinds of max(0, leaves − comes)
 *
 * @param dye - flows on the routes the lots took, by flow and machine
 * @param pigment - flows on the route they would take
 * @param leaving - machines taken out, and kinds
 * @param id - start of their ids
 * @returns quantities by flow
 */
export function goneFlows(
  dye: FlowsByMachine,
  pigment: FlowsByMachine,
  leaving: Leaving,
  id: string,
): Quantities {
  const { removed, kinds } = leaving;
  return new Map(
    [...dye].map(([flow, machines]) => {
      const byKind = new Map<string, Float64Array>();
      const add = (machine: string, amount: Float64Array, sign: 1 | -1): void => {
        const kind = kinds.get(machine) ?? machine;
        const sum = byKind.get(kind) ?? new Float64Array(amount.length);
        amount.forEach((value, i) => (sum[i] = (sum[i] ?? 0) + sign * value));
        byKind.set(kind, sum);
      };
      for (const [machine, charged] of machines)
        add(machine, avoidedBy(charged, removed.has(machine)), 1);
      for (const [machine, charged] of pigment.get(flow) ?? []) add(machine, addedBy(charged), -1);
      const parts = [...byKind.values()].map((net) => net.map((value) => Math.max(0, value)));
      return [flow, quantity(`${id}.${flow}`, parts)];
    }),
  );
}

/**
 * Hours of each machine.
 *
 * @param machines - hours by machine
 * @param id - start of their ids
 * @returns quantities by machine
 */
export function machineHours(machines: ReadonlyMap<string, Charged>, id: string): Quantities {
  return new Map(
    [...machines].map(([machine, charged]) => [
      machine,
      quantity(`${id}.${machine}`, [addedBy(charged)]),
    ]),
  );
}

// The central value is the mean, so that parts add up to wholes.
function quantity(id: string, parts: readonly Float64Array[]): Drawn {
  const [first] = parts;
  if (first === undefined) return { id, central: 0 };
  const draws = new Float64Array(first.length);
  for (const part of parts) {
    for (let i = 0; i < draws.length; i++) draws[i] = (draws[i] ?? 0) + (part[i] ?? 0);
  }
  return { id, central: mean(draws), draws };
}
