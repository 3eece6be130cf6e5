/**
 * Whether site meters bear out what the lots come to.
 *
 *     unexplained = 1 − Σ / M
 *
 * M what the meters show, Σ what lots of the same months take. A site meter feeds more than printing; but where more
 * of it is unexplained than explained, or where nothing was read, the order of houses may hang on what nobody
 * has told. Such a house keeps its value and is told apart from nobody.
 */

import type { IndicatorId } from "../account/indicators.js";
import type { MeterSum } from "./meter-sums.js";

/** Most of a meter that lots may leave unexplained. [-] */
export const MOST_UNEXPLAINED = 0.5;

/** Least that meters may show, in what the lots come to: lots cannot take much more than came in. [-] */
export const LEAST_METERED = 0.8;

type Metered = MeterSum["quantity"];

/** Meter that bears on an indicator; on the others none does. */
const BEARS: Readonly<Partial<Record<IndicatorId, Metered>>> = {
  water: "water",
  evaporated: "water",
  discharged: "water",
  consumed: "water",
  energy: "electricity",
  electricity: "electricity",
  "co2-location": "electricity",
  "co2-market": "electricity",
  "scope-2-location": "electricity",
  "scope-2-market": "electricity",
};

/** What meters say of an indicator at a supplier. */
export interface BorneOut {
  /** Quantity that was metered; absent where no meter bears on the indicator. */
  readonly quantity?: Metered;
  /** Meter over accepted area of the months read; absent without readings. [L/m² or kWh/m²] */
  readonly perArea?: number;
  /** Meter over lots; absent without readings. [-] */
  readonly ratio?: number;
  /** Share of the meter that lots do not explain, 1 without readings; below 0 where lots come to more. [-] */
  readonly unexplained?: number;
  /** Whether the supplier can be told apart from others by it. */
  readonly holds: boolean;
}

/**
 * Judges an indicator by the meter that bears on it.
 *
 * @param sums - site meters of a supplier beside its lots
 * @param id - the indicator
 * @returns what the meter says
 */
export function borneOut(sums: readonly MeterSum[], id: IndicatorId): BorneOut {
  const quantity = BEARS[id];
  if (quantity === undefined) return { holds: true };
  const found = sums.find((one) => one.quantity === quantity);
  if (found === undefined) return { quantity, unexplained: 1, holds: false };
  const ratio = found.metered / found.lots;
  const unexplained = 1 - 1 / ratio;
  return {
    quantity,
    perArea: found.metered / found.area,
    ratio,
    unexplained,
    holds: unexplained <= MOST_UNEXPLAINED && ratio >= LEAST_METERED,
  };
}
