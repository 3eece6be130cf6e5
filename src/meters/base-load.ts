/**
 * Base load of a meter by regression on production:
 *
 *     E = a + b P (+ c D),      or with a change point  E = a + b max(0, P − P₀)
 *
 * a is what runs when nothing is printed. Statistics carry their conventions: n points, p coefficients,
 *
 *     CV(RMSE) = √(Σ(y − ŷ)²/(n − p)) / ȳ,      NMBE = Σ(y − ŷ)/((n − p) ȳ)
 */

import { leastSquares, type LinearFit } from "../numbers/least-squares.js";
import { fTail, tTail } from "../numbers/tails.js";

/** Fewest points of a fit. */
const FEWEST = 9;

/** Least ratio of the largest production to the smallest. */
const SPREAD = 2;

/** A change point is taken when chance alone would give as good a fit in one case of so many. */
const PAYS = 0.02;

/** Limits of a fit that is used: R², CV(RMSE), chance of F. Common practice in measurement and verification. */
const LIMITS = { r2: 0.75, cv: 0.25, chance: 0.1 } as const;

/** What consumption hangs on. */
export interface Driver {
  /** What it is. */
  readonly words: string;
  /** One number a period. */
  readonly values: Float64Array;
}

/** One coefficient. */
export interface Coefficient {
  /** What it belongs to; `base` for the intercept. */
  readonly words: string;
  /** The coefficient. */
  readonly value: number;
  /** Its standard error. */
  readonly error: number;
  /** value / error. */
  readonly t: number;
  /** Chance of a t as far from zero, on either side. */
  readonly chance: number;
}

/** Drivers beside production, and whether they pay. */
export interface Tested {
  /** What they are. */
  readonly words: string;
  /** F of the fit with them against that without. */
  readonly f: number;
  /** Chance of so large an F. */
  readonly chance: number;
  /** Whether they are taken. */
  readonly pays: boolean;
}

/** A base load found. */
export interface BaseLoad {
  /** Number of periods. */
  readonly n: number;
  /** Number of coefficients, a change point among them. */
  readonly p: number;
  /** Coefficients, the base first. */
  readonly coefficients: readonly Coefficient[];
  /** Production up to which consumption stays at its base; absent for a straight line. */
  readonly changePoint?: number;
  /** Drivers beside production, where there are any. */
  readonly tested?: Tested;
  /** Standard deviation of the residuals with n minus the coefficients of the line. */
  readonly sd: number;
  /** Coefficient of determination. */
  readonly r2: number;
  /** CV(RMSE) with n − p. */
  readonly cv: number;
  /** NMBE with n − p; zero for a fit with intercept. */
  readonly nmbe: number;
  /** F of the fit against none. */
  readonly f: number;
  /** Chance of so large an F. */
  readonly fChance: number;
  /** Share of the base in all consumption. */
  readonly share: number;
  /** Residuals, y − ŷ. */
  readonly residuals: Float64Array;
  /** Whether the fit is good enough to be used: R², CV(RMSE), F, and a slope that is not chance. */
  readonly usable: boolean;
}

/** Why there is none. */
export interface NoBaseLoad {
  /** What is missing. */
  readonly refused: string;
  /** What would help. */
  readonly remedy: string;
}

/**
 * Finds the base load.
 *
 * @param consumption - one number a period
 * @param production - what mainly drives it
 * @param others - degree days and the like
 * @returns the fit, or why there is none and what would help
 */
