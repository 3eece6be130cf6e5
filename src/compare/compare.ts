/**
 * Pigment against dye on the same lots and the same draws: S = 1 − P/D, draw by draw.
 */

import type { Account } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import { quantiles } from "../numbers/quantiles.js";

/** Median and 95 % interval. */
export interface Range {
  /** Median. */
  readonly median: number;
  /** 2.5 % quantile. */
  readonly low: number;
  /** 97.5 % quantile. */
  readonly high: number;
}

/** Both routes on one indicator. */
export interface Comparison {
  /** Indicator. */
  readonly id: IndicatorId;
  /** Unit per reference unit. */
  readonly unit: string;
  /** Plain words. */
  readonly words: string;
  /** Pigment route, per reference unit. */
  readonly pigment: Range;
  /** Dye route, per reference unit. */
  readonly dye: Range;
  /** Dye minus pigment, per reference unit. */
  readonly difference: Range;
  /** Share saved; absent when the dye route takes nothing or below 1 % of the larger arm. */
  readonly saving?: Range;
  /** Draws of the share saved. */
  readonly draws?: Float64Array;
  /** Draws in which pigment takes less. */
  readonly less: number;
  /** Number of draws. */
  readonly count: number;
  /** Whether the interval of the difference leaves zero out. */
  readonly resolved: boolean;
  /** Share of its present yield at which pigment takes as much per accepted unit as dye. */
  readonly breakEvenYield?: Range;
}

/** Below this share of the larger arm no percentage is printed. */
const NEGLIGIBLE = 0.01;

/**
 * Compares both arms.
 *
 * @param account - the account
 * @param id - indicator
 * @param units - reference units the totals are divided by, such as accepted m²
 * @returns the comparison
 */
export function compareArms(account: Account, id: IndicatorId, units: number): Comparison {
  const pigment = account.indicators.pigment.get(id) ?? new Float64Array(0);
  const dye = account.indicators.dye.get(id) ?? new Float64Array(0);
  const count = pigment.length;
  const per = (draws: Float64Array): Float64Array => draws.map((value) => value / units);
  const p = rangeOf(per(pigment));
  const d = rangeOf(per(dye));
  const difference = rangeOf(per(dye.map((value, i) => value - (pigment[i] ?? NaN))));
  let less = 0;
  for (let i = 0; i < count; i++) if ((pigment[i] ?? NaN) < (dye[i] ?? NaN)) less += 1;
  const percentage = d.median > NEGLIGIBLE * Math.max(Math.abs(p.median), Math.abs(d.median));
  const ratio = percentage ? pigment.map((value, i) => value / (dye[i] ?? NaN)) : undefined;
  const draws = ratio?.map((value) => 1 - value);
  const indicator = account.program.indicators.get(id);
  return {
    id,
    unit: indicator?.unit ?? "",
    words: indicator?.words ?? id,
    pigment: p,
    dye: d,
    difference,
    ...(draws === undefined ? {} : { saving: rangeOf(draws), draws }),
    ...(ratio === undefined ? {} : { breakEvenYield: rangeOf(ratio) }),
    less,
    count,
    resolved: difference.low > 0 || difference.high < 0,
  };
}

/**
 * Median and 95 % interval of draws.
 *
 * @param draws - the draws
 * @returns the range
 */
export function rangeOf(draws: Float64Array): Range {
  if (draws.length === 0) return { median: NaN, low: NaN, high: NaN };
  const [low = NaN, median = NaN, high = NaN] = quantiles(draws, [0.025, 0.5, 0.975]);
  return { median, low, high };
}
