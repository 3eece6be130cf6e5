/**
 * Thresholds by which claims are judged: a versioned file that a mill may tighten. Loosening is possible
 * and is told in every report.
 */

import { z } from "zod";
import { LEAST_DIFFERENCE } from "../methods.js";

const share = z.number().min(0).max(1);

/** Schema of a policy file. */
export const ClaimPolicySchema = z
  .strictObject({
    version: z.string().min(1).describe("name and version, as printed"),
    sample: z
      .strictObject({
        months: z.number().min(0).describe("months that pass"),
        months_conditional: z.number().min(0).describe("months that pass with a condition"),
        lots: z.number().min(0).describe("lots of each route that pass"),
        lots_conditional: z.number().min(0).describe("lots that pass with a condition"),
      })
      .describe("time and sample"),
    measured: z
      .strictObject({
        pass: share.describe("measured share of the quantity that passes, on each route"),
        conditional: share.describe("measured share that passes with a condition"),
        documented: share.describe(
          "share on the mill's own settings or factors with a published source at which a modelled quantity passes with a condition",
        ),
      })
      .describe("measured coverage of the quantity claimed"),
    gap: z
      .strictObject({
        pass: share.describe("gap between meters and lots that passes"),
        conditional: share.describe("gap that passes with a condition"),
      })
      .describe("meters against lots"),
    blends: share.describe(
      "share of area on one-dye routes for blends that passes without condition",
    ),
    least_difference: z
      .number()
      .min(0)
      .max(5)
      .optional()
      .describe(
        "standard deviations that a difference must have to be worth naming in the modified test; 0.2 when left out",
      ),
    step: z.number().min(0.01).max(0.5).describe("cautious values are rounded down to it"),
    expires_months: z
      .number()
      .int()
      .min(1)
      .describe("months after the period for which a claim holds"),
  })
  .describe("thresholds by which claims are judged");

/** Thresholds. */
export type ClaimPolicy = z.infer<typeof ClaimPolicySchema>;

// Which way a threshold is stricter.
const STRICTER: readonly (readonly [string, (policy: ClaimPolicy) => number, "more" | "less"])[] = [
  ["sample.months", (p) => p.sample.months, "more"],
  ["sample.months_conditional", (p) => p.sample.months_conditional, "more"],
  ["sample.lots", (p) => p.sample.lots, "more"],
  ["sample.lots_conditional", (p) => p.sample.lots_conditional, "more"],
  ["measured.pass", (p) => p.measured.pass, "more"],
  ["measured.conditional", (p) => p.measured.conditional, "more"],
  ["measured.documented", (p) => p.measured.documented, "more"],
  ["gap.pass", (p) => p.gap.pass, "less"],
  ["gap.conditional", (p) => p.gap.conditional, "less"],
  ["blends", (p) => p.blends, "less"],
  ["least_difference", (p) => p.least_difference ?? LEAST_DIFFERENCE, "more"],
  ["step", (p) => p.step, "more"],
  ["expires_months", (p) => p.expires_months, "less"],
];

/** A threshold that differs from the shipped one. */
export interface PolicyChange {
  /** Threshold. */
  readonly key: string;
  /** As shipped. */
  readonly shipped: number;
  /** As set. */
  readonly own: number;
  /** Whether claims pass more easily. */
  readonly looser: boolean;
}

/**
 * What a mill's own policy changes.
 *
 * @param shipped - the shipped policy
 * @param own - the mill's
 * @returns thresholds that differ, in the order of the file
 */
export function policyChanges(shipped: ClaimPolicy, own: ClaimPolicy): readonly PolicyChange[] {
  return STRICTER.flatMap(([key, of, way]) => {
    const [before, after] = [of(shipped), of(own)];
    if (before === after) return [];
    return [
      {
        key,
        shipped: before,
        own: after,
        looser: way === "more" ? after < before : after > before,
      },
    ];
  });
}
