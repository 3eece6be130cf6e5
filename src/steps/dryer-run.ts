import type { Quantity } from "../numbers/quantity.js";
import type { HeatSource } from "./heat-source.js";
import type { HourPart } from "./hours.js";

/**
 * How the air of a dryer is ruled.
 *
 * - `rise`: dampers hold the exhaust at a rise of humidity over the hall [kg/kg] and a temperature [°C]
 * - `flow`: fans move dry air by the hour [kg/h], hotter than the cloth by an approach [°C]
 * - `still`: no air is moved; vapour leaves at the temperature of the cloth
 *
 * Recovery is the share of the exhaust's sensible heat given back to the incoming air. Only the latter two
 * are ways to fix print, so only they take a logged fixation temperature.
 */
export type Air =
  | {
      readonly rise: Quantity;
      readonly exhaust: Quantity;
      readonly recovery: Quantity;
      /** What the exhaust fan can move; 0 where nobody said. [kg/h] */
      readonly fan: Quantity;
    }
  | { readonly flow: Quantity; readonly approach: Quantity; readonly recovery: Quantity }
  | "still";

/** What a dryer is told besides its context. */
export interface DryerRun {
  /** Hours the machine runs. */
  readonly hours: readonly HourPart[];
  /** Moisture it leaves on wet cloth. [kg/kg bone dry] */
  readonly moistureOut: Quantity;
  /** Temperature of the cloth at the exit; in curing a logged fixation temperature stands for it. [°C] */
  readonly clothOut: Quantity;
  /** How the air is ruled. */
  readonly air: Air;
  /** Loss through casing and ducts while hot. [kW] */
  readonly standing: Quantity;
  /** Electric power while running. [kW] */
  readonly power: Quantity;
  /** Hours hot and waiting per hour running. [-] */
  readonly idle: Quantity;
  /** Share of the running power drawn while waiting. [-] */
  readonly idlePower: Quantity;
  /** Where the heat comes from. */
  readonly heat: HeatSource;
}
