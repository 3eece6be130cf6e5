/**
 * Meters by month, beside the model and what it comes to when corrected.
 */

import { quantile } from "../numbers/quantiles.js";
import type { MeterFound } from "./calibrate.js";
import type { MeterMonth } from "./in-use.js";
import { nameOfPart } from "./metered-flows.js";
import type { Counted } from "./months.js";

/** A month of a meter in print units. */
export interface SeriesMonth {
  /** Month. */
  readonly month: string;
  /** What was counted. */
  readonly metered?: number;
  /** What lots take by the model, at medians, before any correction. */
  readonly modelled?: number;
  /** What machines come to when corrected, by machine; `other` for what no machine takes. */
  readonly machines?: ReadonlyMap<string, number>;
  /** The stream without meter, shared by days. */
  readonly stream?: number;
}

/** One meter's months beside the model. */
export interface MeterMonthSeries {
  /** Meter. */
  readonly meter: string;
  /** What it counts. */
  readonly quantity: Counted;
  /** Unit of both. */
  readonly unit: string;
  /** Machines behind it; absent for a meter of a site. */
  readonly behind?: readonly string[];
  /** Base load a month as it was given or found by regression; absent where only a wide stream stands in its place. */
  readonly base?: number;
  /** Set when a reading was shared among months by days. */
  readonly spread?: true;
  /** Months with either. */
  readonly months: readonly SeriesMonth[];
}

const UNITS = { water: "m³", electricity: "kWh", gas: "kWh net", steam: "kg" } as const;

/**
 * Months of meters.
 *
 * @param meters - meters that corrected the model
 * @returns a series each
 */
export function seriesOf(meters: readonly MeterFound[]): readonly MeterMonthSeries[] {
  return meters.map(({ use, parts, stream }) => {
    const scale = use.quantity === "water" ? 1e-3 : 1;
    const days = use.months.reduce((sum, { covered }) => sum + covered, 0);
    const flowing = stream === undefined ? 0 : quantile(stream.after, 0.5);
    const base =
      stream === undefined || use.stream.by === "wide"
        ? undefined
        : (scale * quantile(stream.before, 0.5)) / days;
    const corrections = new Map(
      use.parts.map((part, k) => [nameOfPart(part), quantile(parts[k]!, 0.5)]),
    );
    const machineOf = new Map(use.parts.map((part) => [nameOfPart(part), part.machine]));
    const machines = (month: MeterMonth): ReadonlyMap<string, number> => {
      const sums = new Map<string, number>();
      for (const [name, value] of month.parts) {
        const machine = machineOf.get(name) ?? "";
        const before = sums.get(machine) ?? 0;
        sums.set(machine, before + scale * value * (corrections.get(name) ?? 1));
      }
      return sums;
    };
    return {
      meter: use.name,
      quantity: use.quantity,
      unit: UNITS[use.quantity],
      ...(use.machines === undefined ? {} : { behind: use.machines }),
      ...(base === undefined ? {} : { base }),
      ...(use.spread ? { spread: true as const } : {}),
      months: use.months.map((month) => ({
        month: month.month,
        metered: scale * month.metered,
        modelled: scale * month.modelled,
        machines: machines(month),
        stream: (scale * flowing * month.covered) / days,
      })),
    };
  });
}
