import type { Quantity } from "../numbers/quantity.js";
import type { Amount } from "./amounts.js";
import type { Placement, StepFlow, Substance } from "./flows.js";

/** Which flow a term adds to: a plain flow, or a substance with the place it is put. [g] */
export type FlowRef = StepFlow | { readonly substance: Substance; readonly placement: Placement };

/**
 * Part of a step's time that a term belongs to, where it is told from the rest: `waiting` is the time in which
 * a machine is kept hot, warmed up or on standby without cloth in it.
 */
export type TermPart = "waiting";

/**
 * One term of a step: flow = amount × rate. The amount is additive and certain; the rate holds all
 * that is drawn. The unit of the flow is the unit of the amount times the unit of the rate.
 */
export interface Term {
  /** What it adds to. */
  readonly flow: FlowRef;
  /** What the lots ask for. */
  readonly amount: Amount;
  /** Flow per unit of amount. */
  readonly rate: Quantity;
  /** Part of the time it belongs to; absent while cloth runs. */
  readonly part?: TermPart;
}

/**
 * Name of a flow for sums and prints.
 *
 * @param flow - the flow of a term
 * @returns the name itself, or `substance@placement`
 */
export function flowName(flow: FlowRef): string {
  return typeof flow === "string" ? flow : `${flow.substance}@${flow.placement}`;
}
