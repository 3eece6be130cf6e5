/**
 * Hours of machines against what they have, in a year and in its busiest month.
 */

import { type Span, spanOf } from "./doubt.js";
import { loadsOf } from "./loads.js";
import { bookOf } from "./moved.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld, type World } from "./world.js";

/** Use of a machine whose hours are given. */
export interface MachineUse {
  /** Its name. */
  readonly machine: string;
  /** Hours a year it has. */
  readonly has: number;
  /** Hours asked for when every order is printed and every lot moves that may. */
  readonly asked: number;
  /** Hours it runs, no more than it has. */
  readonly runs: number;
  /** Share of its hours that it runs, 1 at most. */
  readonly use: Span;
  /** The busiest month of it, as logged. */
  readonly month: string;
  /** Share of that month's hours that is asked for, at central values; above 1 lots wait for other months. */
  readonly peak: number;
  /** The same in draws. */
  readonly peaks: Span;
  /** Share of draws in which the year asks for more hours than it has. */
  readonly full: number;
  /** Share of draws in which the busiest month does. */
  readonly peakFull: number;
}

/** Above this share of its hours a machine makes lots wait long. [-] */
export const BUSY = 0.85;

/**
 * Hours and shares of a machine in one world and year.
 *
 * @param study - the study
 * @param option - the option
 * @param year - the year
 * @param world - values
 * @returns by machine: share of its hours it runs, and what is asked for
 */
export function usesIn(
  study: Study,
  option: StudyOption,
  year: number,
  world: World<number>,
): ReadonlyMap<string, { readonly has: number; readonly asked: number; readonly runs: number }> {
  const book = bookOf(study, option, year, world);
  return new Map(
    loadsOf(study, option, world).map(({ machine, has, before, change }) => {
      const of = (orders: number, moved: number): number => orders * (before + moved * change);
      const asked = of(book.asked[year] ?? 0, wanted(option, year));
      const runs = Math.min(has, of(book.done[year] ?? 0, book.moved[year] ?? 0));
      return [machine, { has, asked, runs }];
    }),
  );
}

function wanted({ rampup, moving }: StudyOption, year: number): number {
  return moving.length === 0 ? 0 : (rampup[Math.min(year, rampup.length) - 1] ?? 0);
}

/**
 * Use of all machines whose hours are given.
 *
 * @param study - the study
 * @param option - the option
 * @param year - the year looked at
 * @param draws - number of worlds
 * @returns machines, the busiest first
 */
export function machineUses(
  study: Study,
  option: StudyOption,
  year: number,
  draws: number,
): readonly MachineUse[] {
  const central = centralWorld();
  const looked = (world: World<number>) => {
    const months = study.months.map((_, at) => loadsOf(study, option, world, at));
    const { asked } = bookOf(study, option, year, world);
    return { uses: usesIn(study, option, year, world), months, orders: asked[year] ?? 0 };
  };
  const peakOf = ({ months, orders }: ReturnType<typeof looked>, at: number) => {
    let [use, month] = [0, 0];
    months.forEach((loads, i) => {
      const { has = NaN, before = 0, change = 0 } = loads[at] ?? {};
      const each = (orders * (before + wanted(option, year) * change)) / has;
      if (each > use) [use, month] = [each, i];
    });
    return { use, month };
  };
  const worlds = Array.from({ length: draws }, (_, at) => looked(drawnWorld(at)));
  const middle = looked(central);
  return [...study.capacity.keys()]
    .map((machine, at): MachineUse => {
      const { has = NaN, asked = NaN, runs = NaN } = middle.uses.get(machine) ?? {};
      const peak = peakOf(middle, at);
      const peaks = Float64Array.from(worlds, (world) => peakOf(world, at).use);
      const share = (count: (i: number) => boolean): number =>
        worlds.filter((_, i) => count(i)).length / worlds.length;
      return {
        machine,
        has,
        asked,
        runs,
        use: spanOf(
          Float64Array.from(worlds, ({ uses }) => {
            const one = uses.get(machine);
            return one === undefined ? NaN : one.runs / one.has;
          }),
        ),
        month: study.months[peak.month] ?? "",
        peak: peak.use,
        peaks: spanOf(peaks),
        full: share((i) => {
          const one = worlds[i]?.uses.get(machine);
          return one !== undefined && one.asked > one.has * (1 + 1e-9);
        }),
        peakFull: share((i) => (peaks[i] ?? 0) > 1 + 1e-9),
      };
    })
    .sort((a, b) => b.use.median - a.use.median);
}

/** Whether a machine that an option buys is needed for the volume. */
export interface Need {
  /** The machine it stands beside. */
  readonly machine: string;
  /** Use of the one that is there when it does all of it alone. */
  readonly alone: MachineUse;
  /** Share of the lots that may move which the one there has room for in the last year. */
  readonly moved: number;
  /** Name of an option that moves the same lots without buying one; absent where none is compared. */
  readonly twin: string | undefined;
}

/**
 * Asks of each machine that an option buys whether the one there would do alone, in the last year and its busiest
 * month.
 *
 * @param study - the study
 * @param option - the option
 * @param draws - number of worlds
 * @returns one for each machine bought
 */
export function needsOf(study: Study, option: StudyOption, draws: number): readonly Need[] {
  const { life, to } = option.text;
  const without = { ...option, adds: new Map() };
  const twin = study.options.find(
    (other) => other.text.to === to && other.adds.size === 0 && other.moving.length > 0,
  );
  const uses = option.adds.size === 0 ? [] : machineUses(study, without, life, draws);
  const { moved } = bookOf(study, without, life, centralWorld());
  return [...option.adds.keys()].flatMap((machine) => {
    const alone = uses.find((one) => one.machine === machine);
    if (alone === undefined) return [];
    const full = wanted(option, life);
    return [{ machine, alone, moved: full > 0 ? (moved[life] ?? 0) / full : 0, twin: twin?.name }];
  });
}
