/**
 * A step done by a partner house, known only by what it takes per conditioned mass. Cloth comes back as it went.
 */

import { amountNamed } from "./amounts.js";
import type { StepKind } from "./step.js";

const MASS = amountNamed("mass");

/** Fixation or finishing at a partner house. */
export const outsourced: StepKind = {
  kind: "outsourced",
  words: "Has cloth fixed or finished by a partner house.",
  settings: {
    electricity: {
      words: "electricity the partner uses per conditioned cloth",
      unit: "kWh/kg",
      limits: [0, 10],
      owner: "role",
    },
    heat: {
      words: "fuel heat the partner uses per conditioned cloth",
      unit: "MJ/kg",
      limits: [0, 60],
      owner: "role",
    },
  },
  choices: {},
  columns: [],
  build: (context, cloth) => ({
    terms: [
      { flow: "bought.electricity", amount: MASS, rate: context.set("electricity") },
      { flow: "bought.heat", amount: MASS, rate: context.set("heat") },
    ],
    cloth: { ...cloth, temperature: context.hall.temperature },
  }),
};
