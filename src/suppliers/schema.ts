/**
 * The pack: what a supplier seals for a buyer. It holds sums and settings, no customer, order, price or row.
 */

import * as z from "zod";
import { INDICATOR_IDS } from "../account/indicators.js";
import { ClaimPolicySchema } from "../compare/claims/policy.js";
import { PlantFile } from "../plant/schema.js";
import {
  count,
  day,
  digest,
  factor,
  figure,
  INDICATOR,
  month,
  name,
  positive,
  share,
  source,
  stratum,
  word,
} from "./schema-parts.js";

/** Name and version of the format. */
export const PACK_FORMAT = "millrace-pack/1.2.0";

// A site of a plant file without its prices, and a file without what concerns clients and the log.
const sites = PlantFile.shape.sites;
const changes = PlantFile.shape.changes.unwrap();
const changedSites = changes.element.shape.sites.unwrap();
const plant = PlantFile.omit({
  log: true,
  meters: true,
  scenarios: true,
  claims: true,
  wording: true,
  clients: true,
})
  .extend({
    sites: z.record(name, sites.valueType.omit({ tariffs: true })).describe("sites by name"),
    changes: z
      .array(
        changes.element.omit({ note: true }).extend({
          sites: z
            .record(name, changedSites.valueType.omit({ tariffs: true }))
            .optional()
            .describe("what changes at sites, by name"),
        }),
      )
      .optional()
      .describe("what the file says otherwise from a day on"),
  })
  .describe("the plant file without prices, clients and the log's own words");

// No mark that is not seen, and none that turns the direction of reading.
const ALIAS = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} .'’-]*$/u;

