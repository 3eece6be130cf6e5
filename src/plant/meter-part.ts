/**
 * Meters of the plant file: what they count, where they stand in the tree, how they are read.
 */

import * as z from "zod";

/** What meters count. */
const METERED = ["water", "electricity", "gas", "steam", "effluent", "condensate", "cod"] as const;

/** Schema of a meter. */
export const MeterPart = z
  .strictObject({
    quantity: z
      .enum(METERED)
      .describe(
        "water, electricity, gas or steam; effluent, condensate or cod (mg/L of a sample), which are shown beside",
      ),
    unit: z.string().describe("unit of the readings"),
    covers: z
      .union([
        z.literal("site"),
        z.strictObject({
          machines: z.array(z.string()).min(1).describe("machines behind it, by name"),
        }),
      ])
      .describe("what it covers: site, or { machines: [NAME, …] }"),
    site: z.string().optional().describe("site it stands at, needed where there are several"),
    within: z.string().optional().describe("the meter above it, whose count holds its own"),
    basis: z
      .enum(["net", "gross"])
      .optional()
      .describe("heating value of gas readings, needed at a meter of gas: net or gross"),
    kind: z
      .enum(["amount", "register"])
      .optional()
      .describe("amount over the period (so when absent), or register: the figure on its dial"),
    digits: z
      .number()
      .int()
      .min(3)
      .max(12)
      .optional()
      .describe("digits of the dial before the point, after which a register begins anew"),
    multiplier: z
      .number()
      .positive()
      .optional()
      .describe("what a step of the dial stands for, in the unit; 1 when absent"),
    accuracy: z
      .number()
      .positive()
      .max(50)
      .optional()
      .describe("% within which 95 of 100 readings are right; 2 when absent, 5 for steam"),
    heating_value: z
      .number()
      .positive()
      .optional()
      .describe("kWh of a normal m³ of gas (0 °C, 1.01325 bar), on the basis named"),
    volume: z
      .union([
        z.literal("normal"),
        z.literal("standard"),
        z.strictObject({
          temperature: z.number().min(-40).max(80).describe("°C of the gas at the meter"),
          pressure: z.number().positive().max(20).describe("bar absolute at the meter"),
        }),
      ])
      .optional()
      .describe(
        "basis of gas counted in m³: normal (0 °C), standard (15 °C), or { temperature, pressure } at the meter",
      ),
    enthalpy: z
      .number()
      .min(1500)
      .max(3500)
      .optional()
      .describe("kJ of a kg of steam above water of 0 °C, for steam counted as heat"),
    base: z
      .strictObject({
        value: z.number().min(0).describe("what it counts in a month"),
        low: z.number().min(0).describe("the lower end it may lie at"),
        high: z.number().min(0).describe("the upper end it may lie at"),
        source: z.string().min(1).describe("where that was read"),
      })
      .optional()
      .describe("what it counts in a month when nothing is printed, in its unit"),
  })
  .describe("a meter");

/** A meter as written. */
export type MeterText = z.output<typeof MeterPart>;
