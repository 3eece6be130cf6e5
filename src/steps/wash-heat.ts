/**
 * Heat of a wash range as terms, and the steam that brings it.
 *
 *     behind a coil      heat = Q
 *     blown into the box S = Q / (h_g − c_w T_f)
 *
 * Steam blown in joins the bath and takes the place of as much fresh water. Of that water, which would have
 * come in at feed temperature T_f, Q had counted the warming, so it is the feed and not the box whose
 * liquid heat is taken off h_g.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { product } from "./algebra.js";
import { type Amount, amountNamed } from "./amounts.js";
import type { Cloth } from "./cloth.js";
import { HEAT_HOUR, type HourPart, perHour } from "./hours.js";
import type { StepContext } from "./step.js";
import type { Term, TermPart } from "./term.js";
import {
  type Entering,
  fillingHeat,
  type Group,
  type GroupHeat,
  hottestFeed,
  lastTemperature,
  type RangeLevels,
  type Sequence,
  SEQUENCES,
  washHeat,
} from "./wash-boxes.js";

/** Fresh water of a wash: L = amount × rate. */
export interface LiquorPart {
  /** What the lots ask for. */
  readonly amount: Amount;
  /** Fresh water per unit of amount. [L] */
  readonly rate: Quantity;
  /** Set for water that runs while no cloth does. */
  readonly part?: TermPart;
}

/** Hours in which surfaces lose heat. */
export interface WarmHours {
  /** Hours running. */
  readonly running: readonly HourPart[];
  /** Hours stopped with the boxes hot; none where they are not asked for. */
  readonly stopped: readonly HourPart[];
}

const KJ_PER_MJ = 1000;

const REPLACED = constant("litre-replaced", -1, "L/kg", "fresh water that open steam stands for");

/**
 * Terms for the heat of a range.
 *
 * @param context - settings `warm`, `hot`, `recovery`, `carry-over`, `fresh-water`, `surface`; choices
 *   `heating` and `sequence`
 * @param cloth - cloth as it comes in
 * @param bath - fresh water that runs through the boxes
 * @param filling - water to fill the boxes, per lot [L/lot]
 * @param hours - hours in which the boxes are hot
 * @returns `heat.steam-coil`, or `steam.open` with the `water.process` it saves
 */
export function warming(
  context: StepContext,
  cloth: Cloth,
  bath: readonly LiquorPart[],
  filling: Quantity,
  hours: WarmHours,
): readonly Term[] {
  const per = heatRates(context, cloth);
  const loss = product("surface-loss", context.set("surface"), HEAT_HOUR, per.loss);
  const parts: readonly Omit<Term, "flow">[] = [
    ...bath.map((part) => ({ ...part, rate: product("heat-of-liquor", part.rate, per.litre) })),
    { amount: amountNamed("mass"), rate: per.mass },
    { amount: amountNamed("lots"), rate: product("heat-of-filling", filling, per.filling) },
    ...perHour("heat-of-surfaces", hours.running, loss),
    ...perHour("heat-of-surfaces", hours.stopped, loss).map((part) => ({
      ...part,
      part: "waiting" as const,
    })),
  ];
  if (!injected(context)) return parts.map((part): Term => ({ flow: "heat.steam-coil", ...part }));
  return parts.flatMap((part): readonly Term[] => [
    { flow: "steam.open", ...part },
    { flow: "water.process", ...part, rate: product("fresh-water-replaced", part.rate, REPLACED) },
  ]);
}

/**
 * Temperature with which the cloth leaves the range.
 *
 * @param context - settings `warm`, `hot`, `recovery`; choice `sequence`
 * @returns temperature of the last box [°C]
 */
export function lastBox(context: StepContext): Quantity {
  const groups = groupsOf(context);
  return derive(
    "last-box",
    "°C",
    `temperature of the last box of ${context.choose("sequence")}`,
    levelsOf(context),
    (supply = 0, warm = 0, hot = 0, recovery = 0) =>
      lastTemperature(groups, { supply, warm, hot, recovery }),
  );
}

// In MJ behind a coil, in kg of steam when it is blown in.
function heatRates(
  context: StepContext,
  cloth: Cloth,
): Readonly<Record<"litre" | "mass" | "filling" | "loss", Quantity>> {
  const groups = groupsOf(context);
  const open = injected(context);
  const given = (heat: number, feed: number, enthalpy: number): number =>
    open ? heat / (enthalpy - WATER_HEAT_CAPACITY * feed) : heat / KJ_PER_MJ;
  const rate = (
    id: string,
    per: string,
    words: string,
    value: (levels: RangeLevels, entering: Entering, enthalpy: number) => number,
  ): Quantity =>
    derive(
      id,
      `${open ? "kg" : "MJ"}/${per}`,
      `${words}${open ? " / (h_g − c_w T_f)" : ""}, sequence ${context.choose("sequence")}`,
      [
        ...levelsOf(context),
        context.steam.enthalpy,
        cloth.temperature,
        context.kind.heatCapacity,
        context.set("carry-over"),
        context.set("fresh-water"),
      ],
      (supply = 0, warm = 0, hot = 0, recovery = 0, enthalpy = 0, tIn = 0, ...rest) => {
        const [capacity = 0, carried = 0, liquor = 0] = rest;
        return value(
          { supply, warm, hot, recovery },
          { temperature: tIn, capacity, carried, liquor },
          enthalpy,
        );
      },
    );
  const overGroups =
    (heat: (group: GroupHeat) => number) =>
    (levels: RangeLevels, entering: Entering, enthalpy: number): number => {
      let sum = 0;
      for (const group of washHeat(groups, levels, entering)) {
        sum += given(heat(group), group.feed, enthalpy);
      }
      return sum;
    };
  return {
    litre: rate(
      "heat-per-liquor",
      "L",
      "Σ c_w (T_j − T_in,j) over the boxes heated",
      overGroups((group) => group.perLitre),
    ),
    mass: rate(
      "heat-per-cloth",
      "kg",
      "Σ (m c / M + c_w u)(T_j − T_j−1) over the boxes heated",
      overGroups((group) => group.perMass),
    ),
    filling: rate("heat-per-filling", "L", "mean of c_w (T_j − T_s)", (levels, _, enthalpy) =>
      given(fillingHeat(groups, levels), levels.supply, enthalpy),
    ),
    loss: rate("heat-per-loss", "MJ", "loss of the surfaces", (levels, _, enthalpy) =>
      given(KJ_PER_MJ, hottestFeed(groups, levels), enthalpy),
    ),
  };
}

function injected(context: StepContext): boolean {
  return context.choose("heating") === "injection";
}

function groupsOf(context: StepContext): readonly Group[] {
  const answer = context.choose("sequence");
  if (!Object.hasOwn(SEQUENCES, answer)) {
    throw new TypeError(`${answer} is no sequence of boxes.`);
  }
  return SEQUENCES[answer as Sequence];
}

function levelsOf(context: StepContext): readonly Quantity[] {
  return [
    context.supplyTemperature,
    context.set("warm"),
    context.set("hot"),
    context.set("recovery"),
  ];
}
