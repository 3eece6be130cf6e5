/**
 * Parts of a pack: plain words, factors with their sources, strata and figures.
 */

import * as z from "zod";
import { INDICATOR_IDS } from "../account/indicators.js";

/** A day. */
export const day = z.iso.date().describe("a day as 2026-01-31");
/** A month. */
export const month = z
  .string()
  .regex(/^\d{4}-(0[1-9]|1[0-2])$/)
  .describe("a month as 2026-01");
/** A digest. */
export const digest = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .describe("SHA-256, 64 hexadecimal digits in small letters");
/** A number of things. */
export const count = z.int().min(0);
/** A quantity. */
export const positive = z.number().min(0);
/** A share. */
export const share = z.number().min(0).max(1);
// Names that every object of the language knows already: as a key they would stand for something else.
const isFree = (text: string): boolean => !(text in {});
const FREE = "a name that no program takes for its own, unlike __proto__ or constructor";
/** A name. */
export const name = z.string().min(1).max(200).refine(isFree, FREE).describe(FREE);
/** A word or none. */
export const word = z.string().max(200).refine(isFree, FREE);

const limits = z.tuple([z.number(), z.number()]).describe("lowest and highest value that can be");
const bounded = { low: z.number(), value: z.number(), high: z.number() };
const spread = z
  .discriminatedUnion("shape", [
    z.strictObject({ shape: z.literal("fixed"), value: z.number() }),
    z.strictObject({ shape: z.literal("normal"), value: z.number(), sd: positive, limits }),
    z.strictObject({
      shape: z.literal("lognormal"),
      value: z.number(),
      gsd: z.number().min(1),
      limits,
    }),
    z.strictObject({ shape: z.literal("triangular"), ...bounded }),
    z.strictObject({ shape: z.literal("uniform"), ...bounded }),
    z.strictObject({ shape: z.literal("pert"), ...bounded }),
  ])
  .describe("the value with its doubt");

const score = z.int().min(1).max(5);
/** A factor with its vintages. */
export const factor = z
  .strictObject({
    id: name.describe("id of the factor"),
    unit: word.describe("its unit"),
    words: z.string().max(1000).describe("what it is"),
    basis: word.optional().describe("what it is counted on, such as net calorific value"),
    plausible: limits,
    own: z.boolean().describe("whether the supplier put it in place of the shipped one"),
    values: z
      .array(
        z.strictObject({
          from: day.describe("first day it holds for"),
          entered: day.describe("day it entered the set; reports of earlier days leave it out"),
          spread,
          source: name.describe("key of the source"),
          page: word.optional().describe("table, page or section"),
          year: z.int().describe("year of the data"),
          region: word.describe("place of the data"),
          quality: z.strictObject({
            reliability: score,
            completeness: score,
            time: score,
            place: score,
            technology: score,
          }),
        }),
      )
      .min(1)
      .describe("vintages that serve the period, newest first"),
  })
  .describe("a factor in force, with its source");

/** Where values were read. */
export const source = z.strictObject({
  author: z.string().max(1000),
  title: z.string().max(1000),
  publisher: z.string().max(1000).optional(),
  year: z.int().optional(),
  where: z.string().max(1000).optional(),
  read: word.describe("the day somebody opened it, or how else it is known"),
  licence: z.string().max(1000).optional(),
});

/** Lots of one cloth and route, added up. */
export const stratum = z
  .strictObject({
    blend: name.describe("fibre or blend"),
    weight: word.describe("band of mass per area in g/m², or other"),
    coverage: word.describe("band of coverage in percent, ? where none is logged, or other"),
    route: name.describe("route the lots took"),
    pigment: word.describe("pigment route of the same cloth; empty without one"),
    dye: word.describe("dye route of the same cloth; empty without one"),
    own: z.enum(["pigment", "dye"]).describe("workflow the lots took"),
    kind: z.enum(["production", "reprint", "overhead"]).describe("what the lots were"),
    site: name.describe("site"),
    settings: word.describe("first day of the change in force; empty without one"),
    from: month.describe("first month of the vintages of factors that hold"),
    lots: count.describe("number of lots"),
    amounts: z
      .record(name, z.number())
      .describe("sums over the lots by name of the amount; those that are 0 are left out"),
  })
  .describe("lots of one stratum, added up");

/** An indicator. */
export const INDICATOR = z.enum(INDICATOR_IDS);

/** A figure. */
export const figure = z
  .strictObject({
    indicator: INDICATOR,
    side: z
      .enum(["as-printed", "pigment", "dye"])
      .describe("all lots as they were printed, or all on the one or other route"),
    unit: word.describe("unit per accepted m²"),
    median: z.number(),
    low: z.number().describe("2.5 % quantile"),
    high: z.number().describe("97.5 % quantile"),
  })
  .describe("a figure per accepted m², from the draws");
