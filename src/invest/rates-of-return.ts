/**
 * Rates at which flows are worth nothing: all real ones, since flows that change sign more than once may have
 * several or none.
 *
 * With x = 1/(1 + r) the worth of flows is f(x) = Σ aᵢ x^tᵢ. Divided by its lowest power it begins with a constant,
 * so its derivative has one term less; between two neighbouring zeros of the derivative f has one zero at most
 * (Rolle's theorem, which holds for powers that are no whole numbers too). Zeros are found from the last derivative
 * up.
 */

import { rootBetween } from "../numbers/roots.js";

/** Money at some time. */
export interface TimedFlow {
  /** Years from the start. */
  readonly at: number;
  /** Money. */
  readonly amount: number;
}

/** Lowest and highest rate looked for. [-] */
const RATES = [-0.99, 1000] as const;

/** A turning point whose value is below this share of its terms touches zero. [-] */
const TOUCHES = 1e-12;

interface Power {
  readonly exponent: number;
  readonly factor: number;
}

/**
 * Finds all rates of return between −99 % and 100,000 % a year.
 *
 * @param flows - money over time
 * @returns rates by rising size; none where the flows never change sign
 */
export function ratesOfReturn(flows: readonly TimedFlow[]): readonly number[] {
  const terms = new Map<number, number>();
  for (const { at, amount } of flows) terms.set(at, (terms.get(at) ?? 0) + amount);
  const powers = [...terms]
    .map(([exponent, factor]) => ({ exponent, factor }))
    .filter(({ factor }) => factor !== 0)
    .sort((a, b) => a.exponent - b.exponent);
  const ends = [1 / (1 + RATES[1]), 1 / (1 + RATES[0])] as const;
  return zerosOf(powers, ends)
    .map((x) => 1 / x - 1)
    .sort((a, b) => a - b);
}

function zerosOf(powers: readonly Power[], [low, high]: readonly [number, number]): number[] {
  if (!changesSign(powers)) return [];
  const lowest = powers[0]?.exponent ?? 0;
  const flat = powers.map(({ exponent, factor }) => ({ exponent: exponent - lowest, factor }));
  const of = (x: number): number => flat.reduce((sum, p) => sum + p.factor * x ** p.exponent, 0);
  const slope = flat
    .filter(({ exponent }) => exponent > 0)
    .map(({ exponent, factor }) => ({ exponent: exponent - 1, factor: factor * exponent }));
  const turns = zerosOf(slope, [low, high]);
  const stops = [low, ...turns, high];
  const zeros: number[] = [];
  stops.forEach((stop, i) => {
    const size = flat.reduce((sum, p) => sum + Math.abs(p.factor) * stop ** p.exponent, 0);
    const isTurn = i > 0 && i < stops.length - 1;
    if (isTurn && Math.abs(of(stop)) <= TOUCHES * size) zeros.push(stop);
    const next = stops[i + 1];
    if (next === undefined) return;
    const zero = rootBetween(of, [stop, next]);
    if (zero !== undefined) zeros.push(zero);
  });
  return zeros
    .sort((a, b) => a - b)
    .filter((zero, i, all) => i === 0 || zero - (all[i - 1] ?? 0) > 1e-9 * zero);
}

// By Descartes' rule there is no zero above 0 without a change of sign.
function changesSign(powers: readonly Power[]): boolean {
  return powers.some(({ factor }) => factor > 0) && powers.some(({ factor }) => factor < 0);
}
