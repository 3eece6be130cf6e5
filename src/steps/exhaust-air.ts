/**
 * Air that a dryer kept at a humidity must move, per hour running:
 *
 *     a / hours = (w + v Q_b) / (W₂ − W₁) / hours
 *
 * w water driven off, v Q_b vapour of a burner's flue gas. When it is more than the fan can move, humidity,
 * speed or moisture is told wrong.
 */

import { derive } from "../numbers/quantity.js";
import { unitProduct } from "../units/dimension.js";
import type { Air } from "./dryer-run.js";
import type { CheckPart, StepCheck, StepContext } from "./step.js";

/**
 * Exhaust air of a dryer beside its fan.
 *
 * @param context - the step, for the vapour of its burner
 * @param air - how its air is ruled
 * @param driven - water driven off [kg]
 * @param fired - heat fired in a burner of its own; none for other sources [MJ]
 * @param hours - hours running
 * @returns the check, or none where the air is a setting itself
 */
export function exhaustAir(
  context: StepContext,
  air: Air,
  driven: readonly CheckPart[],
  fired: readonly CheckPart[],
  hours: readonly CheckPart[],
): readonly StepCheck[] {
  if (air === "still" || "flow" in air) return [];
  const { rise, fan } = air;
  const { burnerVapour, burnerEfficiency } = context;
  const ofWater = driven.map(({ amount, rate }) => ({
    amount,
    rate: derive("air-of-water", rate.unit, "w / rise", [rate, rise], (w = 0, r = 1) => w / r),
  }));
  const ofVapour = fired.map(({ amount, rate }) => ({
    amount,
    rate: derive(
      "air-of-flue-gas",
      unitProduct(burnerVapour.unit, rate.unit),
      "v × fuel × burner efficiency / rise",
      [burnerVapour, rate, burnerEfficiency, rise],
      (v = 0, fuel = 0, efficiency = 1, r = 1) => (v * fuel * efficiency) / r,
    ),
  }));
  return [
    {
      words: "dry air in the exhaust while running",
      unit: "kg/h",
      above: [...ofWater, ...ofVapour],
      below: hours,
      most: fan,
    },
  ];
}
