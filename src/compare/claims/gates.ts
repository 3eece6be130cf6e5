/**
 * The gates a claim must pass. Each answers pass, condition or fail with the numbers it judged by; words
 * are made elsewhere.
 */

import type { Range } from "../compare.js";
import type { ClaimKind } from "./catalogue.js";
import type { ClaimPolicy } from "./policy.js";

/** For whom a claim is made. */
export type Audience = "internal" | "client" | "public";

/** What the judgement rests on. */
export interface ClaimEvidence {
  /** Lots really printed on each route, in the scope of the report. */
  readonly lots: { readonly pigment: number; readonly dye: number };
  /** Months that the period covers. */
  readonly months: number;
  /** Share of the quantity that was measured or shared out from a meter, on each route. */
  readonly measured: { readonly pigment: number; readonly dye: number };
  /** Share that rests on the mill's own settings or on factors with a published source. */
  readonly documented: { readonly pigment: number; readonly dye: number };
  /** Gap between meters and lots, as a share of the meter; undefined where nothing was compared. */
  readonly gap: number | undefined;
  /** Share saved; undefined where no percentage may be printed. */
  readonly saving: Range | undefined;
  /** Whether fastness is known for lots of each route. */
  readonly fastness: { readonly pigment: boolean; readonly dye: boolean };
  /** Share of the accepted area on routes that colour only part of a blend. */
  readonly blends: number;
  /** Indicators that rise and that the report names. */
  readonly rises: readonly string[];
  /** For whom. */
  readonly audience: Audience;
  /** Statement of a review, when there was one. */
  readonly review: string | undefined;
  /** Phrases of the claim's own text that may not be used. */
  readonly banned: readonly string[];
}

/** Gates, in the order they are printed. */
export const GATES = [
  "function",
  "boundary",
  "sample",
  "coverage",
  "meters",
  "interval",
  "trade-offs",
  "audience",
  "evidence",
  "wording",
] as const;

/** A gate. */
export type GateId = (typeof GATES)[number];

/** How a gate is passed. */
export type Outcome = "pass" | "condition" | "fail";

/** Answer of a gate. */
export interface GateAnswer {
  /** The gate. */
  readonly gate: GateId;
  /** Outcome. */
  readonly outcome: Outcome;
  /** Why, as a code; words are made by the report. */
  readonly why: string;
  /** Numbers it judged by, in the order the words name them. */
  readonly numbers: readonly number[];
}

/**
 * Sends a claim through all gates.
 *
 * @param kind - the claim
 * @param evidence - what is known
 * @param policy - thresholds
 * @returns one answer a gate, in the order of `GATES`
 */
export function gatesOf(
  kind: ClaimKind,
  evidence: ClaimEvidence,
  policy: ClaimPolicy,
): readonly GateAnswer[] {
  const judged: Readonly<Record<GateId, Omit<GateAnswer, "gate">>> = {
    function: functionGate(evidence, policy),
    // Both arms are put together from the same list of steps, and the report prints what is out on both.
    boundary: answer("pass", "same-boundary"),
    sample: sampleGate(evidence, policy),
    coverage: coverageGate(evidence, policy),
    meters: metersGate(evidence, policy),
    interval: intervalGate(evidence),
    "trade-offs": answer(
      "pass",
      evidence.rises.length > 0 ? "rises-named" : "nothing-rises",
      evidence.rises.length,
    ),
    audience: audienceGate(kind, evidence),
    evidence: evidenceGate(evidence, policy),
    wording:
      evidence.banned.length > 0
        ? answer("fail", "banned-words", evidence.banned.length)
        : answer("pass", "words-clean"),
  };
  return GATES.map((gate) => ({ gate, ...judged[gate] }));
}

function answer(
  outcome: Outcome,
  why: string,
  ...numbers: readonly number[]
): Omit<GateAnswer, "gate"> {
  return { outcome, why, numbers };
}

function functionGate(evidence: ClaimEvidence, policy: ClaimPolicy): Omit<GateAnswer, "gate"> {
  if (!evidence.fastness.pigment || !evidence.fastness.dye)
    return answer("condition", "fastness-unknown");
  if (evidence.blends > policy.blends)
    return answer("condition", "blends-not-equivalent", evidence.blends, policy.blends);
  return answer("pass", "same-function");
}

function sampleGate(
  { lots, months }: ClaimEvidence,
  { sample }: ClaimPolicy,
): Omit<GateAnswer, "gate"> {
  const least = Math.min(lots.pigment, lots.dye);
  const numbers = [months, least, sample.months, sample.lots] as const;
  if (months >= sample.months && least >= sample.lots)
    return answer("pass", "enough-lots", ...numbers);
  if (months >= sample.months_conditional && least >= sample.lots_conditional)
    return answer("condition", "few-lots", ...numbers);
  return answer(
    "fail",
    "too-few-lots",
    months,
    least,
    sample.months_conditional,
    sample.lots_conditional,
  );
}

function coverageGate(
  { measured, documented }: ClaimEvidence,
  policy: ClaimPolicy,
): Omit<GateAnswer, "gate"> {
  const least = Math.min(measured.pigment, measured.dye);
  const known = Math.min(documented.pigment, documented.dye);
  const { pass, conditional, documented: enough } = policy.measured;
  if (least >= pass) return answer("pass", "measured", least, pass);
  if (least >= conditional) return answer("condition", "partly-measured", least, pass);
  if (known >= enough) return answer("condition", "modelled-documented", least, known, enough);
  return answer("fail", "not-measured", least, conditional, known, enough);
}

function metersGate({ gap }: ClaimEvidence, policy: ClaimPolicy): Omit<GateAnswer, "gate"> {
  if (gap === undefined) return answer("fail", "not-reconciled");
  const size = Math.abs(gap);
  if (size <= policy.gap.pass) return answer("pass", "reconciled", size, policy.gap.pass);
  if (size <= policy.gap.conditional)
    return answer("condition", "gap", size, policy.gap.pass, policy.gap.conditional);
  return answer("fail", "wide-gap", size, policy.gap.conditional);
}

function intervalGate({ saving }: ClaimEvidence): Omit<GateAnswer, "gate"> {
  if (saving === undefined) return answer("fail", "no-percentage");
  if (saving.low > 0) return answer("pass", "saved", saving.low, saving.high);
  if (saving.high < 0) return answer("fail", "rises", saving.low, saving.high);
  return answer("fail", "open", saving.low, saving.high);
}

// The other arm of every lot is a model. Lots of that route, measured, are what can stand behind it.
function evidenceGate(
  { lots, measured }: ClaimEvidence,
  policy: ClaimPolicy,
): Omit<GateAnswer, "gate"> {
  const stands =
    Math.min(lots.pigment, lots.dye) >= policy.sample.lots &&
    Math.min(measured.pigment, measured.dye) >= policy.measured.pass;
  return stands
    ? answer("pass", "both-routes-printed", lots.pigment, lots.dye)
    : answer("condition", "counterpart-modelled", lots.pigment, lots.dye);
}

function audienceGate(
  kind: ClaimKind,
  { audience, review }: ClaimEvidence,
): Omit<GateAnswer, "gate"> {
  if (kind.internal === true && audience !== "internal") return answer("fail", "internal-only");
  if (audience !== "public") return answer("pass", audience);
  return review === undefined ? answer("fail", "no-review") : answer("pass", "reviewed");
}
