/**
 * How many of the lots that may move have moved: no more than the ramp-up allows, and no more than the machines of
 * the new route have hours for.
 */

import type { MachineCapacity, Study, StudyOption } from "./study.js";
import type { World } from "./world.js";

/**
 * The order book of a year as a multiple of the logged one.
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

/**
 * Share of the lots of a rule that may move at all, 1 at most.
 *
 * @param study - the study
 * @param world - values
 * @param share - share the file gives
 * @returns the share
 */
export function shareThatMay<T>(
  study: Study,
  world: World<T>,
  share: StudyOption["moving"][number]["share"],
): T {
  const { math } = world;
  const scaled = math.times(world.of(share), world.of(study.eligible));
  return math.number(scaled) > 1 ? math.of(1) : scaled;
}

/**
 * Hours a year that a machine can be run.
 *
 * @param world - values
 * @param capacity - its hours and availability
 * @returns hours
 */
export function hoursOf<T>(world: World<T>, capacity: MachineCapacity): T {
  return world.math.times(world.of(capacity.hours), world.of(capacity.availability));
}

/**
 * Share of the lots that may move which has moved, year by year. A machine whose hours are given takes no more than
 * them; one that is full already without these lots takes none.
 *
 *     k = min(ramp-up, (C/v − H) / Σ share · (hours that come − hours that go))
 *
 * @param study - the study
 * @param option - the option
 * @param life - last year
 * @param world - values
 * @returns shares from year 0 on, 0 in year 0
 */
export function movedShares<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
): readonly T[] {
  const { math } = world;
  const zero = math.of(0);
  if (option.moving.length === 0) return Array.from({ length: life + 1 }, () => zero);
  const bounds = boundsOf(study, option, world);
  return Array.from({ length: life + 1 }, (_, year) => {
    if (year === 0) return zero;
    const { rampup } = option;
    let most = math.of(rampup[Math.min(year, rampup.length) - 1] ?? 0);
    const orders = orderBook(study, world, year);
    for (const { hours, before, more } of bounds) {
      const room = math.over(math.minus(math.over(hours, orders), before), more);
      if (math.number(room) < math.number(most)) most = math.number(room) > 0 ? room : zero;
    }
    return most;
  });
}

function boundsOf<T>(
  study: Study,
  option: StudyOption,
  world: World<T>,
): readonly { readonly hours: T; readonly before: T; readonly more: T }[] {
  const { math } = world;
  return [...study.capacity].flatMap(([machine, capacity]) => {
    let more = math.of(0);
    for (const { share, comesHours, leavesHours } of option.moving) {
      const of = (map: typeof comesHours): T => {
        const hours = map.get(machine);
        return hours === undefined ? math.of(0) : world.of(hours);
      };
      const change = math.minus(
        math.times(of(comesHours), reprinted(study, option, world)),
        of(leavesHours),
      );
      more = math.plus(more, math.times(shareThatMay(study, world, share), change));
    }
    if (!(math.number(more) > 0)) return [];
    const now = option.allHours.get(machine);
    return [
      {
        hours: hoursOf(world, capacity),
        before: now === undefined ? math.of(0) : world.of(now),
        more,
      },
    ];
  });
}

/**
 * Area to be printed on the new route for each m² printed before, so that as much is accepted:
 * (1 − rejected before) / (1 − rejected then).
 *
 * @param study - share rejected as logged
 * @param option - share rejected on the new route; as before when absent
 * @param world - values
 * @returns the multiple
 */
export function reprinted<T>(study: Study, option: StudyOption, world: World<T>): T {
  const { math } = world;
  if (option.rejects === undefined) return math.of(1);
  const kept = math.minus(math.of(1), world.of(option.rejects));
  return math.over(math.of(1 - study.rejected), kept);
}
