/**
 * Effluent of an option: volume and strength year by year, and what is charged for it. Strengths are those measured
 * today where they are given, moved as the model moves them.
 */

import { type Arithmetic, sumOf } from "./arithmetic.js";
import {
  type ChargePart,
  effluentParts,
  type EffluentTariff,
  type Strength,
  tariffBy,
  tariffOn,
} from "./effluent-tariff.js";
import { growthPath } from "./price-path.js";
import type { YearQuantities } from "./quantities.js";
import type { DatedTariff, Study } from "./study.js";
import type { World } from "./world.js";

/** Effluent of a year. */
export interface EffluentYear<T> {
  /** Volume. [m³] */
  readonly volume: T;
  /** Its strength. */
  readonly strength: Strength<T>;
  /** Parts of the charge. */
  readonly parts: readonly ChargePart<T>[];
  /** The tariff in force. */
  readonly tariff: DatedTariff;
}

/**
 * First day of a year of a study.
 *
 * @param start - first day of year 1
 * @param year - number of the year, from 1
 * @returns day as ISO 8601
 */
function dayOfYear(start: string, year: number): string {
  return `${Number(start.slice(0, 4)) + year - 1}${start.slice(4)}`;
}

/**
 * Effluent year by year.
 *
 * @param study - the study
 * @param life - last year
 * @param world - values
 * @param quantities - quantities of the option
 * @returns years from 1 on
 */
export function effluentYears<T>(
  study: Study,
  life: number,
  world: World<T>,
  quantities: YearQuantities<T>,
): readonly EffluentYear<T>[] {
  const { math } = world;
  const { effluent } = study;
  const grown = growthPath(study, world, effluent.growth, 0, life);
  return Array.from({ length: life }, (_, i) => {
    const year = i + 1;
    const found = tariffOn(effluent.tariffs, dayOfYear(study.start, year));
    if (found === undefined) throw new Error("There is no tariff for effluent.");
    const scale = math.times(
      math.times(world.of(effluent.level), grown[year] ?? math.of(1)),
      world.of(found.exchange),
    );
    const tariff = scaled(math, found.tariff, scale);
    const volume = math.times(
      quantities.get("water.discharged")?.[year] ?? math.of(0),
      math.of(1e-3),
    );
    const strength = strengthOf(study, world, quantities, year);
    return {
      volume,
      strength,
      parts: effluentParts(math, tariff, volume, strength),
      tariff: found,
    };
  });
}

/**
 * Charge for effluent year by year.
 *
 * @param study - the study
 * @param life - last year
 * @param world - values
 * @param quantities - quantities of the option
 * @returns money from year 0 on
 */
export function effluentOf<T>(
  study: Study,
  life: number,
  world: World<T>,
  quantities: YearQuantities<T>,
): readonly T[] {
  const { math } = world;
  return [
    math.of(0),
    ...effluentYears(study, life, world, quantities).map(({ parts }) =>
      sumOf(
        math,
        parts.map(({ money }) => money),
      ),
    ),
  ];
}

// Prices grow; strengths and ratios that a tariff names do not.
const STRENGTHS = new Set([
  "standard_cod",
  "standard_solids",
  "bod.above",
  "cod.above",
  "cod.ratio",
  "solids.above",
]);

function scaled<T>(
  math: Arithmetic<T>,
  tariff: EffluentTariff<number>,
  scale: T,
): EffluentTariff<T> {
  return tariffBy(tariff, (value, key) =>
    STRENGTHS.has(key) ? math.of(value) : math.times(math.of(value), scale),
  );
}

// Modelled g of COD per L of today is what the measured strength is set beside.
function strengthOf<T>(
  study: Study,
  world: World<T>,
  quantities: YearQuantities<T>,
  year: number,
): Strength<T> {
  const { math } = world;
  const { effluent, carryOn } = study;
  const zero = math.of(0);
  const of = (flow: string): T => quantities.get(flow)?.[year] ?? zero;
  const at = (flow: string): T => {
    const drawn = carryOn.all.get(flow);
    return drawn === undefined ? zero : world.of(drawn);
  };
  const over = (load: T, volume: T): T =>
    math.number(volume) > 0 ? math.over(math.times(load, math.of(1000)), volume) : zero;
  const modelled = over(of("cod"), of("water.discharged"));
  const today = over(at("cod"), at("water.discharged"));
  const ratio = math.number(today) > 0 ? math.over(modelled, today) : math.of(1);
  const cod = effluent.cod === undefined ? modelled : math.times(world.of(effluent.cod), ratio);
  const solids = world.of(effluent.solids);
  return {
    cod,
    settled: math.times(cod, world.of(effluent.settled)),
    bod: math.times(cod, world.of(effluent.bodPerCod)),
    solids: effluent.solidsFollow === "cod" ? math.times(solids, ratio) : solids,
  };
}
