/**
 * A row of our own log as plain data: JSON Schema for those who write a log from a database. It is made from
 * the table of columns, by which rows are judged, so that the two cannot part.
 */

import * as z from "zod";
import { type Column, COLUMNS } from "./columns.js";
import { LOT_KINDS } from "./lot.js";

/**
 * Schema of a row in our headings and units. A column that was not measured is left out. Columns that are
 * not ours may stand in a row. Whether a route, fibre or site is known, and whether columns agree with each
 * other, only reading tells.
 */
export const LogRowSchema = z
  .looseObject(
    Object.fromEntries(
      COLUMNS.map((column) => {
        const { words, unit = "1", required } = column;
        const cell = cellSchema(column).describe(unit === "1" ? words : `${words} [${unit}]`);
        return [column.name, required ? cell : cell.optional()] as const;
      }),
    ),
  )
  .describe("a row of the log");

function cellSchema(column: Column): z.ZodType {
  switch (column.kind) {
    case "number":
      return numberSchema(column);
    case "date":
      return z.iso.date();
    case "kind":
      return z.enum(LOT_KINDS);
    default:
      return z.string().min(1);
  }
}

function numberSchema({ range = [-Infinity, Infinity], above, step }: Column): z.ZodType {
  const [low, high] = range;
  const bounded = (above === true ? z.number().gt(low) : z.number().min(low)).max(high);
  return step === undefined ? bounded : bounded.multipleOf(step);
}
