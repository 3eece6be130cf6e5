/**
 * How much of the variance of a result hangs on some of its arguments, told from draws alone.
 *
 *     S = Var(E[y | x₁ … x_k]) / Var(y)
 *
 * is the share that knowing x₁ … x_k would take away on average, the closed index of first order of I. M.
 * Sobol'. It is estimated by the adjusted R² of a polynomial: straight in arguments that matter little, of the
 * third degree, with products of two, in those that matter most:
 *
 *     y ≈ β₀ + Σ βⱼ xⱼ + Σ (γⱼ xⱼ² + δⱼ xⱼ³) + Σ ε_jk xⱼ x_k
 *
 * No fit explains more than E[y | x], so but for chance the share is a bound from below: what has several
 * humps is missed in part. It asks for no draw beyond those there are, and holds for arguments that are drawn
 * together.
 */

import { InputError } from "../problems/input-error.js";
import { leastSquares } from "./least-squares.js";
import { each } from "./ranks.js";

/** Draws of an argument, made ready once for many results. */
export interface Argument {
  /** Draws at mean 0 and standard deviation 1. */
  readonly x: Float64Array;
  /** Squares of the same, cut at {@link CUT}, at mean 0 and standard deviation 1; absent where all are equal. */
  readonly square?: Float64Array;
}

/** What some arguments explain of a result. */
export interface VarianceShare {
  /** Adjusted R², not below 0. */
  readonly share: number;
  /** Standard error of the share, 2 √S (1 − S) / √n, as for normal variables. */
  readonly error: number;
  /** What is not explained, draw by draw, with mean 0. */
  readonly residuals: Float64Array;
}

/** A squared correlation below this many times 1/n may be chance: a larger one comes once in some 600 draws. */
const CHANCE = 10;

/** Squared correlation from which an argument is bent and paired in the fit. */
const MATTERS = 0.01;

/** Arguments that are bent and paired, at most. */
const BENT = 4;

/** Draws for each coefficient, at least. */
const PER_COEFFICIENT = 20;

/** Powers act on arguments cut at this many standard deviations, lest a few draws rule the fit. */
const CUT = 4;

/** Columns are the same when their squared correlation leaves less than this to 1. */
const SAME = 1e-9;

/**
 * Makes draws of an argument ready.
 *
 * @param draws - the draws
 * @returns the argument; undefined for draws that do not vary
 */
export function argumentOf(draws: Float64Array): Argument | undefined {
  const x = standard(draws);
  if (x === undefined) return undefined;
  const square = standard(each(x, (value) => clipped(value) ** 2));
  return square === undefined ? { x } : { x, square };
}

/**
 * Share of the variance of a result that its arguments explain.
 *
 * @param all - the arguments
 * @param result - the result, made ready in the same way
 * @param strengths - {@link strengthOf} each argument, where it is known already
 * @returns share, its error and residuals in standard deviations of the result; undefined when no argument
 *   goes along with it
 * @throws {@link InputError} when numbers of draws differ
 * @see A. Saltelli, K. Chan and E. M. Scott (eds), Sensitivity Analysis (Wiley, 2000), ch. 8, for the index;
 *   I. Olkin and J. D. Finn, Psychological Bulletin 118 (1995) 155-164, for the error, from memory
 */
export function varianceShare(
  all: readonly Argument[],
  result: Argument,
  strengths: readonly number[] = all.map((one) => strengthOf(one, result)),
): VarianceShare | undefined {
  const y = result.x;
  const n = y.length;
  const related = all
    .map((one, i) => ({ one, strength: strengths[i]! }))
    .filter(({ strength }) => strength > CHANCE / n)
    .sort((a, b) => b.strength - a.strength);
  const straight: Float64Array[] = [];
  const bent: Float64Array[] = [];
  for (const { one, strength } of related) {
    if (!straight.every((other) => meanProduct(one.x, other) ** 2 < 1 - SAME)) continue;
    straight.push(one.x);
    if (strength > MATTERS && bent.length < BENT) bent.push(one.x);
  }
  const columns = [...straight, ...bent.flatMap(powers), ...products(bent)].slice(
    0,
    Math.floor(n / PER_COEFFICIENT),
  );
  if (columns.length === 0) return undefined;
  const { r2, residuals } = leastSquares(columns, y);
  const share = Math.max(0, 1 - (1 - r2) * ((n - 1) / (n - columns.length - 1)));
  return { share, error: (2 * Math.sqrt(share) * (1 - share)) / Math.sqrt(n), residuals };
}

/**
 * The larger of the squared correlations of a result with an argument and with its square.
 *
 * @param argument - the argument
 * @param result - the result
 * @returns from 0 to 1
 * @throws {@link InputError} when numbers of draws differ
 */
export function strengthOf(argument: Argument, result: Argument): number {
  const { x, square } = argument;
  if (x.length !== result.x.length) {
    throw new InputError("draws of an argument", x.length, `expected ${result.x.length} numbers`);
  }
  const bent = square === undefined ? 0 : meanProduct(square, result.x) ** 2;
  return Math.max(meanProduct(x, result.x) ** 2, bent);
}

function powers(x: Float64Array): readonly Float64Array[] {
  return [
    each(x, (value) => clipped(value) ** 2 - 1),
    each(x, (value) => clipped(value) ** 3 - 3 * clipped(value)),
  ];
}

function products(all: readonly Float64Array[]): readonly Float64Array[] {
  return all.flatMap((a, i) =>
    all.slice(i + 1).map((b) => {
      const both = new Float64Array(a.length);
      for (let k = 0; k < both.length; k++) both[k] = clipped(a[k]!) * clipped(b[k]!);
      return both;
    }),
  );
}

function clipped(value: number): number {
  return Math.max(-CUT, Math.min(CUT, value));
}

function standard(numbers: Float64Array): Float64Array | undefined {
  let sum = 0;
  for (const number of numbers) sum += number;
  const mean = sum / numbers.length;
  let squares = 0;
  for (const number of numbers) squares += (number - mean) ** 2;
  const sd = Math.sqrt(squares / numbers.length);
  return sd > 1e-12 * Math.abs(mean) ? each(numbers, (number) => (number - mean) / sd) : undefined;
}

function meanProduct(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum / a.length;
}
