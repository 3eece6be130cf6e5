/**
 * What seconds on a machine are worth: a metre that moves held longer or shorter, and lots run by a faster machine.
 */

import type { Drawn } from "./inputs.js";
import { gainOf } from "./gain.js";
import type { Quantities, Study, StudyOption } from "./study.js";
import { centralWorld } from "./world.js";

const HOURS = "machine.hours";

function plus(drawn: Drawn, more: number): Drawn {
  const { id, central, draws } = drawn;
  return {
    id: `${id}.more`,
    central: central + more,
    ...(draws === undefined ? {} : { draws: draws.map((each) => each + more) }),
  };
}

function times(drawn: Drawn, by: number): Drawn {
  const { id, central, draws } = drawn;
  return {
    id: `${id}.times`,
    central: central * by,
    ...(draws === undefined ? {} : { draws: draws.map((each) => each * by) }),
  };
}

function minus(a: Drawn, b: Drawn): Drawn {
  const draws = a.draws?.map((each, at) => each - (b.draws?.[at] ?? b.central));
  return {
    id: `${a.id}.less`,
    central: a.central - b.central,
    ...(draws === undefined ? {} : { draws }),
  };
}

function changed(map: Quantities, key: string, change: (drawn: Drawn) => Drawn): Quantities {
  const found = map.get(key);
  return found === undefined ? map : new Map([...map, [key, change(found)]]);
}

/**
 * An option whose lots that move are held longer by a machine, or shorter; energy of the machine stays as it is.
 *
 * @param option - the option
 * @param machine - the machine
 * @param seconds - more for each metre that moves, below 0 for less [s/m]
 * @returns the option otherwise
 */
export function heldLonger(option: StudyOption, machine: string, seconds: number): StudyOption {
  return {
    ...option,
    moving: option.moving.map((each) => {
      const more = (seconds * each.length) / 3600;
      const add = (drawn: Drawn): Drawn => plus(drawn, more);
      return {
        ...each,
        comes: changed(each.comes, HOURS, add),
        comesHours: changed(each.comesHours, machine, add),
      };
    }),
  };
}

/**
 * An option whose lots that move all run on the machine it buys, at the speed of that one.
 *
 * @param option - the option
 * @returns the option otherwise; undefined where it buys none that is faster or slower
 */
export function atOwnSpeed(option: StudyOption): StudyOption | undefined {
  const fast = [...option.adds].filter(([, { speed }]) => speed.central !== 1);
  if (fast.length === 0) return undefined;
  return {
    ...option,
    moving: option.moving.map((each) =>
      fast.reduce((one, [machine, { speed }]) => {
        const held = one.comesHours.get(machine);
        if (held === undefined) return one;
        const spared = times(held, 1 - 1 / speed.central);
        return {
          ...one,
          comes: changed(one.comes, HOURS, (drawn) => minus(drawn, spared)),
          comesHours: changed(one.comesHours, machine, (drawn) => minus(drawn, spared)),
        };
      }, each),
    ),
  };
}

/** What a second a metre on a machine moves. */
export interface SecondsWorth {
  /** Change of the worth with a second more for each metre that moves. */
  readonly more: number;
  /** Change of the worth with a second less. */
  readonly less: number;
}

/**
 * Worth of a second a metre on a machine, at central values.
 *
 * @param study - the study
 * @param option - the option
 * @param machine - the machine
 * @returns changes of its worth
 */
export function secondsWorth(study: Study, option: StudyOption, machine: string): SecondsWorth {
  const worth = (one: StudyOption): number => gainOf(study, one, centralWorld()).worth;
  const base = worth(option);
  return {
    more: worth(heldLonger(option, machine, 1)) - base,
    less: worth(heldLonger(option, machine, -1)) - base,
  };
}
