/**
 * What is left on cloth after washing: balances of soluble matter over a row of boxes, each box fully mixed
 * and fed with clean water. Matter that holds on to the fibre, hydrolysed dye above all, leaves more slowly:
 * for it these figures are a lower bound.
 */

import { InputError, within } from "../problems/input-error.js";

/**
 * Share left behind n boxes through which water runs against the cloth.
 *
 *     (E − 1) / (Eⁿ⁺¹ − 1) = 1 / (1 + E + … + Eⁿ)
 *
 * @param E - fresh water over carried liquor, F / w, from 0 [-]
 * @param n - number of boxes, a whole number from 1 [-]
 * @returns concentration of the liquor carried out over that carried in [-]
 * @throws {@link InputError} outside those ranges
 */
export function residualCounterCurrent(E: number, n: number): number {
  checked(E, n);
  let sum = 1;
  for (let box = 0; box < n; box++) sum = sum * E + 1;
  return 1 / sum;
}

/**
 * Share left behind n baths that share the same fresh water evenly.
 *
 *     (1 + E / n)⁻ⁿ
 *
 * @param E - all fresh water over carried liquor, F / w, from 0 [-]
 * @param n - number of baths, a whole number from 1 [-]
 * @returns concentration of the liquor carried out over that carried in [-]
 * @throws {@link InputError} outside those ranges
 */
export function residualFreshBaths(E: number, n: number): number {
  checked(E, n);
  return (1 + E / n) ** -n;
}

/**
 * Share left when only part of the carried liquor is exchanged in each box.
 *
 *     f_i = (1 − k) f_{i−1} + k b_i                   liquor on the cloth behind box i
 *     w f_{i−1} + F b_{i+1} = w f_i + F b_i           counter-current, b_{n+1} = 0
 *     w f_{i−1} = w f_i + (F / n) b_i                 fresh baths
 *
 * Solved from the last box back, starting from whatever leaves it and scaling at the end.
 *
 * @param F - fresh water of all boxes, from 0 [kg/kg cloth]
 * @param w - liquor carried by the cloth, above 0 [kg/kg cloth]
 * @param n - number of boxes, a whole number from 1 [-]
 * @param k - share of the carried liquor exchanged in a box, above 0 to 1 [-]
 * @param counterCurrent - whether the water runs against the cloth; else each box is fed by itself
 * @returns concentration of the liquor carried out over that carried in [-]
 * @throws {@link InputError} outside those ranges
 */
export function residualIncomplete(
  F: number,
  w: number,
  n: number,
  k: number,
  counterCurrent: boolean,
): number {
  if (!(w > 0 && Number.isFinite(w))) {
    throw new InputError("carried liquor", w, "expected above 0 kg per kg cloth");
  }
  if (!(k > 0 && k <= 1)) {
    throw new InputError("exchange in a box", k, "expected a share above 0, at most 1");
  }
  checked(F / w, n);
  const feed = counterCurrent ? F : F / n;
  let cloth = 1;
  let incoming = 0;
  for (let box = 0; box < n; box++) {
    const before = (cloth * (w + feed / k) - feed * incoming) / (w + (feed * (1 - k)) / k);
    if (counterCurrent) incoming = (cloth - (1 - k) * before) / k;
    cloth = before;
  }
  return 1 / cloth;
}

function checked(E: number, n: number): void {
  within("fresh water over carried liquor", E, 0, 1e6, "kg per kg");
  if (!(Number.isInteger(n) && n >= 1 && n <= 100)) {
    throw new InputError("number of boxes", n, "expected a whole number from 1 to 100");
  }
}
