/**
 * Doubt about a value, from what was published beside it or from its quality scores.
 */

import { tailBeyond } from "../numbers/distributions.js";
import { normalQuantile } from "../numbers/normal.js";
import { gsdFromScores } from "../numbers/pedigree.js";
import type { Bounded, Lognormal, Normal, Spread } from "../numbers/spread.js";
import { readUnit } from "../units/dimension.js";
import type { Quality } from "./factor.js";
import type { SpreadText } from "./schema.js";
import type { Fault, KeyPath } from "./yaml-text.js";

/** A value as it is stated, with all that bears on its doubt. */
export interface StatedDoubt {
  /** Central value. */
  readonly value: number;
  /** Its unit. */
  readonly unit: string;
  /** A value outside is taken for a slip; a draw is cut there. */
  readonly plausible: readonly [number, number];
  /** What was published beside it; undefined when the scores have to do. */
  readonly spread: SpreadText | undefined;
  /** Five scores. */
  readonly quality: Quality;
}

/** A spread, or the key at fault and what is wrong with it. */
export type SpreadJudgement =
  | { readonly spread: Spread }
  | {
      /** Keys from the value to the one at fault. */
      readonly at: KeyPath;
      /** What is wrong. */
      readonly fault: Fault;
    };

/** Largest probability a lognormal may put beyond the plausible values before another shape is asked for. */
const LARGEST_TAIL = 0.001;

const USUAL_CONFIDENCE = 0.95;

/**
 * Turns a stated doubt into a spread.
 *
 *     normal      sd = (high − low) / 2z                 the value is the mean
 *     lognormal   GSD = (high / low)^(1 / 2z)            the value is the median
 *     share s     low = value (1 − s), high = value (1 + s)
 *
 * z is the quantile of the stated confidence, 1.96 at 95 %. Triangular, uniform and beta-PERT take low and
 * high for their ends. With an interval the scores are only shown; without one they make the doubt:
 * lognormal, or for a share of something beta-PERT with ends at ± 2 ln GSD on the logit scale.
 *
 * @param stated - the value and what stands beside it
 * @returns the spread, limits applied; or what is wrong: `factor-implausible`, `factor-spread`,
 *   `factor-spread-order`, `factor-tail`
 */
export function spreadOf(stated: StatedDoubt): SpreadJudgement {
  const { value, spread } = stated;
  if (!inside(value, stated.plausible)) return implausible(["value"], value, stated);
  if (spread === undefined) return fromScores(stated);
  if (spread.shape === "fixed") {
    const spare = (["low", "high", "share", "confidence"] as const).find(
      (key) => spread[key] !== undefined,
    );
    return spare === undefined
      ? { spread: { shape: "fixed", value } }
      : wrong([spare], "no ends with a fixed value", "Leave it out, or choose another shape.");
  }
  const ends = endsOf(stated, spread);
  if ("fault" in ends) return ends;
  const [low, high] = ends.ends;
  if (!(low <= value && value <= high)) {
    return {
      at: ["spread"],
      fault: {
        code: "factor-spread-order",
        value: `${low} to ${high}`,
        expected: `ends on either side of the value ${value}`,
        remedy: "Put low, value and high in order.",
      },
    };
  }
  if (spread.shape === "normal" || spread.shape === "lognormal") {
    return fromInterval(stated, spread.shape, low, high, spread.confidence ?? USUAL_CONFIDENCE);
  }
  if (spread.confidence !== undefined) {
    return wrong(
      ["confidence"],
      `no confidence with ${spread.shape}, whose ends hold everything`,
      "Leave it out, or choose normal or lognormal.",
    );
  }
  if (!inside(low, stated.plausible)) return implausible(["spread", "low"], low, stated);
  if (!inside(high, stated.plausible)) return implausible(["spread", "high"], high, stated);
  return { spread: { shape: spread.shape, low, value, high } };
}

type Ends =
  { readonly ends: readonly [number, number] } | Exclude<SpreadJudgement, { spread: Spread }>;

