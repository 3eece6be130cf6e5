/**
 * The investment file: what a print house asks about a purchase. Every key has a description, which editors show and
 * messages quote.
 */

import * as z from "zod";
import { ScenarioFile } from "../plant/schema.js";
import {
  capex,
  currency,
  day,
  given,
  growth,
  price,
  rate,
  share,
  tag,
  tariff,
  within,
  yearly,
} from "./schema-lines.js";

const effluent = z
  .strictObject({
    tariffs: z.array(tariff).min(1).describe("tariffs by date, at least one"),
    doubt: share.optional().describe("half width of the doubt about its rates, as a share"),
    growth: growth.optional(),
    what_if: tariff.optional(),
    cod: z
      .union([z.literal("modelled"), given])
      .describe("COD today in mg/L as { value, tag }, or modelled"),
    cod_limit: given
      .optional()
      .describe("permit limit for COD at the drain in mg/L, as { value, tag }"),
    solids: given.describe("suspended solids today in mg/L as { value, tag }"),
    settled: share.describe("share of COD left after settlement"),
    bod_per_cod: share.describe("BOD as a share of COD"),
    solids_follow: z
      .enum(["cod", "volume"])
      .describe("what the load of solids follows when lots move: cod or volume"),
  })
  .describe("charge for effluent");

const added = z
  .strictObject({
    hours: given.describe("hours a year it is staffed"),
    availability: share.describe("share of those hours it runs or is made ready"),
    speed: within(0.1, 10, "its speed as a multiple of that of the one there").optional(),
    standby: z
      .strictObject({
        kw: given.describe("power in kW while it is kept ready and no cloth runs"),
        hours: given.describe("hours a year it is kept ready so"),
        of: z
          .string()
          .optional()
          .describe("electricity, or a fuel by name; electricity when absent"),
      })
      .optional()
      .describe("what it takes while kept ready, as { kw, hours, of }"),
  })
  .describe("a machine bought, as { hours, availability, speed, standby }");

const ROUTES = ["carry-on", "improve-wash", "pigment-calender", "pigment-stenter", "outsource"];

const option = z
  .strictObject({
    kind: z
      .enum(["carry-on", "improve-wash", "pigment-calender", "pigment-stenter", "outsource"])
      .describe(ROUTES.join(", ")),
    words: z.string().min(1).describe("what it is, in plain words"),
    life: z.number().int().min(1).max(40).describe("years of life, a whole number from 1 to 40"),
    to: z.string().optional().describe("pigment route that lots move to"),
    plant: ScenarioFile.optional().describe("what the plant file would say otherwise"),
    scenario: z
      .string()
      .optional()
      .describe("a what-if of the plant file by name, instead of plant"),
    removes: z.array(z.string()).optional().describe("machines taken out, by name"),
    adds: z
      .record(z.string(), added)
      .optional()
      .describe(
        "machines bought, by the name of the one in the plant file they stand beside; {} for those that are there",
      ),
    capex: z.array(capex).describe("lines of capital"),
    yearly: z.array(yearly).optional().describe("yearly lines"),
    residual: price.optional().describe("what it is worth at the end of its life"),
    demand_kw: given.optional().describe("change of the peak demand in kW"),
    rejects: share.optional().describe("share of area rejected on the new route"),
    rampup: z
      .array(z.number().min(0).max(1).describe("a share from 0 to 1"))
      .min(1)
      .optional()
      .describe("share of the lots that may move which has moved, year by year"),
    loan: z
      .strictObject({
        share: z.number().min(0).max(1).describe("share of the start capital, from 0 to 1"),
        rate: z.number().min(0).max(0.5).describe("interest per year from 0 to 0.5"),
        years: z.number().int().min(1).max(40).describe("years of the loan"),
        tag,
      })
      .optional()
      .describe("a loan"),
    lease: z
      .strictObject({
        yearly: price.describe("payment per year"),
        years: z.number().int().min(1).max(40).describe("years of the lease"),
        end: price.optional().describe("payment at its end that buys the machine"),
      })
      .optional()
      .describe("a lease of the machines instead of buying them"),
  })
  .describe("an option with kind, words, life and capex");

const moving = z
  .strictObject({
    client: z.string().optional().describe("client as logged; every client when absent"),
    fabric: z.string().optional().describe("fabric as logged; every fabric when absent"),
    share: share.describe("share of these lots that may move"),
    why: z.string().optional().describe("what the share rests on"),
  })
  .describe("lots that may move, as { client, fabric, share }");

