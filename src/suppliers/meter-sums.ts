/**
 * Meters of the whole site beside what the lots come to.
 *
 *     ratio = M / Σ        gap = (M − Σ) / M
 *
 * M what the meters of one quantity show, Σ what lots of the same months take. Nothing is corrected by it: a site
 * meter feeds more than printing, and who runs the house must say what.
 */

import type { IndicatorId } from "../account/indicators.js";
import type { Pack } from "./schema.js";

/** Quantities that have both a meter and an indicator in the same unit. */
const KNOWN = ["water", "electricity"] as const;

/** Units of water that hold a thousand litres. */
const CUBIC = new Set(["m3", "m³"]);

/** Meters of one quantity. */
export interface MeterSum {
  /** Quantity. */
  readonly quantity: "water" | "electricity";
  /** Months with readings. */
  readonly months: number;
  /** What the meters show. [L or kWh] */
  readonly metered: number;
  /** What the lots of those months come to. [L or kWh] */
  readonly lots: number;
  /** Accepted area of those months. [m²] */
  readonly area: number;
}

/**
 * Sets meters beside lots. Lots count by the accepted area of the months that were read.
 *
 * @param pack - readings and months
 * @param totalOf - what all lots take, in the unit of the indicator; undefined where it is not known
 * @returns quantities that have readings and lots
 */
export function meterSums(
  pack: Pick<Pack, "meters" | "months">,
  totalOf: (id: IndicatorId) => number | undefined,
): readonly MeterSum[] {
  const { meters, months } = pack;
  const all = months.reduce((sum, { accepted }) => sum + accepted, 0);
  return KNOWN.flatMap((quantity): readonly MeterSum[] => {
    const read = meters.filter((meter) => meter.quantity === quantity);
    const days = new Set(read.flatMap((meter) => meter.months.map(({ month }) => month)));
    const area = months.reduce(
      (sum, { month, accepted }) => sum + (days.has(month) ? accepted : 0),
      0,
    );
    const lots = ((totalOf(quantity) ?? 0) * area) / all;
    const metered = read.reduce(
      (sum, { unit, months: rows }) =>
        sum + (CUBIC.has(unit) ? 1000 : 1) * rows.reduce((all, one) => all + one.metered, 0),
      0,
    );
    return lots > 0 && metered > 0 ? [{ quantity, months: days.size, metered, lots, area }] : [];
  });
}

/**
 * Gaps by quantity, as claims ask for them.
 *
 * @param sums - meters beside lots
 * @returns share of the meter that lots do not come to; below 0 where they come to more
 */
export function meterGaps(
  sums: readonly MeterSum[],
): ReadonlyMap<"water" | "electricity" | "gas", number> {
  return new Map(sums.map(({ quantity, metered, lots }) => [quantity, (metered - lots) / metered]));
}
