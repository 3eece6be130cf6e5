/**
 * Options that move lots, set beside an improved wash range instead of carrying on: whether what they save is still
 * there once the range takes less.
 */

import { costOf } from "./cost.js";
import { type Span, spanOf } from "./doubt.js";
import { gainOf } from "./gain.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld, type World } from "./world.js";

/** What an option brings on top of an improved wash range. */
export interface AfterWash {
  /** Name of the option. */
  readonly name: string;
  /** Worth beside the improved range at central values. */
  readonly central: number;
  /** The same in draws. */
  readonly drawn: Span;
  /** Draws in which it is above 0. */
  readonly above: number;
  /** Number of draws. */
  readonly of: number;
}

/**
 * An option in a house whose wash range has been improved: it pays its own lines, and those that the range asked for
 * at the start.
 *
 * @param option - the option, its flows under the improved house
 * @param wash - the option that improves the range
 * @param carryOn - the option to carry on
 * @returns the option after the range
 */
export function ontoWash(
  option: StudyOption,
  wash: StudyOption,
  carryOn: StudyOption,
): StudyOption {
  const known = new Set([...carryOn.yearly, ...option.yearly].map(({ what }) => what));
  return {
    ...option,
    text: { ...option.text, life: Math.min(option.text.life, wash.text.life) },
    capital: [...option.capital, ...wash.capital.filter(({ year }) => year === 0)],
    yearly: [...option.yearly, ...wash.yearly.filter(({ what }) => !known.has(what))],
  };
}

/**
 * Worth of options beside the improved range.
 *
 * @param study - the study
 * @param draws - number of worlds
 * @returns one for each option that moves lots; none where no option improves the range
 */
export function afterWashOf(study: Study, draws: number): readonly AfterWash[] {
  const { afterWash } = study;
  if (afterWash === undefined) return [];
  const { wash, options } = afterWash;
  return options.map((option): AfterWash => {
    const worth = (world: World<number>): number =>
      gainOf(study, option, world, costOf(study, wash, option.text.life, world)).worth;
    const worths = Float64Array.from({ length: draws }, (_, at) => worth(drawnWorld(at)));
    return {
      name: option.name,
      central: worth(centralWorld()),
      drawn: spanOf(worths),
      above: worths.reduce((count, each) => count + (each > 0 ? 1 : 0), 0),
      of: draws,
    };
  });
}
