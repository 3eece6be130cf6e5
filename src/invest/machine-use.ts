/**
 * Hours of machines against what they have, before and after lots move; and how long lots take, with what they wait
 * for a machine that is busy.
 */

import { quantiles } from "../numbers/quantiles.js";
import { type Span, spanOf } from "./doubt.js";
import { hoursOf, movedShares, orderBook, reprinted, shareThatMay } from "./moved.js";
import type { Quantities, Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld, type World } from "./world.js";

/** Use of a machine whose hours are given. */
export interface MachineUse {
  /** Its name. */
  readonly machine: string;
  /** Hours a year it has. */
  readonly has: number;
  /** Hours asked for if one carries on. */
  readonly before: number;
  /** Hours asked for by the option in the year looked at. */
  readonly after: number;
  /** Share of its hours, if one carries on. */
  readonly useBefore: Span;
  /** Share of its hours, by the option. */
  readonly useAfter: Span;
}

/** Above this share of its hours a machine makes lots wait long. [-] */
export const BUSY = 0.85;

/**
 * Hours of a machine in a year.
 *
 * @param study - the study
 * @param option - the option
 * @param machine - its name
 * @param year - the year
 * @param world - values
 * @returns hours
 */
export function machineHoursIn(
  study: Study,
  option: StudyOption,
  machine: string,
  year: number,
  world: World<number>,
): number {
  const of = (map: Quantities): number => {
    const hours = map.get(machine);
    return hours === undefined ? 0 : world.of(hours);
  };
  const moved = movedShares(study, option, year, world)[year] ?? 0;
  const again = reprinted(study, option, world);
  const change = option.moving.reduce(
    (sum, { share, comesHours, leavesHours }) =>
      sum + shareThatMay(study, world, share) * (again * of(comesHours) - of(leavesHours)),
    0,
  );
  return orderBook(study, world, year) * (of(option.allHours) + moved * change);
}

/**
 * Use of all machines whose hours are given.
 *
 * @param study - the study
 * @param option - the option
 * @param year - the year looked at
 * @param draws - number of worlds
 * @returns machines, the busiest after the change first
 */
export function machineUses(
  study: Study,
  option: StudyOption,
  year: number,
  draws: number,
): readonly MachineUse[] {
  const central = centralWorld();
  const worlds = Array.from({ length: draws }, (_, at) => drawnWorld(at));
  return [...study.capacity]
    .map(([machine, capacity]): MachineUse => {
      const of = (which: StudyOption, world: World<number>): number =>
        machineHoursIn(study, which, machine, year, world);
      const use = (which: StudyOption): Span =>
        spanOf(Float64Array.from(worlds, (world) => of(which, world) / hoursOf(world, capacity)));
      return {
        machine,
        has: hoursOf(central, capacity),
        before: of(study.carryOn, central),
        after: of(option, central),
        useBefore: use(study.carryOn),
        useAfter: use(option),
      };
    })
    .sort((a, b) => b.useAfter.median - a.useAfter.median);
}

/** How long a lot takes on a route. */
export interface LeadTime {
  /** Hours on machines. */
  readonly process: Span;
  /** Hours waiting for machines that are busy. */
  readonly queue: Span;
  /** Quantiles of both together: 5, 25, 50, 75 and 95 %. */
  readonly total: readonly number[];
}

/**
 * How long a lot that may move takes on its dye route as one carries on, and on the new route after the change. A lot
 * waits for a machine u/(1 − u) times as long as it holds it, as at one server with arrivals and times at random; use
 * above 98 % is taken as 98 %.
 *
 * @param study - the study
 * @param option - the option
 * @param year - the year looked at
 * @param draws - number of worlds
 * @returns both
 */
export function leadTimes(
  study: Study,
  option: StudyOption,
  year: number,
  draws: number,
): { readonly dye: LeadTime; readonly pigment: LeadTime } {
  const time = (house: StudyOption, which: "leavesHours" | "comesHours"): LeadTime => {
    const rows = { process: new Float64Array(draws), queue: new Float64Array(draws) };
    const lots = option.moving.reduce((sum, each) => sum + each.lots, 0);
    const machines = new Set(option.moving.flatMap((each) => [...each[which].keys()]));
    for (let at = 0; at < draws; at++) {
      const world = drawnWorld(at);
      for (const machine of machines) {
        const hours = option.moving.reduce((sum, each) => {
          const one = each[which].get(machine);
          return sum + (one === undefined ? 0 : world.of(one));
        }, 0);
        const held = lots > 0 ? hours / lots : 0;
        const capacity = study.capacity.get(machine);
        const use =
          capacity === undefined
            ? 0
            : Math.min(
                0.98,
                machineHoursIn(study, house, machine, year, world) / hoursOf(world, capacity),
              );
        rows.process[at] = (rows.process[at] ?? 0) + held;
        rows.queue[at] = (rows.queue[at] ?? 0) + (held * use) / (1 - use);
      }
    }
    const total = rows.process.map((hours, at) => hours + (rows.queue[at] ?? 0));
    return {
      process: spanOf(rows.process),
      queue: spanOf(rows.queue),
      total: quantiles(total, [0.05, 0.25, 0.5, 0.75, 0.95]),
    };
  };
  return { dye: time(study.carryOn, "leavesHours"), pigment: time(option, "comesHours") };
}
