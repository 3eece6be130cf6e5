/**
 * What leaves and enters the fence of the print house, and how a flow at a machine becomes such flows.
 */

import type { Quantity } from "../numbers/quantity.js";

/** One flow at the fence per unit of a flow at a machine. */
export interface Conversion {
  /** Flow at the fence: `electricity`, `fuel.natural-gas`, `water.withdrawn`, … */
  readonly to: string;
  /** Flow at the fence per unit of the flow at the machine. */
  readonly rate: Quantity;
}

/** Conversions by the name of the flow at the machine. */
export type Conversions = ReadonlyMap<string, readonly Conversion[]>;

/** Flows at the fence, with unit and meaning; fuels are named `fuel.NAME` in MJ of net calorific value. */
export const FENCE_FLOWS: Readonly<
  Record<string, { readonly unit: string; readonly words: string }>
> = {
  electricity: { unit: "kWh", words: "electricity bought" },
  "steam.bought": { unit: "MJ", words: "heat bought as steam" },
  "water.withdrawn": { unit: "L", words: "water withdrawn" },
  "water.discharged": { unit: "L", words: "water discharged" },
  "water.evaporated": { unit: "L", words: "water evaporated" },
  "water.in-ink": { unit: "L", words: "water that came in with ink" },
  "water.from-air": { unit: "L", words: "moisture taken up from hall air" },
  "water.wasted": { unit: "L", words: "water in waste" },
  "water.steam-bought": { unit: "L", words: "bought steam that is not returned, as water" },
  cod: { unit: "g", words: "chemical oxygen demand to the drain, before treatment" },
  nitrogen: { unit: "g", words: "nitrogen to the drain, before treatment" },
  salt: { unit: "g", words: "dissolved salts to the drain" },
  "carbon.air": { unit: "g", words: "organic carbon to air" },
  formaldehyde: { unit: "g", words: "formaldehyde to air" },
  ink: { unit: "L", words: "ink used" },
  paper: { unit: "m2", words: "protecting paper used up" },
  chemicals: { unit: "g", words: "chemicals used, ink apart" },
  "machine.hours": { unit: "h", words: "machine time" },
  "bought.electricity": { unit: "kWh", words: "electricity used by a partner house" },
  "bought.heat": { unit: "MJ", words: "fuel heat used by a partner house" },
};
