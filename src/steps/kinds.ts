/**
 * Every kind of step a route may name.
 */

import { calender } from "./calender.js";
import { outsourced } from "./outsourced.js";
import { pad } from "./pad.js";
import { preparation } from "./preparation.js";
import { printer } from "./printer.js";
import { squeeze, vacuumSlot } from "./squeeze.js";
import { steamer } from "./steamer.js";
import { hotFlue, oven, stenterCure, stenterDry } from "./stenter.js";
import type { StepKind } from "./step.js";
import { store } from "./store.js";
import { tumbler } from "./tumbler.js";
import { washRange } from "./wash-range.js";

const ALL: readonly StepKind[] = [
  preparation,
  pad,
  stenterDry,
  hotFlue,
  printer,
  stenterCure,
  oven,
  calender,
  steamer,
  washRange,
  squeeze,
  vacuumSlot,
  tumbler,
  store,
  outsourced,
];

/** Kinds of step by the word that plant files use. */
export const STEP_KINDS: Readonly<Record<string, StepKind>> = Object.freeze(
  Object.fromEntries(ALL.map((kind) => [kind.kind, kind])),
);
