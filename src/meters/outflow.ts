/**
 * What leaves: effluent, condensate and samples of effluent. They are set beside the model and correct nothing, for
 * a drain that all machines share does not tell them apart.
 *
 *     mean strength = Σ flow × sample / Σ flow,      load = mean strength × effluent
 *
 * A sample below the limit of its method counts half of it; both ends, 0 and the limit, are carried along.
 */

import { siteOfMeter } from "../plant/judge-meters.js";
import type { Plant } from "../plant/plant.js";
import { amountsByMonth } from "./months.js";
import type { Reading } from "./reading.js";

/** A number with the ends that limits leave it. */
export interface Bounded {
  /** Limits at half. */
  readonly value: number;
  /** Limits at 0. */
  readonly low: number;
  /** Limits in full. */
  readonly high: number;
}

/** What leaves a site. */
export interface Outflow {
  /** Site. */
  readonly site: string;
  /** Months with effluent of all meters of it. */
  readonly months: readonly string[];
  /** Effluent over these months; absent without a meter. [L] */
  readonly effluent?: number;
  /** Condensate returned over its months; absent without a meter. [kg] */
  readonly condensate?: number;
  /** Steam metered at the site over the months of condensate; absent without a meter of all of it. [kg] */
  readonly steam?: number;
  /** Samples of COD in these months. */
  readonly samples: number;
  /** Of which below the limit of their method. */
  readonly below: number;
  /** Mean strength, by flow; absent without samples. [g/L] */
  readonly strength?: Bounded;
  /** Samples more than {@link ODD} times the middle one, or less than that part of it. */
  readonly odd: readonly string[];
}

/** A sample that differs from the middle one by more is named. Common practice, no source. */
const ODD = 5;

/**
 * Adds up what leaves.
 *
 * @param plant - the print house
 * @param readings - its readings
 * @param isWanted - months that are looked at
 * @returns one for each site that has a meter of effluent, condensate or samples
 */
export function outflowsOf(
  plant: Plant,
  readings: readonly Reading[],
  isWanted: (month: string) => boolean,
): readonly Outflow[] {
  const meters = Object.entries(plant.text.meters ?? {});
  const sites = Object.keys(plant.sites);
  return sites.flatMap((site): readonly Outflow[] => {
    const of = (quantity: string): readonly string[] =>
      meters
        .filter(
          ([, meter]) =>
            meter.quantity === quantity &&
            meter.covers === "site" &&
            meter.within === undefined &&
            siteOfMeter(meter, sites) === site,
        )
        .map(([name]) => name);
    const total = (names: readonly string[], months: readonly string[]): number =>
      names
        .map((name) => amountsByMonth(readings.filter(({ meter }) => meter === name)))
        .reduce(
          (sum, by) => sum + months.reduce((all, month) => all + (by.get(month)?.amount ?? 0), 0),
          0,
        );
    const monthsOf = (names: readonly string[]): readonly string[] =>
      names
        .map((name) => [...amountsByMonth(readings.filter(({ meter }) => meter === name)).keys()])
        .reduce<readonly string[] | undefined>(
          (common, own) =>
            common === undefined ? own : common.filter((month) => own.includes(month)),
          undefined,
        )
        ?.filter(isWanted)
        .sort() ?? [];
    const [drains, returns, steam, taken] = [
      of("effluent"),
      of("condensate"),
      of("steam"),
      of("cod"),
    ];
    if (drains.length + returns.length + taken.length === 0) return [];
    const months = monthsOf(drains);
    const back = monthsOf([...returns, ...steam]);
    const samples = readings.filter(
      ({ meter, to }) =>
        taken.includes(meter) && (months.length === 0 || months.includes(to.slice(0, 7))),
    );
    const flow = (day: string): number =>
      drains.length === 0 ? 1 : total(drains, [day.slice(0, 7)]);
    const mean = (share: number): number => {
      let [all, sum] = [0, 0];
      for (const { amount, below, to } of samples) {
        all += flow(to);
        sum += flow(to) * amount * (below === true ? share : 1);
      }
      return sum / all;
    };
    const sorted = samples.map(({ amount }) => amount).sort((a, b) => a - b);
    const middle = sorted[Math.floor(sorted.length / 2)] ?? NaN;
    return [
      {
        site,
        months,
        ...(months.length === 0 ? {} : { effluent: total(drains, months) }),
        ...(returns.length === 0 ? {} : { condensate: total(returns, back) }),
        ...(returns.length === 0 || steam.length === 0 ? {} : { steam: total(steam, back) }),
        samples: samples.length,
        below: samples.filter(({ below }) => below === true).length,
        ...(samples.length === 0
          ? {}
          : { strength: { value: mean(0.5), low: mean(0), high: mean(1) } }),
        odd: samples
          .filter(
            ({ amount, below }) =>
              below !== true && (amount > ODD * middle || amount < middle / ODD),
          )
          .map(({ to }) => to),
      },
    ];
  });
}
