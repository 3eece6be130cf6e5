import type { Quantity } from "../numbers/quantity.js";
import type { Amount } from "./amounts.js";

/** A part of the water that cloth carries: kg of water = amount × rate. */
export interface WaterPart {
  /** What the lots ask for. */
  readonly amount: Amount;
  /** Water per unit of amount. [kg] */
  readonly rate: Quantity;
}

/** Cloth as it is handed from one step to the next. */
export interface Cloth {
  /** All water on it, the regain included; the parts add up. */
  readonly water: readonly WaterPart[];
  /** Its temperature. [°C] */
  readonly temperature: Quantity;
  /**
   * Its moisture as one number when it has one: after storing the regain, after drying or squeezing the
   * setting. Absent after a pad or a bath, when it depends on the lots. [kg water / kg bone dry]
   */
  readonly moisture?: Quantity;
}
