/**
 * Rise of humidity from hall to exhaust, drawn as one difference that is above 0 in every draw.
 *
 *     rise = W₂ − W₁ at the median of the hall;   W₂ = W₁ + rise
 *
 * A mill reads its exhaust on a usual day of its hall, and what its dampers rule is how much water each
 * kilogram of air carries off. So the doubt about W₂ is doubt about the rise, and a damper hall makes a
 * damper exhaust. The doubt is cut where air could hardly carry water: ranks are mapped into what is left,
 * so no mass is heaped on the cut.
 */

import { medianOf, quantileOf, tailBeyond } from "../numbers/distributions.js";
import { derive, evaluate, type Quantity } from "../numbers/quantity.js";
import type { Spread } from "../numbers/spread.js";
import { dryAirPerWater } from "../physics/drying-balance.js";
import { InputError } from "../problems/input-error.js";
import { chosenSource } from "./heat-source.js";
import type { StepContext } from "./step.js";

/** Least rise of humidity: 67 kg of dry air for a kilogram of water. Own bound, no source. [kg/kg] */
const LEAST_RISE = 0.015;

/**
 * Least rise per vapour of a burner. At a third, a burner in the hottest exhaust still spends no more than
 * about three quarters of its heat on its own vapour and the air for it. [MJ/kg]
 */
const RISE_PER_VAPOUR = 1 / 3;

/** Thrown when an exhaust is told so dry that it could hardly carry water out of its hall. */
export class DryExhaust extends InputError {
  /** Role of the step in its route. */
  readonly role: string;

  /** Least exhaust humidity in this hall. [kg/kg dry air] */
  readonly least: number;

  /** Humidity of the hall. [kg/kg dry air] */
  readonly hall: number;

  /**
   * @param role - role of the step
   * @param exhaust - exhaust humidity as told [kg/kg dry air]
   * @param least - least exhaust humidity in this hall [kg/kg dry air]
   * @param hall - humidity of the hall [kg/kg dry air]
   */
  constructor(role: string, exhaust: number, least: number, hall: number) {
    super(
      `exhaust humidity of step ${role}`,
      exhaust,
      `expected at least ${least} kg per kg dry air, as the hall holds ${hall} already; correct the exhaust humidity of the machine, or temperature and relative humidity of the hall`,
    );
    this.role = role;
    this.least = least;
    this.hall = hall;
  }
}

/**
 * Rise of humidity of a dryer whose exhaust is kept at a humidity.
 *
 * @param context - setting `exhaust-humidity`; choice `heat`; air of the hall
 * @returns W₂ − W₁, positive in every draw [kg/kg dry air]
 * @throws {@link DryExhaust} when the median of the exhaust is not well above that of the hall
 */
export function exhaustRise(context: StepContext): Quantity {
  const exhaust = context.set("exhaust-humidity");
  const vapour = chosenSource(context, "heat") === "burner" ? atMedians(context.burnerVapour) : 0;
  const hall = atMedians(context.hall.humidity);
  const least = Math.max(LEAST_RISE, RISE_PER_VAPOUR * vapour);
  const median = atMedians(exhaust);
  if (!(median > hall && 1 / dryAirPerWater(hall, median) >= least)) {
    throw new DryExhaust(context.role, round(median), round(hall + least), round(hall));
  }
  const cut = exhaust.kind === "leaf" ? cutAt(exhaust.spread, hall + least) : undefined;
  return derive(
    "humidity-rise",
    "kg/kg",
    `${exhaust.kind === "leaf" ? exhaust.factor : exhaust.id} − ${hall.toPrecision(6)} kg/kg of the hall at its median, above ${least.toPrecision(3)}`,
    [exhaust],
    (humidity = 0) => Math.max(least, (cut === undefined ? humidity : cut(humidity)) - hall),
  );
}

function atMedians(quantity: Quantity): number {
  return evaluate(quantity, ({ spread }) => medianOf(spread));
}

function round(humidity: number): number {
  return Number(humidity.toPrecision(3));
}

// Maps a draw of a spread to the same rank of what lies above a lower end; undefined when all of it does.
function cutAt(spread: Spread, low: number): ((value: number) => number) | undefined {
  const rank = ranksOf(spread);
  const below = rank(low);
  if (!(below > 0)) return undefined;
  const quantile = quantileOf(spread);
  return (value) => quantile(Math.min(1 - Number.EPSILON, below + (1 - below) * rank(value)));
}

// Share of a spread, as it is drawn, that lies below a value.
function ranksOf(spread: Spread): (value: number) => number {
  const below = (value: number): number => tailBeyond(spread, [value, Infinity]);
  if (spread.shape !== "normal" && spread.shape !== "lognormal") return below;
  const [low, high] = spread.limits.map(below);
  const kept = (high ?? 1) - (low ?? 0);
  return (value) => Math.min(1, Math.max(0, (below(value) - (low ?? 0)) / kept));
}
