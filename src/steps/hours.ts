/**
 * Time under a machine: set-up per lot and running time by speed or by dwell; and what is drawn by the hour.
 */

import { constant, ONE, type Quantity } from "../numbers/quantity.js";
import { product, ratio } from "./algebra.js";
import { amountNamed, type Amount } from "./amounts.js";
import type { StepContext } from "./step.js";
import type { Term } from "./term.js";

/** A part of the hours: h = amount × rate. */
export interface HourPart {
  /** What the lots ask for. */
  readonly amount: Amount;
  /** Hours per unit of amount. */
  readonly rate: Quantity;
  /** Same lots, with a logged fixation temperature as a further factor. */
  readonly warm?: Amount;
  /** Same lots, those without a logged fixation temperature. */
  readonly unlogged?: Amount;
}

/** Heat of one kilowatt over one hour. */
export const HEAT_HOUR = constant("heat-hour", 3.6, "MJ/(kW h)", "megajoules in a kilowatt-hour");

const POWER_HOUR = constant("power-hour", 1, "kWh/(kW h)", "kilowatts times hours");

/**
 * Running time of a machine that is ruled by speed, without set-up: length / (60 · speed).
 *
 * @param context - setting `speed` [m/min]
 * @returns the one part
 */
export function runBySpeed(context: StepContext): readonly HourPart[] {
  return [
    {
      amount: amountNamed("length"),
      rate: ratio("hours-per-metre", "h/m", ONE, context.set("speed"), 1 / 60),
    },
  ];
}

/**
 * Hours of a machine that is ruled by speed: set-up × lots + length / (60 · speed).
 *
 * @param context - settings `setup` [h/lot] and `speed` [m/min]
 * @returns the parts, which add up
 */
export function hoursBySpeed(context: StepContext): readonly HourPart[] {
  return [{ amount: amountNamed("lots"), rate: context.set("setup") }, ...runBySpeed(context)];
}

/**
 * Hours of the fixing machine: set-up × lots + length · dwell / (3600 · contact). A logged dwell rules
 * over a logged speed, a logged speed over the setting. Both columns are taken, or neither.
 *
 * @param context - settings `setup` [h/lot], `dwell` [s] and `contact` [m]
 * @returns the parts, which add up
 */
export function hoursByDwell(context: StepContext): readonly HourPart[] {
  const contact = context.set("contact");
  const bySetting = ratio("hours-per-metre", "h/m", context.set("dwell"), contact, 1 / 3600);
  const setup: HourPart = { amount: amountNamed("lots"), rate: context.set("setup") };
  if (!context.takes("dwell") || !context.takes("speed")) {
    return [setup, { amount: amountNamed("length"), rate: bySetting }];
  }
  return [
    setup,
    {
      amount: amountNamed("length·dwell"),
      // One dwell-hour on one metre of cloth takes 1/contact hours of the machine.
      rate: ratio("hours-per-dwell", "1/m", ONE, contact),
      warm: amountNamed("length·dwell·fixTemp"),
      unlogged: amountNamed("length·dwell[no fixTemp]"),
    },
    {
      amount: amountNamed("length/speed[no dwell]"),
      rate: ONE,
      warm: amountNamed("length/speed·fixTemp[no dwell]"),
      unlogged: amountNamed("length/speed[no dwell, fixTemp]"),
    },
    {
      amount: amountNamed("length[no dwell, speed]"),
      rate: bySetting,
      warm: amountNamed("length·fixTemp[no dwell, speed]"),
      unlogged: amountNamed("length[no dwell, speed, fixTemp]"),
    },
  ];
}

/**
 * Turns hours into a flow: each part times a rate per hour.
 *
 * @param id - name of the resulting rate
 * @param parts - the hours
 * @param rate - flow per hour
 * @returns amount and rate of each part
 */
export function perHour(
  id: string,
  parts: readonly HourPart[],
  rate: Quantity,
): readonly { readonly amount: Amount; readonly rate: Quantity }[] {
  return parts.map((part) => ({ amount: part.amount, rate: product(id, rate, part.rate) }));
}

/**
 * Hours of a machine that waits hot, or with its water running, as many for each hour running.
 *
 * @param hours - hours running
 * @param idle - hours waiting per hour running [-]
 * @returns the waiting hours, part by part
 */
export function waitingHours(hours: readonly HourPart[], idle: Quantity): readonly HourPart[] {
  return perHour("waiting", hours, idle);
}

/**
 * Marks terms as those of waiting.
 *
 * @param terms - terms of the hours waiting
 * @returns the same terms with the mark
 */
export function waiting(terms: readonly Term[]): readonly Term[] {
  return terms.map((term): Term => ({ ...term, part: "waiting" }));
}

/**
 * Electricity of a machine.
 *
 * @param hours - hours it draws power
 * @param power - power in these hours [kW]
 * @returns terms for `electricity`
 */
export function powerTerms(hours: readonly HourPart[], power: Quantity): readonly Term[] {
  return perHour("power", hours, product("power-drawn", power, POWER_HOUR)).map((part): Term => ({
    flow: "electricity",
    ...part,
  }));
}

/**
 * Time a machine is held, and the time of the people it holds: hours × crew.
 *
 * @param context - setting `crew` [people]
 * @param hours - hours it is held
 * @returns terms for `machine.hours` and `labour.hours`
 */
export function heldTerms(context: StepContext, hours: readonly HourPart[]): readonly Term[] {
  return [
    ...perHour("held", hours, ONE).map((part): Term => ({ flow: "machine.hours", ...part })),
    ...perHour("crew-hours", hours, context.set("crew")).map((part): Term => ({
      flow: "labour.hours",
      ...part,
    })),
  ];
}