const capacity = z
  .strictObject({
    hours: given.describe("hours a year it is staffed"),
    availability: share.describe("share of those hours it runs or is made ready"),
  })
  .describe("hours of a machine, as { hours, availability }");

const waits = z
  .strictObject({
    batching: given.optional().describe("hours a lot waits until its batch is full"),
    store: given.optional().describe("hours a lot lies in store between steps"),
  })
  .describe("hours of a lot, as { batching, store }");

const BEYOND = ["cut", "outside"] as const;

/** Schema of the investment file. */
export const InvestFile = z
  .strictObject({
    millrace: z.literal(1).describe("the number 1, the format of this file"),
    study: z.string().min(1).describe("what is to be decided, in a few words"),
    project: z
      .string()
      .optional()
      .describe("the option the report is about; the first that moves lots when absent"),
    currency,
    money: z
      .enum(["real", "nominal"])
      .describe("real for money of the start, nominal for money of each year"),
    timing: z
      .enum(["end-year", "mid-year"])
      .describe("when in a year its money counts: end-year or mid-year"),
    start: day.describe("the first day of year 1, as 2027-01-01"),
    discount: rate
      .extend({ basis: z.enum(["real", "nominal"]).describe("real or nominal, as money is") })
      .describe("discount rate as { value, low, high, basis, tag }"),
    inflation: rate.optional(),
    reinvest: rate.optional().describe("rate at which income is put to use, for the MIRR"),
    tax: z
      .union([
        z.literal("none"),
        z.strictObject({
          rate: z.number().min(0).max(0.9).describe("rate on profit from 0 to 0.9"),
          years: z.number().int().min(1).max(40).describe("years of straight-line write-off"),
          tag,
        }),
      ])
      .describe("none, or { rate, years, tag }"),
    rates: z
      .record(z.string(), given.extend({ date: day }))
      .optional()
      .describe("price of other currencies in the study's own, each as { value, date, tag }"),
    orders: z
      .strictObject({ growth, level: within(0, 5, "a multiple of the logged area") })
      .describe("the order book as { growth, level }"),
    moves: z.array(moving).min(1).describe("lots that may move, first that fits"),
    rampup: z
      .array(z.number().min(0).max(1).describe("a share from 0 to 1"))
      .min(1)
      .describe("share of the lots that may move which has moved, year by year"),
    prices: z
      .strictObject({
        electricity: price.describe("price per kWh"),
        fuel: z.record(z.string(), price).optional().describe("price per kWh net, by fuel"),
        steam: price.optional().describe("price of bought steam per kWh"),
        water: price.describe("price per m³ of water, treatment of it included"),
        ink: z.record(z.string(), price).optional().describe("price per litre, by ink"),
        labour: price.optional().describe("wages and charges per machine hour"),
        cloth: price.optional().describe("value of an m² of cloth that is rejected"),
        paper: price.optional().describe("price per m² of protecting paper"),
        demand: price.optional().describe("price per kW of peak demand and year"),
        carbon: price.optional().describe("price per t CO2e where it is really paid, scope 1"),
        day: price.optional().describe("value of an order delivered a day sooner"),
      })
      .describe("prices, each with currency, date and tag"),
    stays: z
      .strictObject({
        labour: share.optional(),
        electricity: share.optional(),
        heat: share.optional(),
        water: share.optional(),
      })
      .optional()
      .describe("share of what lots leave behind that is paid for all the same"),
    effluent,
    capacity: z.record(z.string(), capacity).describe("hours of machines, by name"),
    waits: z
      .strictObject({ dye: waits.optional(), pigment: waits.optional() })
      .optional()
      .describe("hours a lot waits beside machines, by route, for lead time only"),
    beyond: z
      .strictObject({
        do: z
          .enum(BEYOND)
          .describe("cut for orders that are lost, outside for printing bought elsewhere"),
        price: price.describe("sales lost, or price paid elsewhere, per accepted m²"),
      })
      .optional()
      .describe(
        "what becomes of orders beyond the hours of machines, as { do, price }; without it they are cut for all options alike",
      ),
    options: z.record(z.string(), option).describe("options by name"),
  })
  .describe("the investment file");

/** The investment file as written. */
export type InvestText = z.output<typeof InvestFile>;

/** An option as written. */
export type OptionText = InvestText["options"][string];

/** A number with its doubt and where it is from. */
export type GivenText = z.output<typeof given>;

/** A price as written. */
export type PriceText = z.output<typeof price>;

/** A tariff as written. */
export type TariffText = InvestText["effluent"]["tariffs"][number];

/** Where a number is from. */
export type Tag = z.output<typeof tag>;