function endsOf(stated: StatedDoubt, spread: SpreadText): Ends {
  const { low, high, share } = spread;
  if (share !== undefined) {
    if (low !== undefined || high !== undefined) {
      return wrong(["share"], "either share, or low and high", "Leave one of them out.");
    }
    const reach = Math.abs(stated.value) * share;
    return { ends: [stated.value - reach, stated.value + reach] };
  }
  if (low !== undefined && high !== undefined) return { ends: [low, high] };
  return wrong([], `low and high with ${spread.shape}`, "Add both ends, or a share.");
}

function fromInterval(
  stated: StatedDoubt,
  shape: "normal" | "lognormal",
  low: number,
  high: number,
  confidence: number,
): SpreadJudgement {
  const { value, plausible } = stated;
  const width = 2 * normalQuantile((1 + confidence) / 2);
  if (low === high) {
    return wrong(["high"], "an end above low", "Write shape: fixed for a value without doubt.");
  }
  if (shape === "normal") {
    const normal: Normal = { shape, value, sd: (high - low) / width, limits: plausible };
    return { spread: normal };
  }
  if (!(low > 0)) {
    return wrong(["low"], "an end above 0 with lognormal", "Choose triangular or pert.");
  }
  const gsd = Math.exp(Math.log(high / low) / width);
  return withoutTail({ shape, value, gsd, limits: plausible });
}

function fromScores(stated: StatedDoubt): SpreadJudgement {
  const { value, unit, plausible } = stated;
  const [lowest, highest] = plausible;
  const gsd = gsdFromScores(stated.quality);
  const dimension = readUnit(unit);
  if (dimension?.size === 0 && lowest >= 0 && highest <= 1 && value > 0 && value < 1) {
    const at = (shift: number): number => 1 / (1 + ((1 - value) / value) * Math.exp(-shift));
    const reach = 2 * Math.log(gsd);
    const pert: Bounded = {
      shape: "pert",
      low: Math.max(lowest, at(-reach)),
      value,
      high: Math.min(highest, at(reach)),
    };
    return { spread: pert };
  }
  if (!(value > 0) || (dimension?.size === 1 && dimension.get("K") === 1)) {
    return {
      at: ["value"],
      fault: {
        code: "factor-spread",
        value: String(value),
        expected:
          "a spread beside it; scores alone serve only numbers above 0 that have a true zero",
        remedy: "Add spread with shape, low and high, or shape: fixed.",
      },
    };
  }
  return withoutTail({ shape: "lognormal", value, gsd, limits: plausible });
}

function withoutTail(lognormal: Lognormal): SpreadJudgement {
  const [low, high] = lognormal.limits;
  const tail = tailBeyond(lognormal, lognormal.limits);
  if (tail <= LARGEST_TAIL) return { spread: lognormal };
  return {
    at: ["spread"],
    fault: {
      code: "factor-tail",
      value: `${(100 * tail).toFixed(2)} % beyond ${low} to ${high}`,
      expected: "a lognormal with no more than 0.1 % beyond the plausible values",
      remedy: "Narrow the ends, or choose triangular, uniform or pert.",
    },
  };
}

function inside(x: number, [low, high]: readonly [number, number]): boolean {
  return x >= low && x <= high;
}

function implausible(at: KeyPath, value: number, stated: StatedDoubt): SpreadJudgement {
  const [low, high] = stated.plausible;
  return {
    at,
    fault: {
      code: "factor-implausible",
      value: String(value),
      expected: `${low} to ${high} ${stated.unit === "1" ? "as a bare ratio" : stated.unit}`,
      remedy: "Check the number and its unit.",
    },
  };
}

function wrong(
  key: KeyPath,
  expected: string,
  remedy: string,
): Exclude<SpreadJudgement, { spread: Spread }> {
  return { at: ["spread", ...key], fault: { code: "factor-spread", expected, remedy } };
}