export function baseLoad(
  consumption: Float64Array,
  production: Driver,
  others: readonly Driver[] = [],
): BaseLoad | NoBaseLoad {
  const { values } = production;
  const n = consumption.length;
  if (!(n >= FEWEST))
    return {
      refused: `${n} periods, fewer than ${FEWEST}`,
      remedy: `Read the meter over ${FEWEST} periods or more, or read it at night and over holidays.`,
    };
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (!(most >= SPREAD * least && most > 0))
    return {
      refused: `production varies by ${(most / least).toFixed(2)} to 1 only, less than ${SPREAD} to 1`,
      remedy: "Read the meter by the week, or through a shutdown, or measure what runs at night.",
    };
  const varied = others.filter(({ values: v }) => v.some((one) => one !== v[0]));
  const tested = varied.length === 0 ? undefined : paid(consumption, production, varied);
  const drivers = [production, ...(tested?.pays === true ? varied : [])];
  const columns = drivers.map((driver) => driver.values);
  const straight = leastSquares(columns, consumption);
  const bent = bestBend(columns, consumption);
  // One more coefficient must lower the squares by more than chance would.
  const freedom = n - columns.length - 2;
  const gain =
    bent === undefined
      ? 0
      : ((straight.residualSquares - bent.fit.residualSquares) / bent.fit.residualSquares) *
        freedom;
  const pays = bent !== undefined && freedom > 2 && fTail(gain, 1, freedom) < PAYS;
  return described(
    consumption,
    drivers.map(({ words }) => words),
    pays ? bent.fit : straight,
    pays ? bent.at : undefined,
    tested,
  );
}

// Whether further drivers lower the squares by more than chance would: F of the fit with them against that without.
function paid(y: Float64Array, production: Driver, others: readonly Driver[]): Tested | undefined {
  const freedom = y.length - 2 - others.length;
  if (freedom < 3) return undefined;
  const without = leastSquares([production.values], y).residualSquares;
  const left = leastSquares([production.values, ...others.map(({ values }) => values)], y);
  const f = (without - left.residualSquares) / others.length / (left.residualSquares / freedom);
  const chance = fTail(f, others.length, freedom);
  return {
    words: others.map(({ words }) => words).join(", "),
    f,
    chance,
    pays: chance < LIMITS.chance,
  };
}

function bestBend(
  columns: readonly Float64Array[],
  y: Float64Array,
): { readonly fit: LinearFit; readonly at: number } | undefined {
  const [first, ...others] = columns;
  if (first === undefined) return undefined;
  const sorted = [...new Set(first)].sort((a, b) => a - b);
  // Three points below and three above, lest a bend lean on one.
  let found: { fit: LinearFit; at: number } | undefined;
  for (const at of sorted.slice(3, -3)) {
    const fit = leastSquares([first.map((value) => Math.max(0, value - at)), ...others], y);
    if (found === undefined || fit.residualSquares < found.fit.residualSquares) found = { fit, at };
  }
  return found;
}

function described(
  y: Float64Array,
  words: readonly string[],
  fit: LinearFit,
  at: number | undefined,
  tested: Tested | undefined,
): BaseLoad {
  const n = y.length;
  const p = fit.coefficients.length + (at === undefined ? 0 : 1);
  const sum = y.reduce((all, value) => all + value, 0);
  const mean = sum / n;
  const coefficients = [...fit.coefficients].map((value, i): Coefficient => {
    const error = fit.errors[i]!;
    const t = value / error;
    return { words: words[i - 1] ?? "base", value, error, t, chance: tTail(t, n - p) };
  });
  const cv = Math.sqrt(fit.residualSquares / (n - p)) / mean;
  const f = fit.r2 / (p - 1) / ((1 - fit.r2) / (n - p));
  const fChance = fTail(f, p - 1, n - p);
  const slope = coefficients[1];
  return {
    n,
    p,
    coefficients,
    ...(at === undefined ? {} : { changePoint: at }),
    ...(tested === undefined ? {} : { tested }),
    sd: fit.residualSd,
    r2: fit.r2,
    cv,
    nmbe: fit.residuals.reduce((all, value) => all + value, 0) / ((n - p) * mean),
    f,
    fChance,
    share: ((coefficients[0]?.value ?? 0) * n) / sum,
    residuals: fit.residuals,
    usable:
      fit.r2 >= LIMITS.r2 &&
      cv <= LIMITS.cv &&
      fChance < LIMITS.chance &&
      slope !== undefined &&
      slope.t >= 2,
  };
}
