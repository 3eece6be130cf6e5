/**
 * Moisture of cloth on the two bases in use. The computation works in kg water per kg bone-dry cloth; a
 * moisture meter often prints the share of water in the wet cloth.
 */

import { InputError, within } from "../problems/input-error.js";

/**
 * Moisture on the dry basis.
 *
 *     X = w / (1 − w)
 *
 * @param wet - share of water in the wet mass, from 0 to below 1 [kg/kg wet]
 * @returns moisture [kg water / kg bone dry]
 * @throws {@link InputError} outside that range
 */
export function dryBasis(wet: number): number {
  if (wet >= 0 && wet < 1) return wet / (1 - wet);
  throw new InputError("moisture on the wet basis", wet, "expected a share from 0 to below 1");
}

/**
 * Moisture on the wet basis.
 *
 *     w = X / (1 + X)
 *
 * @param dry - moisture, from 0 [kg water / kg bone dry]
 * @returns share of water in the wet mass [kg/kg wet]
 * @throws {@link InputError} below 0
 */
export function wetBasis(dry: number): number {
  within("moisture on the dry basis", dry, 0, Number.MAX_VALUE, "kg water per kg bone dry");
  return dry / (1 + dry);
}
