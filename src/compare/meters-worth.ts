/**
 * What a measurement would be worth: how much of the doubt of a saving it could take away.
 *
 * A measurement makes known all settings that it shows. How much of the variance of the saving S hangs on
 * them is told by a linear fit of the draws of S on theirs:
 *
 *     share removed = R² of S = β₀ + Σ βⱼ xⱼ,   what stays = the residuals about the median of S
 *
 * A bent dependence is counted by its straight part only, so the share is a bound from below.
 */

import type { Account } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import { leastSquares } from "../numbers/least-squares.js";
import type { Leaf } from "../numbers/quantity.js";
import { type Comparison, type Range, rangeOf } from "./compare.js";

/** A measurement a mill can make. */
export interface Measurement {
  /** Name. */
  readonly id: string;
  /** What to do, in plain words. */
  readonly words: string;
  /** Factors it makes known, by the start of their ids. */
  readonly shows: readonly string[];
}

/** Measurements, common practice in print houses. What is not shown by any stays a matter of sources. */
export const MEASUREMENTS: readonly Measurement[] = [
  {
    id: "wash-water",
    words: "a water meter on the wash range",
    shows: [
      "wash-range.fresh-water",
      "wash-range.litres-per-bath",
      "wash-range.flow",
      "wash-range.fill",
      "wash-range.stops",
    ],
  },
  {
    id: "wash-heat",
    words: "a steam meter and thermometers on the wash range",
    shows: [
      "wash-range.warm",
      "wash-range.hot",
      "wash-range.recovery",
      "wash-range.surface",
      "wash-range.carry-over",
    ],
  },
  {
    id: "printer-water",
    words: "a water meter on the printer's belt washer",
    shows: ["printer.belt-water", "printer.flush-water"],
  },
  {
    id: "printer-electricity",
    words: "an electricity meter on the printer and its dryer",
    shows: [
      "printer.power",
      "printer.dryer-power",
      "printer.standby",
      "printer.rate",
      "printer.setup",
    ],
  },
  {
    id: "ink",
    words: "the ink of each lot in the log",
    shows: ["printer.ink", "printer.coverage", "printer.purge"],
  },
  { id: "steamer", words: "a steam meter on the steamer", shows: ["steamer."] },
  {
    id: "drying-stenter",
    words: "exhaust humidity, air and gas of the drying stenter",
    shows: ["stenter-dry."],
  },
  {
    id: "curing-stenter",
    words: "exhaust air and gas of the curing stenter",
    shows: ["stenter-cure."],
  },
  { id: "hot-flue", words: "exhaust humidity and gas of the hot flue", shows: ["hot-flue."] },
  { id: "oven", words: "exhaust air and gas of the oven", shows: ["oven."] },
  { id: "calender", words: "a meter on the calender's heating", shows: ["calender."] },
  { id: "tumbler", words: "a meter on the tumbler", shows: ["tumbler."] },
  {
    id: "pick-up",
    words: "cloth weighed before and after the pad",
    shows: ["pad.pickup", "pad.dump", "pad.trough-wash", "pad.lots-per-change"],
  },
  {
    id: "squeeze",
    words: "cloth weighed after squeeze or slot",
    shows: ["squeeze.moisture-out", "vacuum-slot.moisture-out"],
  },
  { id: "boiler", words: "steam and gas meters at the boiler", shows: ["boiler."] },
  { id: "oil-heater", words: "gas and heat meters at the oil heater", shows: ["oil-heater."] },
  { id: "recipes", words: "recipes held against stock records", shows: ["recipe.", "ink."] },
  {
    id: "effluent",
    words: "composite samples and flow of the effluent",
    shows: ["substance."],
  },
  {
    id: "hall",
    words: "air of the hall and supply water, month by month",
    shows: ["hall.", "water.supply"],
  },
];

/** What one measurement would do for one saving. */
export interface Worth {
  /** The measurement. */
  readonly measurement: Measurement;
  /** Share of the variance of the saving that it could remove, from 0 to 1. */
  readonly share: number;
  /** Median and interval of the saving that would stay, if the settings turned out as they are taken now. */
  readonly after: Range;
}

/** Draws looked at: enough for a share to ±1 %, and few enough to cost next to nothing. */
const DRAWS = 4000;

/**
 * Ranks measurements by what they would remove from the doubt of savings.
 *
 * @param account - the account
 * @param comparisons - comparisons by indicator
 * @param ids - indicators
 * @returns measurements by indicator, the most useful first; those that show nothing are left out
 */
export function metersWorth(
  account: Account,
  comparisons: ReadonlyMap<IndicatorId, Comparison>,
  ids: readonly IndicatorId[],
): ReadonlyMap<IndicatorId, readonly Worth[]> {
  const count = Math.min(DRAWS, account.draws.count);
  const columns = MEASUREMENTS.map((measurement) => ({
    measurement,
    draws: account.program.nodes
      .leaves()
      .filter(({ leaf }) => leaf.spread.shape !== "fixed" && shown(measurement, leaf))
      .map(({ at }) => account.draws.of(at).subarray(0, count)),
  }));
  return new Map(
    ids.flatMap((id) => {
      const draws = comparisons.get(id)?.draws?.subarray(0, count);
      if (draws === undefined || !(variance(draws) > 0)) return [];
      const worths = columns
        .map(({ measurement, draws: shows }) => worthOf(measurement, shows, draws))
        .filter((worth) => worth !== undefined)
        .sort((a, b) => b.share - a.share || (a.measurement.id < b.measurement.id ? -1 : 1));
      return [[id, worths] as const];
    }),
  );
}

function shown({ shows }: Measurement, { factor }: Leaf): boolean {
  return shows.some((start) => factor.startsWith(start));
}

function worthOf(
  measurement: Measurement,
  shows: readonly Float64Array[],
  saving: Float64Array,
): Worth | undefined {
  // A draw that goes along with the saving by chance alone does so with 1/n of the variance; below three
  // times that it is left out.
  const related = shows.filter((column) => correlation(column, saving) ** 2 > 3 / saving.length);
  if (related.length === 0) return undefined;
  const { r2, residuals } = leastSquares(related, saving);
  const { median } = rangeOf(saving);
  const rest = rangeOf(residuals);
  const share = Math.max(
    0,
    1 - (1 - r2) * ((saving.length - 1) / (saving.length - related.length - 1)),
  );
  return {
    measurement,
    share,
    after: { median, low: median + rest.low - rest.median, high: median + rest.high - rest.median },
  };
}

function correlation(a: Float64Array, b: Float64Array): number {
  const n = a.length;
  let [sumA, sumB, sumAA, sumBB, sumAB] = [0, 0, 0, 0, 0];
  // About the first numbers, so that large means do not eat the digits of small spreads.
  const [a0, b0] = [a[0] ?? 0, b[0] ?? 0];
  for (let i = 0; i < n; i++) {
    const x = a[i]! - a0;
    const y = b[i]! - b0;
    sumA += x;
    sumB += y;
    sumAA += x * x;
    sumBB += y * y;
    sumAB += x * y;
  }
  const spread = Math.sqrt((sumAA - (sumA * sumA) / n) * (sumBB - (sumB * sumB) / n));
  return spread > 0 ? (sumAB - (sumA * sumB) / n) / spread : 0;
}

function variance(numbers: Float64Array): number {
  const mean = numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
  return numbers.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (numbers.length - 1);
}
