/**
 * Where a machine takes its heat from, and what it draws there for the heat it needs.
 */

import { derive, type Quantity } from "../numbers/quantity.js";
import type { StepFlow } from "./flows.js";
import type { ChoiceSpec, StepContext } from "./step.js";

/** Ways to heat a machine. */
export const HEAT_SOURCES = ["burner", "oil", "electric", "steam-coil"] as const;

/** A way to heat a machine. */
export type HeatSource = (typeof HEAT_SOURCES)[number];

/** Ways to reach temperatures that steam of common pressure does not. */
export const DRY_HEAT_SOURCES = ["electric", "oil", "burner"] as const;

/**
 * The choice of a heat source.
 *
 * @param words - what is heated, in plain words
 * @param options - sources that can serve, the usual one first
 * @returns the choice, its usual answer the first option
 */
export function heatChoice(
  words: string,
  options: readonly [HeatSource, ...HeatSource[]],
): ChoiceSpec {
  return { words, options, usual: options[0] };
}

/**
 * Reads a choice of heat source.
 *
 * @param context - the step
 * @param name - short name of the choice
 * @returns the source
 * @throws TypeError when the answer is no heat source: a fault of whoever resolved the choice
 */
export function chosenSource(context: StepContext, name: string): HeatSource {
  const answer = context.choose(name);
  const source = HEAT_SOURCES.find((known) => known === answer);
  if (source === undefined) throw new TypeError(`${name} = ${answer} is no heat source.`);
  return source;
}

/**
 * Flow that a heat source feeds from.
 *
 * @param source - the way of heating
 * @returns `heat.burner`, `heat.oil`, `heat.electric` or `heat.steam-coil`
 */
export function heatFlow(source: HeatSource): StepFlow {
  return `heat.${source}`;
}

/**
 * Heat drawn from a source for heat needed at the machine, where no flue gas enters the process: a
 * burner leaves a little of its fuel unburnt, the others hand over what they are asked for.
 *
 * @param context - the step, for the efficiency of its burner
 * @param source - the way of heating
 * @param needed - heat needed per unit of amount
 * @returns heat drawn per unit of amount
 */
export function drawnFrom(context: StepContext, source: HeatSource, needed: Quantity): Quantity {
  if (source !== "burner") return needed;
  return derive(
    "fired",
    needed.unit,
    "heat needed / burner efficiency",
    [needed, context.burnerEfficiency],
    (heat = 0, efficiency = 1) => heat / efficiency,
  );
}
