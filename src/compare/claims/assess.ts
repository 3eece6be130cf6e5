/**
 * Claims judged: verdict, cautious value and the day until which it holds.
 */

import { type ClaimKind, claimKind } from "./catalogue.js";
import { type ClaimEvidence, type GateAnswer, gatesOf } from "./gates.js";
import type { ClaimPolicy } from "./policy.js";

/** Outcome of a claim. */
export type Verdict = "supported" | "conditions" | "not-supported";

/** A claim judged. */
export interface ClaimVerdict {
  /** The claim. */
  readonly kind: ClaimKind;
  /** Outcome. */
  readonly verdict: Verdict;
  /** Answers of the gates; empty when the claim cannot be judged from a log at all. */
  readonly gates: readonly GateAnswer[];
  /** Lower end of the interval of the share saved, rounded down; absent where nothing may be said. */
  readonly cautious?: number;
  /** Last day on which it holds, ISO 8601. */
  readonly expires: string;
  /** Gate that, once passed, would help most: the first that fails, else the first with a condition. */
  readonly mend?: GateAnswer;
}

/**
 * Judges a claim.
 *
 *     any gate fails -> not supported;  else any condition -> supported with conditions;  else supported
 *
 * @param id - name of the claim
 * @param evidence - what is known of its quantity
 * @param policy - thresholds
 * @param lastDay - last day of the period, ISO 8601
 * @returns the verdict
 * @throws Error when there is no claim of that name
 */
export function judgeClaim(
  id: string,
  evidence: ClaimEvidence,
  policy: ClaimPolicy,
  lastDay: string,
): ClaimVerdict {
  const kind = claimKind(id);
  if (kind === undefined) throw new Error(`There is no claim ${id}.`);
  const expires = monthsLater(lastDay, policy.expires_months);
  if (kind.indicator === undefined) return { kind, verdict: "not-supported", gates: [], expires };
  const gates = gatesOf(kind, evidence, policy);
  const failed = gates.find(({ outcome }) => outcome === "fail");
  const conditional = gates.find(({ outcome }) => outcome === "condition");
  const mend = failed ?? conditional;
  const low = evidence.saving?.low;
  return {
    kind,
    verdict:
      failed !== undefined
        ? "not-supported"
        : conditional !== undefined
          ? "conditions"
          : "supported",
    gates,
    expires,
    ...(low === undefined || !(low > 0) ? {} : { cautious: roundedDown(low, policy.step) }),
    ...(mend === undefined ? {} : { mend }),
  };
}

/**
 * Rounds a share down to a multiple of a step.
 *
 * @param value - share, above 0
 * @param step - step, such as 0.05
 * @returns the multiple; 0.65 stays 0.65 although 0.65/0.05 is a little below 13 in floating point
 */
export function roundedDown(value: number, step: number): number {
  const steps = Math.floor(value / step + 1e-9);
  return Number((steps * step).toFixed(10));
}

/**
 * A day some months later; the last day of a month where that month is shorter.
 *
 * @param day - ISO 8601
 * @param months - whole months
 * @returns ISO 8601
 */
export function monthsLater(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last)))
    .toISOString()
    .slice(0, 10);
}
