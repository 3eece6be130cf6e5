/**
 * How many of the lots that may move have moved, and how much of the order book can be printed at all: no more than
 * the ramp-up allows, and no more than machines have hours for.
 */

import { type Load, loadsOf } from "./loads.js";
import type { Study, StudyOption } from "./study.js";
import type { World } from "./world.js";

/**
 * The order book of a year as a multiple of the logged one, before any is cut.
 *
 * @param study - the study
 * @param world - values
 * @param year - the year, 0 for the start
 * @returns the multiple
 */
export function orderBook<T>(study: Study, world: World<T>, year: number): T {
  const { math } = world;
  const grown = math.power(math.plus(math.of(1), world.of(study.growth)), year);
  return math.times(world.of(study.level), grown);
}

/** What an option prints, year by year from year 0 on. */
export interface Book<T> {
  /** Order book that is asked for, as a multiple of the logged one; 0 in year 0. */
  readonly asked: readonly T[];
  /** Of it what is printed in the house. */
  readonly done: readonly T[];
  /** Share of the lots that may move which has moved; 0 in year 0. */
  readonly moved: readonly T[];
}

/**
 * What an option prints. Lots move as far as machines of the new route have room; of orders beyond the hours of a
 * machine the rest is cut or bought outside, where the file puts a price on it. Without a price they are cut to what
 * every option can print, so that none earns by printing less.
 *
 *     k = min(ramp-up, (C/v − H) / Σ share · (hours that come − hours that go)),  v printed = min(v, C/(H + k Σ …))
 *
 * @param study - the study
 * @param option - the option
 * @param life - last year
 * @param world - values
 * @returns order book and shares
 */
export function bookOf<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
): Book<T> {
  const { math } = world;
  const zero = math.of(0);
  const loads = loadsOf(study, option, world);
  const years = Array.from({ length: life + 1 }, (_, year) => year);
  const asked = years.map((year) => (year === 0 ? zero : orderBook(study, world, year)));
  const done = asked.map((orders, year) => {
    if (year === 0) return zero;
    if (study.beyond === undefined) return common(study, world, year, orders);
    return mostOf(world, loads, shareMoved(world, option, loads, year, orders), orders);
  });
  const moved = years.map((year) =>
    year === 0 ? zero : shareMoved(world, option, loads, year, done[year] ?? zero),
  );
  return { asked, done, moved };
}

function shareMoved<T>(
  { math }: World<T>,
  { rampup, moving }: StudyOption,
  loads: readonly Load<T>[],
  year: number,
  orders: T,
): T {
  if (moving.length === 0) return math.of(0);
  let most = math.of(rampup[Math.min(year, rampup.length) - 1] ?? 0);
  for (const { has, before, change } of loads) {
    if (!(math.number(change) > 0)) continue;
    const room = math.over(math.minus(math.over(has, orders), before), change);
    if (math.number(room) < math.number(most)) most = math.number(room) > 0 ? room : math.of(0);
  }
  return most;
}

// The most of an order book that all machines have hours for.
function mostOf<T>({ math }: World<T>, loads: readonly Load<T>[], moved: T, orders: T): T {
  let most = orders;
  for (const { has, before, change } of loads) {
    const each = math.plus(before, math.times(moved, change));
    if (!(math.number(each) > 0)) continue;
    const can = math.over(has, each);
    if (math.number(can) < math.number(most)) most = can;
  }
  return most;
}

const BOOKS = new WeakMap<Study, WeakMap<object, Map<number, unknown>>>();

// What every option that is still alive can print of an order book; worked out once in a world.
function common<T>(study: Study, world: World<T>, year: number, orders: T): T {
  let worlds = BOOKS.get(study);
  if (worlds === undefined) BOOKS.set(study, (worlds = new WeakMap()));
  let known = worlds.get(world);
  if (known === undefined) {
    const all = [study.carryOn, ...study.options].map((option) => ({
      option,
      loads: loadsOf(study, option, world),
    }));
    const last = Math.max(...all.map(({ option }) => option.text.life));
    known = new Map();
    for (let at = 1; at <= last; at++) {
      let most = at === year ? orders : orderBook(study, world, at);
      for (const { option, loads } of all) {
        if (option !== study.carryOn && option.text.life < at) continue;
        const can = mostOf(world, loads, shareMoved(world, option, loads, at, most), most);
        if (world.math.number(can) < world.math.number(most)) most = can;
      }
      known.set(at, most);
    }
    worlds.set(world, known);
  }
  return (known.get(year) as T | undefined) ?? orders;
}
