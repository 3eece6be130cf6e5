/**
 * How an exporter writes its log: signs, dates, encoding, headings and units.
 */

import * as z from "zod";
import { COLUMNS } from "./columns.js";

const names = COLUMNS.map((column) => column.name) as [string, ...string[]];

const heading = z
  .union([
    z.string().min(1),
    z.strictObject({
      heading: z.string().min(1).describe("the exporter's heading"),
      unit: z.string().min(1).optional().describe("the unit of its numbers, such as cm or oz/yd2"),
    }),
  ])
  .describe("a heading, or { heading, unit }");

/** Schema of `log:` in the plant file. */
export const LogDialectSchema = z
  .strictObject({
    separator: z.enum([",", ";", "tab", "|"]).optional().describe('"," ";" "|" or tab'),
    decimal: z.enum([".", ","]).optional().describe('"." or ","'),
    thousands: z.enum([".", ",", " ", "'"]).optional().describe("sign between thousands"),
    dates: z.enum(["ymd", "dmy", "mdy"]).optional().describe("ymd, dmy or mdy"),
    encoding: z.string().optional().describe("an encoding such as utf-8 or windows-1252"),
    columns: z
      .partialRecord(z.enum(names), heading)
      .optional()
      .describe("our column: the exporter's heading"),
    values: z
      .strictObject({
        route: z
          .record(z.string(), z.string())
          .optional()
          .describe("the exporter's word: our route"),
        fibre: z
          .record(z.string(), z.string())
          .optional()
          .describe("the exporter's word: our fibre text"),
        site: z.record(z.string(), z.string()).optional().describe("the exporter's word: our site"),
        kind: z
          .record(z.string(), z.string())
          .optional()
          .describe("the exporter's word: production, reprint or overhead"),
      })
      .optional()
      .describe("words of the exporter for route, fibre, site and kind"),
    constants: z
      .partialRecord(z.enum(names), z.string())
      .optional()
      .describe("our column: text for every row"),
  })
  .describe("how the log is written");

/** How a log is written. */
export type LogDialect = z.output<typeof LogDialectSchema>;
