/**
 * What an option brings: what carrying on would cost over the same years, less its own cost.
 */

import { sumOf } from "./arithmetic.js";
import { byHeadingOf, type Cost, costOf, type Heading, HEADINGS } from "./cost.js";
import { presentValue, timeOf } from "./present-value.js";
import type { Study, StudyOption } from "./study.js";
import { taxOf } from "./tax.js";
import type { World } from "./world.js";

/** What an option brings against carrying on. */
export interface Gain<T> {
  /** Money by year after tax, above 0 where the option is better. */
  readonly flows: readonly T[];
  /** Money by heading and year before tax. */
  readonly byHeading: ReadonlyMap<Heading, readonly T[]>;
  /** Tax by year; zeros where none is counted. */
  readonly tax: readonly T[];
  /** Cost of the option. */
  readonly option: Cost<T>;
  /** Cost of carrying on over the same years. */
  readonly carryOn: Cost<T>;
  /** Net present value. */
  readonly worth: T;
  /** Tonnes of CO2e less, by year. */
  readonly tonnesLess: readonly T[];
}

/**
 * Works out what an option brings.
 *
 * @param study - the study
 * @param option - the option
 * @param world - values
 * @param carryOn - cost of carrying on over the same years, where it is known already
 * @returns what it brings over its life
 */
export function gainOf<T>(
  study: Study,
  option: StudyOption,
  world: World<T>,
  carryOn: Cost<T> = costOf(study, study.carryOn, option.text.life, world),
): Gain<T> {
  const { math } = world;
  const { life } = option.text;
  const cost = costOf(study, option, life, world);
  const years = Array.from({ length: life + 1 }, (_, year) => year);
  const totals = { now: byHeadingOf(math, carryOn, life), then: byHeadingOf(math, cost, life) };
  const byHeading = new Map(
    HEADINGS.map((heading) => [
      heading,
      years.map((year) =>
        math.minus(
          totals.now.get(heading)?.[year] ?? math.of(0),
          totals.then.get(heading)?.[year] ?? math.of(0),
        ),
      ),
    ]),
  );
  const before = years.map((year) =>
    sumOf(
      math,
      [...byHeading.values()].map((money) => money[year] ?? math.of(0)),
    ),
  );
  const tax = taxed(study, world, byHeading, before);
  const flows = before.map((money, year) => math.minus(money, tax[year] ?? math.of(0)));
  return {
    flows,
    byHeading,
    tax,
    option: cost,
    carryOn,
    worth: presentValue(math, world.of(study.discount), flows, study.timing),
    tonnesLess: years.map((year) =>
      math.minus(carryOn.tonnes[year] ?? math.of(0), cost.tonnes[year] ?? math.of(0)),
    ),
  };
}

function taxed<T>(
  study: Study,
  world: World<T>,
  byHeading: ReadonlyMap<Heading, readonly T[]>,
  before: readonly T[],
): readonly T[] {
  const { math } = world;
  if (study.tax === undefined) return before.map(() => math.of(0));
  const capital = (byHeading.get("capital") ?? []).map(math.number);
  const last = before.length - 1;
  // What is got at the end is income of that year; what is laid out before is written off.
  const outlays = capital.map((money, year) => (year === last ? 0 : -money));
  const gains = before.map(
    (money, year) => math.number(money) - (year === last ? 0 : (capital[year] ?? 0)),
  );
  const erosion =
    study.money === "real" && study.inflation !== undefined
      ? math.number(world.of(study.inflation))
      : 0;
  const { rate, years } = study.tax;
  return taxOf({ rate, years, erosion }, gains, outlays).map(math.of);
}

/**
 * Present values of a row of money, year by year.
 *
 * @param study - timing
 * @param rate - discount rate [-]
 * @param flows - money by year
 * @returns the same, discounted
 */
export function discounted(
  study: Pick<Study, "timing">,
  rate: number,
  flows: readonly number[],
): readonly number[] {
  return flows.map((flow, year) => flow / (1 + rate) ** timeOf(year, study.timing));
}
