/**
 * Parts of the investment file: numbers with doubt, prices, lines of money, tariffs.
 */

import * as z from "zod";

/** A day. */
export const day = z.iso.date().describe("a day as 2026-01-31");
/** A currency. */
export const currency = z
  .string()
  .regex(/^[A-Z]{3}$/)
  .describe("a currency such as EUR");
/** Where a number is from. */
export const tag = z
  .enum(["invoice", "meter", "quote", "estimate", "default"])
  .describe("where the number is from: invoice, meter, quote, estimate or default");

/** Highest growth a year that is taken for meant. [-] */
const MOST_GROWTH = 0.5;

const doubt = {
  value: z.number().describe("the central value"),
  low: z.number().optional().describe("the lower end it may lie at"),
  high: z.number().optional().describe("the upper end it may lie at"),
  exact: z.boolean().optional().describe("true when there is no doubt about it"),
  tag,
  source: z.string().optional().describe("document it was taken from"),
};

/** A number. */
export const given = z
  .strictObject(doubt)
  .describe("a number as { value, low, high, tag, source }");

/**
 * A number between limits.
 *
 * @param low - lowest
 * @param high - highest
 * @param words - what is expected, as a noun phrase
 * @returns its schema
 */
export const within = (low: number, high: number, words: string) =>
  z
    .strictObject({
      ...doubt,
      value: z.number().min(low).max(high).describe(words),
      low: z.number().min(low).max(high).optional().describe(words),
      high: z.number().min(low).max(high).optional().describe(words),
    })
    .describe(`${words}, as { value, low, high, tag }`);

/** A share. */
export const share = within(0, 1, "a share from 0 to 1");
/** A growth per year. */
export const growth = within(
  -MOST_GROWTH,
  MOST_GROWTH,
  "a growth per year from -0.5 to 0.5, such as 0.02 for 2 %",
);
/** A rate per year. */
export const rate = within(-0.5, 1, "a rate per year such as 0.07 for 7 %");

const dated = {
  ...doubt,
  currency,
  date: day.describe("the day the price is from, as 2026-01-31"),
  growth: growth.optional(),
};

/** A price. */
export const price = z
  .strictObject({
    ...dated,
    volume: z
      .number()
      .positive()
      .optional()
      .describe("units a year that an offer asks for, such as 8000 for litres of ink"),
  })
  .describe("a price as { value, low, high, currency, date, growth, volume, tag, source }");

/** A line of capital. */
export const capex = z
  .strictObject({
    what: z.string().min(1).describe("what is paid for"),
    kind: z
      .enum([
        "machine",
        "exhaust",
        "electrical",
        "building",
        "installation",
        "trial",
        "training",
        "permit",
        "removal",
        "resale",
        "stock",
        "working-capital",
        "grant",
        "repair",
        "other",
      ])
      .describe(
        "machine, exhaust, electrical, building, installation, trial, training, permit, removal, resale, stock, working-capital, grant, repair or other",
      ),
    year: z.number().int().min(0).max(40).describe("the year it is paid in, 0 for the start"),
    lasts: z
      .number()
      .int()
      .min(1)
      .max(60)
      .optional()
      .describe("years it serves; what is left of it at the end of a shorter study counts back"),
    machine: z.string().optional().describe("machine of the plant file it is for"),
    owner: z.string().optional().describe("who sees to it"),
    due: day.optional().describe("the day it is to be settled by"),
    ...dated,
  })
  .describe("a line of capital as { what, kind, year, value, currency, date, tag }");

/** A yearly line. */
export const yearly = z
  .strictObject({
    what: z.string().min(1).describe("what is paid for"),
    kind: z
      .enum([
        "pre-treatment",
        "labour",
        "maintenance",
        "space",
        "insurance",
        "laboratory",
        "fee",
        "freight",
        "other",
      ])
      .describe(
        "pre-treatment, labour, maintenance, space, insurance, laboratory, fee, freight or other",
      ),
    per: z
      .enum(["year", "moved-m2", "moved-kg", "all-m2"])
      .describe("what it is paid for: year, moved-m2, moved-kg or all-m2"),
    ...dated,
  })
  .describe("a yearly line as { what, kind, per, value, currency, date, tag }");

const excess = z.strictObject({
  above: z.number().min(0).describe("strength that goes free, in mg/L"),
  rate: z.number().min(0).describe("money per kg or lb"),
});

const rateOf = z.number().min(0).optional().describe("money per m³, 0 or more");

/** A tariff for effluent. */
export const tariff = z
  .strictObject({
    form: z
      .enum(["volume", "mogden", "excess"])
      .describe(
        "volume, mogden (against standard sewage) or excess (above strengths that go free)",
      ),
    from: day.describe("the first day of the tariff, as 2026-04-01"),
    currency,
    tag,
    source: z.string().optional().describe("where the tariff is printed"),
    fixed: z.number().min(0).optional().describe("money per year, whatever is let go"),
    per_m3: rateOf,
    reception: rateOf,
    volumetric: rateOf,
    biological_volume: rateOf,
    sea_outfall: rateOf,
    biological: rateOf,
    sludge: rateOf,
    standard_cod: z.number().positive().optional().describe("COD of settled standard sewage, mg/L"),
    standard_solids: z.number().positive().optional().describe("solids of standard sewage, mg/L"),
    mass: z.enum(["kg", "lb"]).optional().describe("kg, or lb"),
    bod: excess.optional(),
    cod: excess
      .extend({ ratio: z.number().positive().optional().describe("COD/BOD above which it holds") })
      .optional(),
    solids: excess.optional(),
  })
  .describe("a tariff with from, currency, tag and form: volume, mogden or excess");
