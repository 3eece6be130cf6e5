/**
 * Water vapour from burning a hydrocarbon.
 */

import { InputError } from "../problems/input-error.js";

// Standard atomic weights, abridged. [g/mol]
const CARBON = 12.011;
const HYDROGEN = 1.008;
const OXYGEN = 15.999;

/**
 * Vapour raised per energy fired, by stoichiometry: two atoms of hydrogen give one molecule of water.
 *
 *     v = (y / 2) M(H₂O) / M(CₓH_y) / NCV
 *
 * Methane, for natural gas, gives 0.045 kg/MJ, propane, for liquefied petroleum gas, 0.035 kg/MJ.
 *
 * @param carbon - x, atoms of carbon in the molecule, from 0 [-]
 * @param hydrogen - y, atoms of hydrogen in the molecule, above 0 [-]
 * @param netCalorificValue - energy without that of the condensing vapour, above 0 [MJ/kg]
 * @returns vapour [kg/MJ net]
 * @throws {@link InputError} outside those ranges
 * @see IUPAC, Standard atomic weights of the elements 2021, table 2
 */
export function vapourPerMegajoule(
  carbon: number,
  hydrogen: number,
  netCalorificValue: number,
): number {
  if (!(carbon >= 0)) throw new InputError("carbon atoms", carbon, "expected 0 or more");
  if (!(hydrogen > 0)) throw new InputError("hydrogen atoms", hydrogen, "expected more than 0");
  if (!(netCalorificValue > 0)) {
    throw new InputError("net calorific value", netCalorificValue, "expected above 0 MJ/kg");
  }
  const water = (hydrogen / 2) * (2 * HYDROGEN + OXYGEN);
  const fuel = carbon * CARBON + hydrogen * HYDROGEN;
  return water / fuel / netCalorificValue;
}
