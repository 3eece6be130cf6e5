/**
 * Calender for heat fixation: cloth runs round a hot cylinder, pressed on it by a felt, often with paper
 * between. No air is moved, so the drying balance is left without its first term.
 *
 *     Q = m (c + c_w X₂)(t_fix − t₁) + w (2501 + 1.86 t_fix − c_w t₁) + m [D(X₂) − D(X₁)] + standing kW × hours
 *     paper = area × paper / uses
 *
 * The cylinder is kept turning while it is hot, so it draws its power while waiting too.
 */

import { ONE } from "../numbers/quantity.js";
import { ratio } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import { dry } from "./drying.js";
import { chosenSource, DRY_HEAT_SOURCES, heatChoice } from "./heat-source.js";
import { hoursByDwell } from "./hours.js";
import {
  CREW,
  DWELL,
  FIX_TEMPERATURE,
  IDLE,
  MOISTURE_OUT,
  POWER,
  SETUP,
  STANDING,
} from "./shared-settings.js";
import type { StepKind } from "./step.js";

/** Calender that fixes print by contact heat. */
export const calender: StepKind = {
  kind: "calender",
  words: "Fixes print by contact with a hot cylinder.",
  settings: {
    "fix-temperature": FIX_TEMPERATURE,
    dwell: DWELL,
    contact: {
      words: "cloth length in contact with the cylinder",
      unit: "m",
      limits: [0.2, 20],
      owner: "machine",
    },
    standing: { ...STANDING, words: "loss of cylinder and felt to the hall while hot" },
    power: { ...POWER, words: "electric power of drives while hot", limits: [0, 200] },
    idle: IDLE,
    setup: SETUP,
    crew: CREW,
    "moisture-out": MOISTURE_OUT,
    paper: {
      words: "protecting paper run along per cloth area; 0 without",
      unit: "m2/m2",
      limits: [0, 3],
      owner: "role",
    },
    "paper-uses": {
      words: "times a length of paper is used",
      unit: "1",
      limits: [1, 100],
      owner: "role",
    },
  },
  choices: { heat: heatChoice("what heats the cylinder", DRY_HEAT_SOURCES) },
  columns: ["fixTemp", "dwell", "speed"],
  build: (context, cloth) => {
    const fixed = dry(context, cloth, {
      hours: hoursByDwell(context),
      moistureOut: context.set("moisture-out"),
      clothOut: context.set("fix-temperature"),
      air: "still",
      standing: context.set("standing"),
      power: context.set("power"),
      idle: context.set("idle"),
      idlePower: ONE,
      heat: chosenSource(context, "heat"),
    });
    const paper = ratio("paper-used-up", "m2/m2", context.set("paper"), context.set("paper-uses"));
    return {
      terms: [...fixed.terms, { flow: "paper", amount: amountNamed("area"), rate: paper }],
      cloth: fixed.cloth,
    };
  },
};
