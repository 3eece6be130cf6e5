/**
 * What a file of factors and the file of sources may say.
 *
 * Every leaf is described by a noun phrase: editors show it, and refusals quote it.
 */

import * as z from "zod";

const words = (description: string): z.ZodString => z.string().min(1).describe(description);
const number = (description: string): z.ZodNumber => z.number().describe(description);

const Day = z.iso.date().describe("a day such as 2026-11-25");
const Year = z.int().min(1900).max(2200).describe("a year such as 2026");
const Score = z.int().min(1).max(5).describe("a whole number from 1 (best) to 5");

const Quality = z
  .strictObject({
    reliability: Score,
    completeness: Score,
    time: Score,
    place: Score,
    technology: Score,
  })
  .describe("five scores: reliability, completeness, time, place, technology");

/** Shapes that doubt may have. */
export const SHAPES = ["fixed", "normal", "lognormal", "triangular", "uniform", "pert"] as const;

const Spread = z
  .strictObject({
    shape: z.enum(SHAPES).describe(`one of ${SHAPES.join(", ")}`),
    low: number("the lower end, a number in the factor's unit").optional(),
    high: number("the upper end, a number in the factor's unit").optional(),
    share: z
      .number()
      .gt(0)
      .lt(1)
      .describe("how far the ends lie from the value, as a share of it between 0 and 1")
      .optional(),
    confidence: z
      .number()
      .min(0.5)
      .max(0.999)
      .describe("the probability between the ends, from 0.5 to 0.999; 0.95 when left out")
      .optional(),
  })
  .describe("a spread: shape with low and high, or with share");

const Plausible = z
  .array(number("a number"))
  .length(2)
  .describe("two numbers, lowest and highest, outside of which a value is taken for a slip");

// Keys that say where a value comes from. They may stand once for a whole file or table.
const PROVENANCE = {
  from: Day.optional(),
  entered: Day.optional(),
  source: words("a key of sources.yaml").optional(),
  page: words("a table, page or section, in quotes when it is a number").optional(),
  year: Year.optional(),
  region: words("the place the data are from, such as Italy or world").optional(),
  quality: Quality.optional(),
  note: words("a text").optional(),
};

const Value = z
  .strictObject({
    value: number("a number in the factor's unit"),
    spread: Spread.optional(),
    ...PROVENANCE,
  })
  .describe("one vintage: value, spread, source, from, entered, year, region, quality");

const DESCRIPTION = {
  words: words("what it is, in plain words").optional(),
  unit: words("a unit such as kWh/kg, 1 for a bare ratio"),
  basis: words("what it is counted on, such as net calorific value or life cycle").optional(),
  plausible: Plausible.optional(),
};

const Entry = z
  .strictObject({
    ...DESCRIPTION,
    values: z.array(Value).min(1).describe("a list of vintages, newest first"),
  })
  .describe("a factor: words, unit, plausible, values");

/** What the columns of a table may hold. */
export const COLUMNS = [
  ...["name", "words", "from", "year", "value", "low", "high", "page", "note"],
] as const;

const Table = z
  .strictObject({
    id: z
      .string()
      .regex(/^[a-z0-9-]+(\.([A-Za-z0-9-]+|\*))+$/)
      .describe("an id with * for the name of the row, such as grid.*.intensity"),
    ...DESCRIPTION,
    ...PROVENANCE,
    spread: Spread.optional(),
    columns: z
      .array(z.enum(COLUMNS).describe(`one of ${COLUMNS.join(", ")}`))
      .min(2)
      .describe("the headings of the rows, name and value among them"),
    rows: z
      .array(z.array(z.union([z.string(), z.number()])).min(1))
      .min(1)
      .describe("a list of rows, each a list of cells in the order of the columns"),
  })
  .describe("factors that differ by name and numbers only, a row each");

/** A file of factors, such as `pad.yaml`. */
export const FactorFile = z
  .strictObject({
    shared: z
      .strictObject(PROVENANCE)
      .describe("provenance of all values of the file that do not say otherwise")
      .optional(),
    factors: z
      .record(
        z
          .string()
          .regex(/^[a-z0-9-]+(\.[A-Za-z0-9-]+)+$/)
          .describe("an id such as pad.pickup"),
        Entry,
      )
      .describe("factors by id")
      .optional(),
    tables: z.array(Table).describe("a list of tables").optional(),
  })
  .describe("shared, factors and tables");

/** How a source may have been read. */
const READ = /^(memory|common practice|own estimate|\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01]))$/;

/** The file of sources, `sources.yaml`. */
export const SourceFile = z
  .record(
    z
      .string()
      .regex(/^[a-z0-9-]+$/)
      .describe("a key of small letters, digits and hyphens"),
    z
      .strictObject({
        author: words("who wrote it"),
        title: words("what it is called"),
        publisher: words("who published it").optional(),
        year: Year.optional(),
        where: words("where it can be found").optional(),
        read: z
          .string()
          .regex(READ)
          .describe("memory, common practice, own estimate, or the day somebody opened it"),
        licence: words("its licence, with the attribution it asks for").optional(),
      })
      .describe("a source: author, title, read"),
  )
  .describe("sources by key");

/** A file of factors, as the schema lets it through. */
export type FactorText = z.output<typeof FactorFile>;

/** One table of a file. */
export type TableText = NonNullable<FactorText["tables"]>[number];

/** One spread as it is written. */
export type SpreadText = z.output<typeof Spread>;

/** Provenance as it is written, each key optional. */
export type ProvenanceText = NonNullable<FactorText["shared"]>;
