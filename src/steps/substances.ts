/**
 * Chemicals of a recipe as terms: grams of each substance per unit of liquor, ink or bath.
 */

import type { Quantity } from "../numbers/quantity.js";
import { product } from "./algebra.js";
import type { Amount } from "./amounts.js";
import type { Placement, Substance } from "./flows.js";
import type { Term } from "./term.js";

/** A substance and how much of it a unit of liquor, ink or bath holds. */
export interface RecipeLine {
  /** What it is. */
  readonly substance: Substance;
  /** Its content. [g/kg liquor or g/L ink or bath] */
  readonly content: Quantity;
}

/**
 * Terms for every substance of a recipe.
 *
 * @param recipe - the lines
 * @param placement - where the substances are put
 * @param amount - what the lots ask for
 * @param liquor - liquor, ink or bath per unit of amount
 * @returns one term a substance, in g
 */
export function substanceTerms(
  recipe: readonly RecipeLine[],
  placement: Placement,
  amount: Amount,
  liquor: Quantity,
): readonly Term[] {
  return recipe.map(({ substance, content }) => ({
    flow: { substance, placement },
    amount,
    rate: product(`${substance}-used`, content, liquor),
  }));
}
