/**
 * Storing: cloth waits in the hall until it has its temperature and its moisture.
 *
 *     taken up from hall air = R m − water on cloth;   what is above the regain evaporates
 */

import { derive } from "../numbers/quantity.js";
import { amountNamed } from "./amounts.js";
import type { StepKind } from "./step.js";
import { released, waterAt, waterTerms } from "./water.js";

const MASS = amountNamed("mass");

/** Cloth stored between two steps. */
export const store: StepKind = {
  kind: "stored",
  words: "Keeps cloth in the hall until it has the hall's temperature and its regain.",
  settings: {},
  choices: {},
  columns: [],
  build: (context, cloth) => {
    const regain = waterAt(context, context.kind.regain);
    const gone = released(cloth, regain);
    const over = gone.map(({ amount, rate }) => ({
      amount,
      rate:
        amount === MASS
          ? derive("above-regain", "kg/kg", "water above the regain", [rate], (w = 0) =>
              Math.max(0, w),
            )
          : rate,
    }));
    const under = gone
      .filter(({ amount }) => amount === MASS)
      .map(({ amount, rate }) => ({
        amount,
        rate: derive("below-regain", "kg/kg", "water short of the regain", [rate], (w = 0) =>
          Math.max(0, -w),
        ),
      }));
    return {
      terms: [...waterTerms("water.evaporated", over), ...waterTerms("water.from-air", under)],
      cloth: {
        water: [{ amount: MASS, rate: regain }],
        temperature: context.hall.temperature,
        moisture: context.kind.regain,
      },
    };
  },
};
