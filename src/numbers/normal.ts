/**
 * The standard normal distribution, both ways, to about the last digit of a double.
 */

import { InputError } from "../problems/input-error.js";

// Rational approximations as published, lowest power first.
const CENTRE = {
  top: [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
    45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  bottom: [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597,
    39307.89580009271, 28729.085735721943, 5226.495278852854,
  ],
} as const;

const SHOULDER = {
  top: [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
    1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  bottom: [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008,
    0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-9,
  ],
} as const;

const TAIL = {
  top: [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
    0.026532189526576124, 0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  bottom: [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
} as const;

/**
 * Value below which a standard normal number falls with probability `p`.
 *
 * Algorithm AS 241, routine PPND16: three rational approximations, good to about one part in 10¹⁶.
 *
 * @param p - probability, above 0 and below 1
 * @returns the quantile, in standard deviations from the mean
 * @throws {@link InputError} when `p` is not above 0 and below 1
 * @see M. J. Wichura, The percentage points of the normal distribution, Applied Statistics 37 (1988) 477-484
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) {
    throw new InputError("normal quantile", p, "expected a probability above 0 and below 1");
  }
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * eighth(CENTRE.top, r)) / eighth(CENTRE.bottom, r);
  }
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const x =
    r <= 5
      ? eighth(SHOULDER.top, r - 1.6) / eighth(SHOULDER.bottom, r - 1.6)
      : eighth(TAIL.top, r - 5) / eighth(TAIL.bottom, r - 5);
  return q < 0 ? -x : x;
}

type Eight = readonly [number, number, number, number, number, number, number, number];

function eighth(c: Eight, x: number): number {
  return (
    ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0]
  );
}

const NEAR = {
  top: [
    18154.98125334356, 1067.6894854603709, 161.02823106855587, 2.2352520354606837,
    0.06568233791820745,
  ],
  bottom: [45507.78933502673, 10260.932208618979, 976.0985517377767, 47.202581904688245, 1],
} as const;

const MIDDLE = {
  top: [
    9842.714838383978, 11602.65143764735, 6848.190450536283, 2494.5375852903726, 597.2702763948002,
    93.50665613217785, 8.883149794388377, 0.39894151208813466, 1.0765576773720192e-8,
  ],
  bottom: [
    19685.429676859992, 38912.00328609327, 34900.95272114598, 18615.571640885097, 6485.558298266761,
    1519.3775994075547, 235.387901782625, 22.266688044328117, 1,
  ],
} as const;

const FAR = {
  top: [
    2.9112874951168793e-5, 0.0014216191932278934, 0.022235277870649807, 0.12740116116024736,
    0.215898534057957, 0.023073441764940174,
  ],
  bottom: [
    7.297515550839662e-5, 0.0037823963320275824, 0.06598813786892856, 0.4682382124808651,
    1.284260096144911, 1,
  ],
} as const;

/** Beyond this many standard deviations the tail is less than the smallest double. */
const NOTHING_BEYOND = 38.6;

const ROOT_TWO_PI = 2.5066282746310007;

/**
 * Probability that a standard normal number falls below `x`.
 *
 * Cody's rational Chebyshev approximations in three ranges; relative error below 1e-14 down to
 * probabilities of 1e-300, so small lower tails keep their digits. Take `normalCdf(-x)` for an upper tail.
 *
 * @param x - standard deviations from the mean; infinities are allowed
 * @returns a probability from 0 to 1
 * @throws {@link InputError} when `x` is not a number
 * @see W. J. Cody, Rational Chebyshev approximations for the error function, Math. Comp. 23 (1969) 631-637;
 *   the coefficients for the normal law stand in W. J. Cody, Algorithm 715, ACM TOMS 19 (1993) 22-32
 */
export function normalCdf(x: number): number {
  if (Number.isNaN(x)) throw new InputError("normal distribution", x, "expected a number");
  const size = Math.abs(x);
  if (size <= 0.67448975) {
    const square = x * x;
    return 0.5 + (x * polynomial(NEAR.top, square)) / polynomial(NEAR.bottom, square);
  }
  const tail = size > NOTHING_BEYOND ? 0 : upperTail(size);
  return x < 0 ? tail : 1 - tail;
}

// The exponent is split at a sixteenth, so that its square is exact and its error is not multiplied by x.
function upperTail(x: number): number {
  const cut = Math.trunc(x * 16) / 16;
  const bell = Math.exp(-0.5 * cut * cut) * Math.exp(-0.5 * (x - cut) * (x + cut));
  if (x <= Math.sqrt(32)) return (bell * polynomial(MIDDLE.top, x)) / polynomial(MIDDLE.bottom, x);
  const inverse = 1 / (x * x);
  const correction = (inverse * polynomial(FAR.top, inverse)) / polynomial(FAR.bottom, inverse);
  return (bell * (1 / ROOT_TWO_PI - correction)) / x;
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let power = coefficients.length - 1; power >= 0; power--) {
    sum = sum * x + coefficients[power]!;
  }
  return sum;
}

/**
 * Height of the standard normal curve.
 *
 * @param x - standard deviations from the mean
 * @returns density at `x`
 */
export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) / ROOT_TWO_PI;
}
