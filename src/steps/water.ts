/**
 * Water on cloth as it passes a step: how much stays, how much leaves, part by part.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { product } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth, WaterPart } from "./cloth.js";
import type { StepFlow } from "./flows.js";
import type { StepContext } from "./step.js";
import type { Term } from "./term.js";

const LITRE = constant("litre-of-water", 1, "L/kg", "one litre of water for one kilogram");

const MASS = amountNamed("mass");

/**
 * Water on cloth of one moisture, per conditioned mass.
 *
 * @param context - the step, for the bone-dry share
 * @param moisture - kg water per kg bone dry
 * @returns kg water per kg conditioned
 */
export function waterAt(context: StepContext, moisture: Quantity): Quantity {
  return product("water-on-cloth", moisture, context.kind.dryShare);
}

/**
 * Moisture of cloth as one number, when it does not depend on what lots logged.
 *
 * @param context - the step, for the bone-dry share
 * @param cloth - the cloth
 * @returns kg water per kg bone dry, or undefined when each lot has its own
 */
export function moistureOf(context: StepContext, cloth: Cloth): Quantity | undefined {
  if (cloth.moisture !== undefined) return cloth.moisture;
  if (cloth.water.some((part) => part.amount !== MASS)) return undefined;
  return derive(
    "moisture-in",
    "kg/kg",
    "water on cloth / bone-dry share",
    [context.kind.dryShare, ...cloth.water.map((part) => part.rate)],
    (dryShare = 1, ...water) => sum(water) / dryShare,
  );
}

/**
 * Moisture behind a machine that can only take water off: its setting, or what came in if that is less.
 *
 * @param context - the step
 * @param cloth - cloth as it comes in
 * @param setting - moisture the machine leaves on wet cloth
 * @returns kg water per kg bone dry; the setting itself when the moisture before depends on the lots
 */
export function noWetter(context: StepContext, cloth: Cloth, setting: Quantity): Quantity {
  const before = moistureOf(context, cloth);
  if (before === undefined) return setting;
  return derive(
    "moisture-left",
    "kg/kg",
    "the lesser of moisture-out and moisture before",
    [setting, before],
    (out = 0, into = 0) => Math.min(out, into),
  );
}

/**
 * Water that leaves the cloth, part by part.
 *
 * @param cloth - cloth as it comes in
 * @param left - water that stays on it, per conditioned mass [kg/kg]
 * @returns kg of water per amount; the parts add up to what leaves, and are negative where cloth takes up
 */
export function released(cloth: Cloth, left: Quantity): readonly WaterPart[] {
  const own = cloth.water.filter((part) => part.amount === MASS);
  const others = cloth.water.filter((part) => part.amount !== MASS);
  const rate = derive(
    "water-released",
    "kg/kg",
    "water before − water left",
    [left, ...own.map((part) => part.rate)],
    (out = 0, ...water) => sum(water) - out,
  );
  return [{ amount: MASS, rate }, ...others];
}

/**
 * Terms of a water flow, in litres.
 *
 * @param flow - where the water goes or comes from
 * @param parts - kg of water per amount
 * @returns one term a part
 */
export function waterTerms(flow: StepFlow, parts: readonly WaterPart[]): readonly Term[] {
  return parts.map(({ amount, rate }) => ({ flow, amount, rate: product(flow, rate, LITRE) }));
}

function sum(numbers: readonly number[]): number {
  let result = 0;
  for (const number of numbers) result += number;
  return result;
}
