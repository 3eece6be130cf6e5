/**
 * Tails and quantiles of the distributions that tests of fits and balances are judged by: F, t and χ².
 */

import { InputError } from "../problems/input-error.js";
import { rootBetween } from "./roots.js";

/** Terms after which a series or a fraction is given up. */
const MOST = 10_000;

/** Smallest number that stands in for zero in a continued fraction. */
const TINY = 1e-300;

/**
 * Chance that F with two degrees of freedom is larger.
 *
 * @param f - 0 or more
 * @param above - degrees of freedom of the numerator
 * @param below - degrees of freedom of the denominator
 * @returns from 0 to 1
 * @see DLMF 8.17, dlmf.nist.gov, for the incomplete beta function
 */
export function fTail(f: number, above: number, below: number): number {
  return betaShare(below / 2, above / 2, below / (below + above * f));
}

/**
 * F with a given chance of being passed.
 *
 * @param chance - above 0 and below 1
 * @param above - degrees of freedom of the numerator
 * @param below - degrees of freedom of the denominator
 * @returns the quantile
 * @throws {@link InputError} for a chance that is none
 */
export function fQuantile(chance: number, above: number, below: number): number {
  return passed((f) => fTail(f, above, below), chance);
}

/**
 * Chance that t lies further from zero, on either side.
 *
 * @param t - the value
 * @param freedom - degrees of freedom
 * @returns from 0 to 1
 */
export function tTail(t: number, freedom: number): number {
  return betaShare(freedom / 2, 0.5, freedom / (freedom + t * t));
}

/**
 * t that is passed on either side with a given chance.
 *
 * @param chance - above 0 and below 1, both sides together
 * @param freedom - degrees of freedom
 * @returns the quantile, above 0
 * @throws {@link InputError} for a chance that is none
 */
export function tQuantile(chance: number, freedom: number): number {
  return passed((t) => tTail(t, freedom), chance);
}

/**
 * Chance that χ² is larger.
 *
 * @param sum - 0 or more
 * @param freedom - degrees of freedom
 * @returns from 0 to 1
 * @see DLMF 8.11 and 8.9, dlmf.nist.gov, for the incomplete gamma function
 */
export function chiSquareTail(sum: number, freedom: number): number {
  const [a, x] = [freedom / 2, sum / 2];
  if (!(x > 0)) return 1;
  const scale = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let total = term;
    for (let n = 1; n < MOST && term > 1e-17 * total; n++) {
      term *= x / (a + n);
      total += term;
    }
    return 1 - scale * total;
  }
  // The continued fraction of Γ(a, x), turned by turn.
  return (
    scale *
    fraction(
      (n) => (n === 0 ? 1 : -n * (n - a)),
      (n) => x + 2 * n + 1 - a,
    )
  );
}

/**
 * χ² with a given chance of being passed.
 *
 * @param chance - above 0 and below 1
 * @param freedom - degrees of freedom
 * @returns the quantile
 * @throws {@link InputError} for a chance that is none
 */
export function chiSquareQuantile(chance: number, freedom: number): number {
  return passed((sum) => chiSquareTail(sum, freedom), chance);
}

function passed(tail: (x: number) => number, chance: number): number {
  if (!(chance > 0 && chance < 1)) throw new InputError("chance", chance, "expected 0 to 1");
  let high = 1;
  while (tail(high) > chance && high < 1e12) high *= 2;
  const found = rootBetween((x) => tail(x) - chance, [0, high]);
  return found ?? NaN;
}

// The regularised incomplete beta function I_x(a, b).
function betaShare(a: number, b: number, x: number): number {
  if (!(x > 0)) return Number.isNaN(x) ? NaN : 0;
  if (!(x < 1)) return 1;
  // The fraction closes in fast below the mean only.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaShare(b, a, 1 - x);
  const scale = Math.exp(
    lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * Math.log(x) + b * Math.log1p(-x),
  );
  const term = (n: number): number => {
    if (n === 0) return 1;
    const m = Math.floor(n / 2);
    return n % 2 === 0
      ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
      : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
  };
  return (scale / a) * fraction(term, () => 1);
}

// a₀/(b₀ + a₁/(b₁ + a₂/(b₂ + …))) from the front, after W. J. Lentz.
function fraction(a: (n: number) => number, b: (n: number) => number): number {
  let f = TINY;
  let c = f;
  let d = 0;
  for (let n = 0; n < MOST; n++) {
    d = b(n) + a(n) * d;
    if (Math.abs(d) < TINY) d = TINY;
    c = b(n) + a(n) / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    f *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return f;
}

// ln Γ by Stirling's series, shifted up to where it is good to the last digits: DLMF 5.11.1.
function lnGamma(x: number): number {
  let shift = 0;
  let z = x;
  while (z < 15) {
    shift += Math.log(z);
    z += 1;
  }
  const y = 1 / (z * z);
  const series = (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
