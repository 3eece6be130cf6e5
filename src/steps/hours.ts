/**
 * Time under a machine: set-up per lot and running time by speed or by dwell; and what is drawn by the hour.
 */

import { constant, derive, ONE, type Quantity } from "../numbers/quantity.js";
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
 * Hours hot per hour running, of a machine that is kept hot between lots.
 *
 * @param idle - hours hot and waiting per hour running [-]
 * @returns 1 + idle
 */
export function hotHours(idle: Quantity): Quantity {
  return derive("hot-hours", "1", "1 + idle", [idle], (waiting = 0) => 1 + waiting);
}

/**
 * Electricity of a machine.
 *
 * @param hours - hours running
 * @param power - power while running [kW]
 * @param drawn - electricity per electricity while running, for waiting; 1 when it stands still then
 * @returns terms for `electricity`
 */
export function powerTerms(
  hours: readonly HourPart[],
  power: Quantity,
  drawn: Quantity = ONE,
): readonly Term[] {
  return perHour("power", hours, product("power-drawn", power, drawn, POWER_HOUR)).map(
    (part): Term => ({ flow: "electricity", ...part }),
  );
}

/**
 * Time a machine is held.
 *
 * @param hours - hours running
 * @param hot - hours held per hour running; 1 when lots follow without waiting
 * @returns terms for `machine.hours`
 */
export function heldTerms(hours: readonly HourPart[], hot: Quantity = ONE): readonly Term[] {
  return perHour("held", hours, hot).map((part): Term => ({ flow: "machine.hours", ...part }));
}
