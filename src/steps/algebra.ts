/**
 * Small sums and products of quantities, so that a step can say its formula in one line.
 */

import { derive, type Derived, type Quantity } from "../numbers/quantity.js";
import { unitProduct } from "../units/dimension.js";

/**
 * Product of quantities; its unit is the product of theirs.
 *
 * @param id - name of the product
 * @param factors - what is multiplied
 * @returns the product
 */
export function product(id: string, ...factors: readonly Quantity[]): Derived {
  const unit = factors.map((factor) => factor.unit).reduce(unitProduct, "1");
  const value = (...numbers: readonly number[]): number => {
    let result = 1;
    for (const number of numbers) result *= number;
    return result;
  };
  const words = factors.map(shortName).join(" × ");
  return { ...derive(id, unit, words, factors, value), multiplies: true };
}

/**
 * Sum of quantities.
 *
 * @param id - name of the sum
 * @param unit - its unit
 * @param parts - what is added
 * @returns the sum
 */
export function total(id: string, unit: string, ...parts: readonly Quantity[]): Derived {
  return derive(id, unit, parts.map(shortName).join(" + "), parts, (...numbers) => {
    let result = 0;
    for (const number of numbers) result += number;
    return result;
  });
}

/**
 * Quotient of two quantities.
 *
 * @param id - name of the quotient
 * @param unit - its unit
 * @param above - numerator
 * @param below - denominator
 * @param scale - plain multiplier, such as 1/60 for minutes to hours
 * @returns scale × above / below
 */
export function ratio(
  id: string,
  unit: string,
  above: Quantity,
  below: Quantity,
  scale = 1,
): Derived {
  const times = scale === 1 ? "" : `${scale} × `;
  return derive(
    id,
    unit,
    `${times}${shortName(above)} / ${shortName(below)}`,
    [above, below],
    (a = 0, b = 1) => (scale * a) / b,
  );
}

/**
 * A quantity times a plain number, for changes of unit and sign.
 *
 * @param id - name of the result
 * @param unit - its unit
 * @param quantity - what is multiplied
 * @param factor - plain multiplier
 * @returns factor × quantity
 */
export function scaled(id: string, unit: string, quantity: Quantity, factor: number): Derived {
  return derive(
    id,
    unit,
    `${factor} × ${shortName(quantity)}`,
    [quantity],
    (value = 0) => factor * value,
  );
}

/**
 * Name of a quantity inside a formula: the factor of a leaf, the id of a formula.
 *
 * @param quantity - the quantity
 * @returns its short name
 */
export function shortName(quantity: Quantity): string {
  return quantity.kind === "leaf" ? quantity.factor : quantity.id;
}
