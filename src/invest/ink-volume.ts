/**
 * Litres of an ink by option and year, against the litres a price was offered for; and the worth of the project where
 * carrying on pays another price than the project.
 */

import { costOf } from "./cost.js";
import { gainOf } from "./gain.js";
import type { Study } from "./study.js";
import { centralWorld } from "./world.js";

/** Flow and price of the ink that lots move to. */
const [FLOW, PRICE] = ["ink.pigment", "prices.ink.pigment"] as const;

/** Litres of an option. */
export interface InkLitres {
  /** Name of the option. */
  readonly name: string;
  /** Litres of pigment ink by year, from year 1 on. */
  readonly years: readonly number[];
}

/**
 * Litres of pigment ink of every option, the one to carry on first, at central values.
 *
 * @param study - the study
 * @returns litres over the life of each
 */
export function inkLitres(study: Study): readonly InkLitres[] {
  const world = centralWorld();
  return [study.carryOn, ...study.options].map((option) => {
    const { quantities } = costOf(study, option, option.text.life, world);
    return { name: option.name, years: [...(quantities.get(FLOW) ?? [])].slice(1) };
  });
}

/**
 * Worth of the project where carrying on pays another price for pigment ink, and the project the one of the file.
 *
 * @param study - the study
 * @param price - price that carrying on pays
 * @returns net present value at central values otherwise
 */
export function worthBeside(study: Study, price: number): number {
  const { project, carryOn } = study;
  const before = costOf(study, carryOn, project.text.life, centralWorld(new Map([[PRICE, price]])));
  return gainOf(study, project, centralWorld(), before).worth;
}
