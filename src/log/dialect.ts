/**
 * How an exporter writes its log: signs, dates, encoding, headings and units.
 */

import * as z from "zod";
import { COLUMNS } from "./columns.js";

const heading = z
  .union([
    z.string().min(1),
    z.strictObject({
      heading: z.string().min(1).describe("the exporter's heading"),
      unit: z.string().min(1).describe("a unit such as cm or oz/yd2").optional(),
    }),
  ])
  .describe("a heading, or { heading, unit }");

function isEncoding(label: string): boolean {
  try {
    return new TextDecoder(label).encoding !== "";
  } catch {
    return false;
  }
}

// One key for each of our columns, so that a slip in a key is answered with the keys there are.
function byColumn<Schema extends z.ZodType>(
  schema: Schema,
): z.ZodObject<Record<string, z.ZodOptional<Schema>>, z.core.$strict> {
  return z.strictObject(
    Object.fromEntries(COLUMNS.map(({ name }) => [name, schema.optional()] as const)),
  );
}

function words(ours: string): z.ZodOptional<z.ZodRecord<z.ZodString, z.ZodString>> {
  return z
    .record(z.string(), z.string().describe(ours))
    .describe(`the exporter's word: ${ours}`)
    .optional();
}

/** Schema of `log:` in the plant file. */
export const LogDialectSchema = z
  .strictObject({
    separator: z.enum([",", ";", "tab", "|"]).describe('"," ";" "|" or tab').optional(),
    decimal: z.enum([".", ","]).describe('"." or ","').optional(),
    thousands: z
      .enum([".", ",", " ", "'"])
      .describe("a sign between thousands, other than the decimal sign")
      .optional(),
    dates: z.enum(["ymd", "dmy", "mdy"]).describe("ymd, dmy or mdy").optional(),
    encoding: z
      .string()
      .refine(isEncoding)
      .describe("an encoding such as utf-8 or windows-1252")
      .optional(),
    heading_line: z
      .int()
      .min(1)
      .max(1000)
      .describe("the line of the headings, counted from 1")
      .optional(),
    columns: byColumn(heading).describe("our column: the exporter's heading").optional(),
    values: z
      .strictObject({
        route: words("our route"),
        fibre: words("our fibre text"),
        site: words("our site"),
        kind: words("production, reprint or overhead"),
      })
      .describe("words of the exporter for route, fibre, site and kind")
      .optional(),
    constants: byColumn(z.string().describe("a text"))
      .describe("our column, which the log does not have: text for every row")
      .optional(),
  })
  .refine(({ decimal = ".", thousands }) => decimal !== thousands, { path: ["thousands"] })
  .describe("how the log is written");

/** How a log is written. */
export type LogDialect = z.output<typeof LogDialectSchema>;
