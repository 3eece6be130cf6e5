/**
 * Readings of single lots in the plant file: which machines each column of the log counts.
 */

import * as z from "zod";

const machines = z
  .array(z.string())
  .min(1)
  .describe("machines whose take the column counts, by name");
const accuracy = z
  .number()
  .positive()
  .max(50)
  .optional()
  .describe("% within which 95 of 100 readings are right; 2 when absent, 5 for steam");
const column = z.strictObject({ machines, accuracy });

/** Schema of the part. */
export const ReadingsPart = z
  .strictObject({
    water_l: column.optional().describe("what water_l counts"),
    steam_kg: column.optional().describe("what steam_kg counts"),
    electricity_kwh: column.optional().describe("what electricity_kwh counts"),
    gas_kwh: z
      .strictObject({
        machines,
        accuracy,
        basis: z.enum(["net", "gross"]).describe("heating value of the readings: net or gross"),
      })
      .optional()
      .describe("what gas_kwh counts"),
  })
  .describe("which machines readings of single lots count; a column left out corrects nothing");

/** Columns with what they count. */
export const READ_COLUMNS = {
  water_l: "water",
  steam_kg: "steam",
  electricity_kwh: "electricity",
  gas_kwh: "gas",
} as const;

/** A column of readings. */
export type ReadColumn = keyof typeof READ_COLUMNS;
