/**
 * COD at the drain against the limit of the permit.
 */

import { costOf } from "./cost.js";
import { type Span, spanOf } from "./doubt.js";
import { effluentYears } from "./effluent.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld, type World } from "./world.js";

/** COD of an option at the drain. */
export interface DrainCod {
  /** Name of the option. */
  readonly name: string;
  /** At central values. [mg/L] */
  readonly central: number;
  /** In draws. [mg/L] */
  readonly cod: Span;
  /** Draws above the permit limit, and of how many; absent without a limit. */
  readonly above: { readonly count: number; readonly of: number } | undefined;
}

/**
 * COD at the drain in a year.
 *
 * @param study - the study
 * @param option - the option
 * @param year - the year
 * @param draws - number of worlds
 * @returns strength, and how often it is above the limit
 */
export function drainCod(study: Study, option: StudyOption, year: number, draws: number): DrainCod {
  const at = (world: World<number>): number => {
    const { quantities } = costOf(study, option, year, world);
    return effluentYears(study, year, world, quantities)[year - 1]?.strength.cod ?? NaN;
  };
  const worlds = Array.from({ length: draws }, (_, i) => drawnWorld(i));
  const cod = Float64Array.from(worlds, at);
  const { codLimit } = study.effluent;
  return {
    name: option.name,
    central: at(centralWorld()),
    cod: spanOf(cod),
    above:
      codLimit === undefined
        ? undefined
        : {
            count: worlds.filter((world, i) => (cod[i] ?? NaN) > world.of(codLimit)).length,
            of: draws,
          },
  };
}