/** Schema of what is sealed. */
export const PackSchema = z
  .strictObject({
    schema: z.literal(PACK_FORMAT).describe("name and version of the format"),
    generator: z
      .strictObject({
        name: z.literal("millrace"),
        version: word.describe("version of the tool"),
        code: digest.describe("digest of the program that made the pack"),
      })
      .describe("what made the pack"),
    made: day.describe("day of the pack; factor values entered later are left out"),
    alias: z
      .string()
      .max(60)
      .regex(ALIAS)
      .describe("letters and digits of any script, spaces, hyphens, full stops, apostrophes"),
    previous: digest.optional().describe("digest of the pack before this one"),
    period: z.strictObject({ from: day, to: day }).describe("first and last day of the lots"),
    unit: z
      .literal("1 accepted m² of printed cloth, fixed and ready for make-up")
      .describe("what figures are of"),
    boundary: z
      .strictObject({
        words: z.literal("gate to gate, from prepared cloth to printed cloth"),
        rejects: z
          .literal("what rejected cloth took is counted; its area is not")
          .describe("how rejects are treated"),
        heat: z.literal("net calorific value").describe("basis of heating values"),
        allocation: z
          .literal("none: lots are worked out from amounts and settings, no meter is shared out")
          .describe("how readings of meters are shared out"),
        routes: z
          .array(
            z.strictObject({
              route: name,
              workflow: z.enum(["pigment", "dye"]),
              dye: word.optional().describe("class of dye"),
              steps: z.array(
                z.strictObject({
                  role: name,
                  kind: name,
                  partner: z.boolean().describe("done elsewhere"),
                }),
              ),
            }),
          )
          .describe("steps that are counted, by route"),
      })
      .describe("what is in the count"),
    draws: z.int().min(100).max(10000).describe("number of draws"),
    seed: z.int().min(0).max(4294967295).describe("seed of the draws"),
    inputs: z
      .array(
        z.strictObject({
          role: z.enum(["log", "plant", "meters", "factors", "policy"]),
          bytes: count,
          sha256: digest,
        }),
      )
      .max(1000)
      .describe("files the pack was made from"),
    counts: z
      .strictObject({
        rows: count,
        accepted: count,
        corrected: count,
        aside: count,
        outside: count,
      })
      .describe("rows of the logs by what became of them"),
    reasons: z.record(name, count).describe("rows set aside or corrected, by code of the reason"),
    months: z
      .array(
        z.strictObject({ month, lots: count, accepted: positive.describe("accepted area in m²") }),
      )
      .max(240)
      .describe("lots and accepted area by month"),
    totals: z
      .strictObject({
        lots: count,
        accepted: positive.describe("accepted area in m²"),
        printed: positive.describe("printed area in m²"),
        mass: positive.describe("cloth in kg"),
        uncovered: positive.describe("area of reprints that no reject covers, in m²"),
      })
      .describe("totals, which strata and months must add up to"),
    strata: z.array(stratum).max(5000).describe("the ledger by stratum"),
    meters: z
      .array(
        z.strictObject({
          quantity: z.enum(["water", "electricity", "gas", "steam"]),
          unit: word,
          read: word.optional().describe("unit that the meter was read in, such as m3"),
          months: z.array(z.strictObject({ month, metered: z.number() })).max(240),
        }),
      )
      .max(100)
      .describe("readings of meters by month; they stand beside the figures and change none"),
    fastness: z
      .strictObject({ pigment: z.boolean(), dye: z.boolean() })
      .describe("whether half of the lots of every route are graded in full"),
    coverage: z
      .array(
        z.strictObject({
          indicator: INDICATOR,
          measured: share,
          allocated: share,
          modelled: share.describe("from the supplier's own settings"),
          default: share.describe("from shipped defaults"),
          documented: share.describe("from own settings or published sources"),
        }),
      )
      .max(INDICATOR_IDS.length)
      .describe("what quantities rest on, of all lots as they were printed"),
    figures: z.array(figure).max(200).describe("figures, which must come out of the rest again"),
    policy: ClaimPolicySchema.describe("thresholds by which claims are judged"),
    claims: z
      .array(
        z.strictObject({
          id: name,
          verdict: z.enum(["supported", "conditions", "not-supported"]),
          cautious: share.optional().describe("share that may be said"),
          gap: z
            .number()
            .optional()
            .describe("widest gap between site meters and lots, as a share of the meter"),
          expires: day,
        }),
      )
      .max(100)
      .describe("claims with their verdicts, which must come out of the rest again"),
    factorSet: digest.describe("digest of all factors in force when the pack was made"),
    plant,
    factors: z.array(factor).max(2000).describe("factors in force"),
    sources: z.record(name, source).describe("sources of the factors"),
  })
  .describe("a supplier's evidence");

/** Parts of a pack that have a digest of their own, so that a change can be placed. */
export const PARTS = [
  ...["plant", "factors", "sources", "strata", "months", "meters", "figures", "claims"],
] as const;

/** Schema of the file: a pack with its seal. */
export const SealedSchema = z
  .strictObject({
    pack: PackSchema,
    seal: z
      .strictObject({
        digest: digest.describe("SHA-256 of the canonical JSON of the pack (RFC 8785)"),
        parts: z
          .strictObject({
            plant: digest,
            factors: digest,
            sources: digest,
            strata: digest,
            months: digest,
            meters: digest,
            figures: digest,
            claims: digest,
          })
          .describe("digests of parts, made in the same way"),
        signature: z
          .strictObject({
            algorithm: z.literal("Ed25519"),
            key: z
              .string()
              .regex(/^[0-9a-f]{64}$/)
              .describe("public key, 64 hexadecimal digits"),
            value: z
              .string()
              .regex(/^[0-9a-f]{128}$/)
              .describe("signature of the canonical JSON of the pack, 128 hexadecimal digits"),
          })
          .optional()
          .describe("signature; absent when the pack was not signed"),
      })
      .describe("digests and signature"),
  })
  .describe("a sealed pack");

/** What is sealed. */
export type Pack = z.output<typeof PackSchema>;

/** A pack with its seal. */
export type SealedPack = z.output<typeof SealedSchema>;

/** A stratum. */
export type Stratum = Pack["strata"][number];

/** A figure of a pack. */
export type PackFigure = Pack["figures"][number];
