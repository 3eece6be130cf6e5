/**
 * Hours that machines are asked for against those they have.
 */

import type { AddedMachine, MachineCapacity, MonthWeights, Quantities, Study } from "./study.js";
import type { StudyOption } from "./study.js";
import type { World } from "./world.js";

/** Load of a machine at the logged order book. */
export interface Load<T> {
  /** Its name. */
  readonly machine: string;
  /** Hours a year it has, with those of machines that the option puts beside it. */
  readonly has: T;
  /** Hours asked for while no lot has moved. */
  readonly before: T;
  /** Hours more once all lots that may move have moved; below 0 where the machine is relieved. */
  readonly change: T;
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

/**
 * Hours a year that a machine can be run, with those of a machine bought beside it. Hours of a faster one count as
 * many hours of the one that is there.
 *
 * @param world - values
 * @param capacity - hours and availability of the one there
 * @param added - machine bought beside it
 * @returns hours
 */
function hoursOf<T>(
  world: World<T>,
  capacity: MachineCapacity,
  added: AddedMachine | undefined,
): T {
  const { math, of } = world;
  const own = math.times(of(capacity.hours), of(capacity.availability));
  if (added === undefined) return own;
  const more = math.times(of(added.hours), of(added.availability));
  return math.plus(own, math.times(more, of(added.speed)));
}

/**
 * Loads of all machines whose hours are given.
 *
 * @param study - the study
 * @param option - the option
 * @param world - values
 * @param month - place of a month: hours as they would be a year if all months were like it; the year when absent
 * @returns one for each machine, in the order of the file
 */
export function loadsOf<T>(
  study: Study,
  option: StudyOption,
  world: World<T>,
  month?: number,
): readonly Load<T>[] {
  const { math } = world;
  const shares = option.moving.map(({ share }) => shareThatMay(study, world, share));
  const again = reprinted(study, option, world);
  return [...study.capacity].map(([machine, capacity]) => {
    const hours = (map: Quantities, weights: MonthWeights): T => {
      const found = map.get(machine);
      if (found === undefined) return math.of(0);
      const weight = month === undefined ? 1 : (weights.get(machine)?.[month] ?? 0);
      return math.times(world.of(found), math.of(weight));
    };
    let change = math.of(0);
    option.moving.forEach(({ comesHours, comesMonths, leavesHours, leavesMonths }, i) => {
      const each = math.minus(
        math.times(hours(comesHours, comesMonths), again),
        hours(leavesHours, leavesMonths),
      );
      change = math.plus(change, math.times(shares[i] ?? math.of(0), each));
    });
    return {
      machine,
      has: hoursOf(world, capacity, option.adds.get(machine)),
      before: hours(option.allHours, option.allMonths),
      change,
    };
  });
}
