/**
 * How long lots take, with what they wait for a machine that is busy.
 */

import { quantiles } from "../numbers/quantiles.js";
import { type Span, spanOf } from "./doubt.js";
import { usesIn } from "./machine-use.js";
import type { Study, StudyOption, Waits } from "./study.js";
import { drawnWorld } from "./world.js";

/** How long a lot takes on a route. */
export interface LeadTime {
  /** Hours on machines. */
  readonly process: Span;
  /** Hours waiting for machines that are busy. */
  readonly queue: Span;
  /** Hours for batches and in store that the file gives; 0 where it gives none. */
  readonly given: Span;
  /** Quantiles of all together: 5, 25, 50, 75 and 95 %. */
  readonly total: readonly number[];
}

/** Use above which the wait has no meaning any more. [-] */
const MOST = 0.98;

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
  const time = (
    house: StudyOption,
    which: "leavesHours" | "comesHours",
    { batching, store }: Waits,
  ): LeadTime => {
    const row = (): Float64Array => new Float64Array(draws);
    const rows = { process: row(), queue: row(), given: row() };
    const lots = option.moving.reduce((sum, each) => sum + each.lots, 0);
    const machines = new Set(option.moving.flatMap((each) => [...each[which].keys()]));
    for (let at = 0; at < draws; at++) {
      const world = drawnWorld(at);
      for (const wait of [batching, store])
        rows.given[at] = (rows.given[at] ?? 0) + (wait === undefined ? 0 : world.of(wait));
      const uses = usesIn(study, house, year, world);
      for (const machine of machines) {
        const hours = option.moving.reduce((sum, each) => {
          const one = each[which].get(machine);
          return sum + (one === undefined ? 0 : world.of(one));
        }, 0);
        const held = lots > 0 ? hours / lots : 0;
        const busy = uses.get(machine);
        const use = busy === undefined ? 0 : Math.min(MOST, busy.runs / busy.has);
        rows.process[at] = (rows.process[at] ?? 0) + held;
        rows.queue[at] = (rows.queue[at] ?? 0) + (held * use) / (1 - use);
      }
    }
    const total = rows.process.map(
      (hours, at) => hours + (rows.queue[at] ?? 0) + (rows.given[at] ?? 0),
    );
    return {
      process: spanOf(rows.process),
      queue: spanOf(rows.queue),
      given: spanOf(rows.given),
      total: quantiles(total, [0.05, 0.25, 0.5, 0.75, 0.95]),
    };
  };
  const { dye, pigment } = study.waits;
  return {
    dye: time(study.carryOn, "leavesHours", dye),
    pigment: time(option, "comesHours", pigment),
  };
}
