/**
 * The plant file: what a print house says of itself. Every key has a description, which editors show and
 * messages quote.
 */

import * as z from "zod";
import { LogDialectSchema } from "../log/dialect.js";
import { MeterPart } from "./meter-part.js";
import { ReadingsPart } from "./reading-part.js";
import { ClientPart, WordingPart } from "./schema-parts.js";

const day = z.iso.date().describe("a day as 2026-01-31");

const givenNumber = z
  .union([
    z.number(),
    z.strictObject({
      value: z.number().describe("the central value"),
      low: z.number().optional().describe("the lower end it may lie at"),
      high: z.number().optional().describe("the upper end it may lie at"),
      exact: z.boolean().optional().describe("true when there is no doubt about it"),
      source: z.string().optional().describe("where the figure was taken from"),
    }),
  ])
  .describe("a number, or { value, low, high, source }");

const settings = z
  .record(z.string(), givenNumber)
  .describe("settings by name, each a number or { value, low, high, source }");

const machine = z
  .strictObject({
    kind: z.string().describe("kind of machine"),
    words: z.string().optional().describe("what the mill calls it"),
    choices: z.record(z.string(), z.string()).optional().describe("choices such as heat: burner"),
    settings: settings.optional(),
  })
  .describe("a machine with its kind, choices and settings");

const step = z.strictObject({
  role: z.string().describe("name of the step inside the route"),
  kind: z.string().describe("kind of step"),
  recipe: z.string().optional().describe("recipe it uses"),
  ink: z.string().optional().describe("ink it prints"),
});

const route = z
  .strictObject({
    like: z.string().optional().describe("a shipped route that this one follows"),
    workflow: z.enum(["pigment", "dye"]).optional().describe("pigment or dye; needed with steps"),
    dye: z.enum(["reactive", "acid", "disperse"]).optional().describe("reactive, acid or disperse"),
    words: z.string().optional().describe("what it is, in plain words"),
    steps: z
      .array(step)
      .min(1)
      .optional()
      .describe("the steps in order, when no shipped route fits"),
    finish: z
      .enum(["none", "soft"])
      .optional()
      .describe("none, or soft for a pad and a stenter after all"),
    machines: z.record(z.string(), z.string()).describe("machine for each step, by role"),
    settings: settings.optional(),
    choices: z.record(z.string(), z.string()).optional().describe("choices as role.name: word"),
    print_width: z
      .number()
      .positive()
      .optional()
      .describe("printed width in m; the cloth's width when absent"),
  })
  .describe("a route with its machines");

const tariffs = z
  .strictObject({
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe("a currency such as EUR"),
    date: day.describe("the day the prices are from, as 2026-01-31"),
    electricity: givenNumber.optional().describe("price per kWh"),
    fuel: z.record(z.string(), givenNumber).optional().describe("price per kWh net, by fuel"),
    steam: givenNumber.optional().describe("price of bought steam per kWh"),
    water: givenNumber.optional().describe("price per m³ withdrawn"),
    effluent: givenNumber.optional().describe("charge per m³ discharged, by volume only"),
    ink: z.record(z.string(), givenNumber).optional().describe("price per litre of ink, by ink"),
    labour: givenNumber.optional().describe("price per machine hour"),
  })
  .describe("prices with date and currency");

const shareOfFirstQuality = z
  .strictObject({
    value: z.number().gt(0).max(1).describe("a share above 0 and up to 1, such as 0.96"),
    low: z.number().gt(0).max(1).describe("the lower end it may lie at, above 0"),
    high: z.number().gt(0).max(1).describe("the upper end it may lie at, up to 1"),
    source: z.string().min(1).describe("where the share was taken from"),
  })
  .describe("a share of the printed area as { value, low, high, source }");

const site = z
  .strictObject({
    place: z.string().describe("ISO 3166-1 alpha-3 code of the place, for the grid"),
    words: z.string().optional().describe("what the site is called in reports"),
    settings: settings.optional(),
    burner: z
      .strictObject({ fuel: z.string().describe("fuel of direct burners") })
      .optional()
      .describe("direct burners"),
    oil_heater: z
      .strictObject({ fuel: z.string().describe("fuel of the oil heater") })
      .optional()
      .describe("thermal-oil heater"),
    boiler: z
      .strictObject({ fuel: z.string().describe("fuel of the boiler, or bought") })
      .optional()
      .describe("boiler house"),
    effluent: z
      .enum(["own", "municipal"])
      .optional()
      .describe("own or municipal effluent treatment"),
    electricity: z
      .strictObject({
        market: z
          .strictObject({
            intensity: givenNumber.describe("kg CO2e per kWh"),
            rung: z
              .enum(["instrument", "supplier", "residual mix"])
              .describe("what the figure rests on"),
            source: z.string().describe("contract or certificate"),
          })
          .optional()
          .describe("contractual instrument or supplier's figure"),
        intensity: givenNumber
          .optional()
          .describe("kg CO2e per kWh of the grid, for a place not listed"),
      })
      .optional()
      .describe("electricity bought"),
    yield: z
      .strictObject({
        pigment: shareOfFirstQuality.optional(),
        dye: shareOfFirstQuality.optional(),
      })
      .optional()
      .describe("share of first quality of lots, had they been printed by pigment or by dye"),
    steam_intensity: givenNumber.optional().describe("kg CO2e per MJ of bought steam"),
    tariffs: tariffs.optional(),
    machines: z.record(z.string(), machine).describe("machines by name"),
  })
  .describe("a site with place, utilities and machines");

