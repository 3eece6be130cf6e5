/**
 * One balance for every machine that drives water off cloth with heat: stenter, hot flue, oven, tumbler;
 * for curing, where little water leaves and the air is a flow that runs by the hour; and for the
 * calender, which moves no air of its own.
 *
 *     Q = a (1.006 + 1.86 W₁)(t_e − t_h)(1 − ε) + w (2501 + 1.86 t_e − c_w t₁)
 *       + m (c + c_w X₂)(t₂ − t₁) + m [D(X₂) − D(X₁)] + standing kW × hours
 *
 * a dry air, w water driven off, m bone-dry cloth; 1 entry, 2 exit, e exhaust, h hall. In humidity mode
 * a = (w + v Q)/(W₂ − W₁), in flow mode a = G × hours; v is the vapour a direct burner adds, which only
 * carries its sensible heat because fuel is counted on net calorific value. All is linear in w, m and
 * hours, so the whole splits into terms. A dryer never wets cloth: X₂ is the setting, or X₁ if less.
 *
 * Machine work other than this is electricity: fans, drives and extraction, kW × hours. While a machine waits
 * hot it loses its standing heat, draws a share of its power and holds its people; these are terms of their own.
 */

import { product } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth } from "./cloth.js";
import type { DryerRun } from "./dryer-run.js";
import { dryingHeat, firedIn } from "./drying-heat.js";
import { exhaustAir } from "./exhaust-air.js";
import { heatFlow } from "./heat-source.js";
import {
  HEAT_HOUR,
  heldTerms,
  type HourPart,
  perHour,
  powerTerms,
  waiting,
  waitingHours,
} from "./hours.js";
import type { CheckPart, StepContext, StepResult } from "./step.js";
import type { Term } from "./term.js";
import { noWetter, released, waterAt, waterTerms } from "./water.js";

/**
 * Dries or cures cloth by the balance above.
 *
 * @param context - the step
 * @param cloth - cloth as it comes in
 * @param run - settings of this machine and job
 * @returns terms for heat, electricity, evaporation and hours, and cloth at the exit
 */
export function dry(context: StepContext, cloth: Cloth, run: DryerRun): StepResult {
  const moisture = noWetter(context, cloth, run.moistureOut);
  const left = waterAt(context, moisture);
  const driven = released(cloth, left);
  const idle = waitingHours(run.hours, run.idle);
  const heat = (parts: readonly CheckPart[]): readonly Term[] =>
    parts.map(({ amount, rate }) => ({
      flow: heatFlow(run.heat),
      amount,
      rate: firedIn(context, run, rate),
    }));
  const standing = product("standing-loss", run.standing, HEAT_HOUR);
  const lost = (hours: readonly HourPart[]): readonly Term[] =>
    heat(perHour("standing-heat", hours, standing));
  const heated = [
    ...heat(dryingHeat(context, cloth, driven, { ...run, moistureOut: moisture })),
    ...lost(run.hours),
  ];
  const fired = run.heat === "burner" ? heated : [];
  return {
    terms: [
      ...heated,
      ...waterTerms("water.evaporated", driven),
      ...powerTerms(run.hours, run.power),
      ...heldTerms(context, run.hours),
      ...waiting([
        ...lost(idle),
        ...powerTerms(idle, product("idle-power", run.power, run.idlePower)),
        ...heldTerms(context, idle),
      ]),
    ],
    cloth: {
      water: [{ amount: amountNamed("mass"), rate: left }],
      temperature: run.clothOut,
      moisture,
    },
    checks: exhaustAir(context, run.air, driven, fired, run.hours),
  };
}
