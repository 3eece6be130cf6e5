/**
 * Pigment against dye on the same lots and the same draws: S = 1 − (P/A_P)/(D/A_D), draw by draw, where A is
 * the reference unit of each arm. Both are equal unless the plant file gives yield by workflow.
 */

import type { Account } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import { quantiles } from "../numbers/quantiles.js";
import type { ArmUnits } from "./yields.js";

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
  /** Yield of pigment as a share of that of dye at which nothing is saved: A_P/A_D = P/D of the same lots. */
  readonly breakEvenYield?: Range;
}

/** Below this share of the larger arm no percentage is printed. */
export const NEGLIGIBLE = 0.01;

/**
 * Compares both arms.
 *
 * @param account - the account
 * @param id - indicator
 * @param units - reference units the totals are divided by, such as accepted m²; those of each arm, draw by
 *   draw, where they differ
 * @returns the comparison
 */
export function compareArms(
  account: Account,
  id: IndicatorId,
  units: number | ArmUnits,
): Comparison {
  const total = {
    pigment: account.indicators.pigment.get(id) ?? new Float64Array(0),
    dye: account.indicators.dye.get(id) ?? new Float64Array(0),
  };
  const over = (arm: "pigment" | "dye"): Float64Array =>
    typeof units === "number"
      ? total[arm]
      : total[arm].map((value, i) => value / (units[arm][i] ?? NaN));
  const pigment = over("pigment");
  const dye = over("dye");
  const count = pigment.length;
  const common = typeof units === "number" ? units : 1;
  const per = (draws: Float64Array): Float64Array => draws.map((value) => value / common);
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
    ...(percentage
      ? { breakEvenYield: rangeOf(total.pigment.map((p, i) => p / (total.dye[i] ?? NaN))) }
      : {}),
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
