/**
 * The water identity: what comes into a step as water, steam, vapour or ink leaves it in some way.
 *
 *     process + in with cloth + in ink + open steam + from air = evaporated + drained + wasted + out with cloth
 *
 * Steam is counted in kilograms, one for one litre. Vapour from burning fuel stays outside.
 */

import type { StepFlow } from "./flows.js";

/** Flows that bring water into a step, beside what the cloth brings. */
export const WATER_IN: readonly StepFlow[] = [
  "water.process",
  "water.in-ink",
  "steam.open",
  "water.from-air",
];

/** Flows that take water out of a step, beside what the cloth takes along. */
export const WATER_OUT: readonly StepFlow[] = ["water.evaporated", "water.drained", "water.wasted"];

/**
 * Says what is missing in a balance of water.
 *
 * @param flow - each flow of the step [L or kg]
 * @param clothIn - water on the cloth as it comes in [kg]
 * @param clothOut - water on the cloth as it goes out [kg]
 * @returns water in less water out; 0 when the balance closes [kg]
 */
export function waterGap(
  flow: (name: StepFlow) => number,
  clothIn: number,
  clothOut: number,
): number {
  let gap = clothIn - clothOut;
  for (const name of WATER_IN) gap += flow(name);
  for (const name of WATER_OUT) gap -= flow(name);
  return gap;
}
