/** Every step and route of the hall, as the page lists them. */

import type { Fibre } from "./hall.js";
import type { Steps } from "./published.js";

/** A step or a route. */
export interface StepAsked {
  /** Id. */
  readonly id: string;
  /** What it is. */
  readonly words: string;
  /** Where it stands. */
  readonly steps: Steps;
  /** Whether it is a whole route. */
  readonly whole: boolean;
  /** Fibres it is asked of; all when absent. */
  readonly fibres?: readonly Fibre[];
}

const step = (id: string, words: string, on: Steps["on"], role: string): StepAsked => ({
  id,
  words,
  steps: { on, roles: [role] },
  whole: false,
});

const route = (id: string, words: string, on: Steps["on"]): StepAsked => ({
  id,
  words,
  steps: { on },
  whole: true,
});

/** Steps in the order of the hall, then routes. */
export const ALL_STEPS: readonly StepAsked[] = [
  step("prepare", "Preparation, all wet steps and the drying after", "other-machines", "prepare"),
  step("pad", "Pad before printing", "pigment-calender", "pretreat"),
  step("pad-dry", "Stenter after the pad", "pigment-calender", "pretreat-dry"),
  step("flue-dry", "Hot flue after the pad", "other-machines", "flue-dry"),
  step("print", "Printer with its dryer", "pigment-calender", "print"),
  step("calender", "Fixing on the calender", "pigment-calender", "fix"),
  step("cure", "Curing on the stenter", "pigment-stenter", "fix"),
  step("oven", "Curing in the oven", "other-machines", "oven-fix"),
  step("finish", "Finish pad", "pigment-finished", "finish"),
  step("finish-dry", "Stenter after the finish pad", "pigment-finished", "finish-dry"),
  step("tumble", "Tumbler, cloth dry as it comes", "other-machines", "tumble"),
  step("slot", "Vacuum slot", "other-machines", "slot"),
  step("partner", "Pass through a dryer at a partner house", "other-machines", "partner"),
  step("steam", "Steamer", "dye", "steam"),
  step("wash", "Wash range", "dye", "wash"),
  step("squeeze", "Squeeze after the wash", "dye", "squeeze"),
  step("wash-dry", "Stenter after the wash", "dye", "dry"),
  route("route-calender", "Pigment route, fixed on the calender", "pigment-calender"),
  route("route-stenter", "Pigment route, cured on the stenter", "pigment-stenter"),
  route("route-finished", "Pigment route, cured on the stenter and finished", "pigment-finished"),
  route("route-dye", "Dye route, reactive, acid or disperse by fibre", "dye"),
];