// Each part may be named alone: it is laid over what the file says of the same thing. Prices come with the
// day they are from; shares of first quality hold for the whole period, so they do not change by date.
const siteChange = site
  .omit({ yield: true })
  .partial()
  .extend({
    tariffs: tariffs
      .partial()
      .extend({ date: tariffs.shape.date })
      .optional()
      .describe("prices that change, with the day they are from"),
    machines: z
      .record(z.string(), machine.partial().describe("what changes at a machine"))
      .optional()
      .describe("what changes at machines, by name"),
  })
  .describe("what changes at a site");

const rejected = z.number().min(0).max(20).describe("a multiple from 0 to 20");

const change = z
  .strictObject({
    from: day.describe("the first day of the change, as 2026-07-01"),
    note: z.string().optional().describe("what changed, in plain words"),
    sites: z.record(z.string(), siteChange).optional().describe("what changes at sites, by name"),
    routes: z
      .record(z.string(), route.partial().describe("what changes on a route"))
      .optional()
      .describe("what changes on routes, by name"),
    counterparts: z
      .record(z.string(), z.string())
      .optional()
      .describe("counterparts that change, by name of the route"),
  })
  .describe("a change: what the file says otherwise from a day on");

// What a log was read with stays: how wide a route prints is in the areas of its lots.
/** Schema of a scenario. */
export const ScenarioFile = change
  .omit({ from: true })
  .extend({
    sites: z
      .record(
        z.string(),
        siteChange.extend({
          yield: site.shape.yield,
          tariffs: tariffs.partial().optional().describe("prices that differ"),
        }),
      )
      .optional()
      .describe("what differs at sites, by name"),
    routes: z
      .record(z.string(), route.omit({ print_width: true }).partial())
      .optional()
      .describe("what differs on routes, by name"),
    counterparts: change.shape.counterparts.describe("counterparts that differ, by route"),
    instead: z
      .record(z.string(), z.string())
      .optional()
      .describe("route that lots take instead of another, as pigment-calender: pigment-stenter"),
    finish: z
      .enum(["pigment", "dye", "every"])
      .optional()
      .describe("routes that get a soft finish after all: pigment, dye or every"),
    rejects: z
      .union([rejected, z.strictObject({ pigment: rejected.optional(), dye: rejected.optional() })])
      .optional()
      .describe("rejected area as a multiple from 0 to 20 of what was logged, or { pigment, dye }"),
  })
  .describe("what the file would say otherwise; a what-if that changes no figure of the mill");

/** Schema of the plant file. */
export const PlantFile = z
  .strictObject({
    millrace: z.literal(1).describe("the number 1, the format of this file"),
    house: z.string().min(1).describe("name of the print house"),
    gwp: z.enum(["AR5", "AR6"]).optional().describe("AR5 or AR6"),
    log: LogDialectSchema.nullish().describe("how the log is written: headings, units, signs"),
    counterparts: z
      .record(z.string(), z.string())
      .optional()
      .describe("counterpart of a route by name: reactive: pigment-stenter"),
    sites: z.record(z.string(), site).describe("sites by name"),
    routes: z.record(z.string(), route).describe("routes by name"),
    changes: z
      .array(change)
      .optional()
      .describe(
        "what the file says otherwise from a day on, each as { from, note, sites, routes }",
      ),
    scenarios: z
      .record(z.string(), ScenarioFile)
      .optional()
      .describe("what-ifs by name, each as { note, sites, routes, instead, finish, rejects }"),
    meters: z.record(z.string(), MeterPart).optional().describe("meters by name"),
    readings: ReadingsPart.optional(),
    claims: z
      .array(z.string())
      .optional()
      .describe("claims to be judged, by name: less-water, less-energy, lower-co2e …"),
    wording: WordingPart.optional(),
    clients: z
      .record(z.string(), ClientPart)
      .optional()
      .describe("what clients ask for, by name as logged"),
    review: z
      .string()
      .min(1)
      .optional()
      .describe("who reviewed the comparison, when and by which standard"),
  })
  .describe("the plant file");

/** The plant file as written. */
export type PlantText = z.output<typeof PlantFile>;

/** A number as the plant file gives it. */
export type GivenNumber = z.output<typeof givenNumber>;

/** A change as written. */
export type ChangeText = NonNullable<PlantText["changes"]>[number];

/** A scenario as written. */
export type ScenarioText = NonNullable<PlantText["scenarios"]>[string];

/** What a change or a scenario lays over the file. */
export type LaidOver = Pick<ScenarioText, "sites" | "routes" | "counterparts">;

/** A site as written. */
export type SiteText = PlantText["sites"][string];

/** A route as written. */
export type RouteText = PlantText["routes"][string];
