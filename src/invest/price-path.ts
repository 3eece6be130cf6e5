/**
 * Prices year by year. In money of the start a price moves by its real growth, in money of each year by its own
 * growth, which is that of inflation where none is given. A price older than a year at the start first grows
 * through the whole years since its day.
 *
 *     pₜ = p (1 + g)^(age + time of t),   real: × (1 + inflation)^age
 */

import type { Drawn } from "./inputs.js";
import type { Price, Study } from "./study.js";
import { timeOf } from "./present-value.js";
import type { World } from "./world.js";

/** A factor for each year, from year 0 on. */
export type Path<T> = readonly T[];

/**
 * What money of year t has become of 1 at its date.
 *
 * @param study - kind of money, timing and inflation
 * @param world - values
 * @param growth - growth per year; inflation, or none in money of the start, when absent
 * @param age - whole years from the date to the start
 * @param last - last year
 * @returns factors from year 0 on
 */
export function growthPath<T>(
  study: Pick<Study, "money" | "timing" | "inflation">,
  world: World<T>,
  growth: Drawn | undefined,
  age: number,
  last: number,
): Path<T> {
  const { math } = world;
  const one = math.of(1);
  const inflation = study.inflation === undefined ? math.of(0) : world.of(study.inflation);
  const own =
    growth === undefined ? (study.money === "nominal" ? inflation : math.of(0)) : world.of(growth);
  const base = math.plus(one, own);
  const lift = study.money === "real" && age > 0 ? math.power(math.plus(one, inflation), age) : one;
  return Array.from({ length: last + 1 }, (_, year) =>
    math.times(lift, math.power(base, age + timeOf(year, study.timing))),
  );
}

/**
 * A price in the study's currency, year by year.
 *
 * @param study - the study
 * @param world - values
 * @param price - the price
 * @param last - last year
 * @returns money per unit from year 0 on
 */
export function pricePath<T>(study: Study, world: World<T>, price: Price, last: number): Path<T> {
  const { math } = world;
  const at = math.times(world.of(price.price), world.of(price.exchange));
  return growthPath(study, world, price.growth, price.age, last).map((factor) =>
    math.times(at, factor),
  );
}
