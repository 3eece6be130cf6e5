/**
 * Squeeze and vacuum slot: take water off cloth without heat, by a nip or by suction.
 *
 *     drained = water in − X_out m;   X_out the setting, or what came in if that is less
 */

import { amountNamed } from "./amounts.js";
import { heldTerms, powerTerms, runBySpeed } from "./hours.js";
import { CREW, POWER, SPEED } from "./shared-settings.js";
import type { StepKind } from "./step.js";
import { noWetter, released, waterAt, waterTerms } from "./water.js";

function dewatering(kind: string, words: string): StepKind {
  return {
    kind,
    words,
    settings: {
      "moisture-out": {
        words: "moisture left on the cloth, all water counted",
        unit: "kg/kg",
        limits: [0.2, 2],
        owner: "role",
      },
      power: { ...POWER, limits: [0, 200] },
      speed: { ...SPEED, owner: "machine" },
      crew: CREW,
    },
    choices: {},
    columns: [],
    build: (context, cloth) => {
      const moisture = noWetter(context, cloth, context.set("moisture-out"));
      const hours = runBySpeed(context);
      const left = waterAt(context, moisture);
      return {
        terms: [
          ...waterTerms("water.drained", released(cloth, left)),
          ...powerTerms(hours, context.set("power")),
          ...heldTerms(context, hours),
        ],
        cloth: {
          water: [{ amount: amountNamed("mass"), rate: left }],
          temperature: cloth.temperature,
          moisture,
        },
      };
    },
  };
}

/** Nip of two rollers. */
export const squeeze = dewatering("squeeze", "Presses water out of cloth in a nip.");

/** Slot under vacuum. */
export const vacuumSlot = dewatering("vacuum-slot", "Sucks water out of cloth over a slot.");
