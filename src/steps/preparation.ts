/**
 * Preparation of cloth for printing: desizing, scouring, bleaching and the drying after, taken together per
 * conditioned mass. Cloth leaves it as it came, at hall temperature. How much of its water dries off is not
 * asked for, so all of it is counted as drained.
 */

import { ONE } from "../numbers/quantity.js";
import { amountNamed } from "./amounts.js";
import { chosenSource, drawnFrom, heatChoice, heatFlow } from "./heat-source.js";
import type { StepKind } from "./step.js";
import { substanceTerms } from "./substances.js";

const MASS = amountNamed("mass");

/** Preparation as one step. */
export const preparation: StepKind = {
  kind: "preparation",
  words: "Prepares cloth for printing, all wet steps and the drying after taken together.",
  settings: {
    water: {
      words: "fresh water per conditioned cloth",
      unit: "L/kg",
      limits: [0, 400],
      owner: "role",
    },
    heat: {
      words: "heat used at the machines per conditioned cloth",
      unit: "MJ/kg",
      limits: [0, 60],
      owner: "role",
    },
    electricity: {
      words: "electricity per conditioned cloth",
      unit: "kWh/kg",
      limits: [0, 5],
      owner: "role",
    },
    detergent: {
      words: "detergent per conditioned cloth",
      unit: "g/kg",
      limits: [0, 100],
      owner: "role",
    },
  },
  choices: {
    "heated-by": heatChoice("what the heat comes from", [
      "steam-coil",
      "oil",
      "electric",
      "burner",
    ]),
  },
  columns: [],
  build: (context, cloth) => {
    const source = chosenSource(context, "heated-by");
    const water = context.set("water");
    const soap = [{ substance: "detergent", content: context.set("detergent") }] as const;
    return {
      terms: [
        { flow: "water.process", amount: MASS, rate: water },
        { flow: "water.drained", amount: MASS, rate: water },
        {
          flow: heatFlow(source),
          amount: MASS,
          rate: drawnFrom(context, source, context.set("heat")),
        },
        { flow: "electricity", amount: MASS, rate: context.set("electricity") },
        ...substanceTerms(soap, "bath", MASS, ONE),
      ],
      cloth: { ...cloth, temperature: context.hall.temperature },
    };
  },
};
