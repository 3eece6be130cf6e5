/**
 * Time under a machine: set-up per lot and running time by speed or by dwell.
 */

import { derive, ONE, type Quantity } from "../numbers/quantity.js";
import { product, ratio } from "./algebra.js";
import { amountNamed, type Amount } from "./amounts.js";
import type { StepContext } from "./step.js";

// One dwell-hour on one metre of cloth takes 1/contact hours of the machine.
function inverse(contact: Quantity): Quantity {
  return derive("hours-per-dwell", "1/m", `1 / ${contact.id}`, [contact], (metres = 1) => 1 / metres);
}

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

/**
 * Hours of a machine that is ruled by speed: set-up × lots + length / (60 · speed).
 *
 * @param context - settings `setup` [h/lot] and `speed` [m/min]
 * @returns the parts, which add up
 */
export function hoursBySpeed(context: StepContext): readonly HourPart[] {
  return [
    { amount: amountNamed("lots"), rate: context.set("setup") },
    {
      amount: amountNamed("length"),
      rate: ratio("hours-per-metre", "h/m", ONE, context.set("speed"), 1 / 60),
    },
  ];
}

/**
 * Hours of the fixing machine: set-up × lots + length · dwell / (3600 · contact). A logged dwell rules
 * over a logged speed, a logged speed over the setting.
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
      rate: inverse(contact),
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
