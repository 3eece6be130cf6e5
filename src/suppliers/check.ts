/**
 * Checks of a pack: which there are, what comes of them, and what they are made against.
 */

import type { DrawKeep } from "../account/draws.js";
import type { ClaimPolicy } from "../compare/claims/policy.js";
import type { FactorSet } from "../factors/factor.js";
import type { Part } from "./work-out.js";

/** Checks, in the order they are made. */
export const CHECKS = [
  ...(["file", "fields", "canonical", "digest", "signature", "signer", "chain"] as const),
  ...(["dates", "sums", "boundary", "factors", "sources", "figures", "coverage"] as const),
  ...(["claims", "program", "policy", "fastness", "stated"] as const),
] as const;

/** A check. */
export type CheckId = (typeof CHECKS)[number];

/**
 * Outcome of a check; `flag` for what cannot be proved and should be asked after; `not present` where there is
 * nothing to check, or an earlier check stood in the way.
 */
export type CheckOutcome = "pass" | "fail" | "flag" | "not present";

/** A check made. */
export interface Check {
  /** Which. */
  readonly id: CheckId;
  /** Outcome. */
  readonly outcome: CheckOutcome;
  /** What was found, in words. */
  readonly found: string;
  /** Places that do not fit, as JSON pointers or bytes; at most eight. */
  readonly places: readonly string[];
}

/** What a pack is checked against. */
export interface VerifySetting {
  /** The reader's own factors, shipped ones alone. */
  readonly shipped: FactorSet;
  /** Digest of the reader's own program. */
  readonly code: string;
  /** Version of the reader's own program; not judged when left out. */
  readonly version?: string;
  /** Public key that the pack must be signed by. */
  readonly key?: string;
  /** Names of public keys that are known; a signature by another is named, and no failure. */
  readonly keys?: ReadonlyMap<string, string>;
  /** Day of who reads it. */
  readonly today?: string;
  /** The shipped policy. */
  readonly policy?: ClaimPolicy;
  /** Other packs at hand by digest, for the chain; asked for only where a pack names one before it. */
  readonly others?: () => ReadonlyMap<string, unknown>;
  /** How much is worked out anew; all of it when left out. */
  readonly part?: Part;
  /** Keeps draws from one pack to the next. */
  readonly keep?: DrawKeep;
}

/** Takes a check that was made. */
export type Say = (
  id: CheckId,
  outcome: CheckOutcome,
  found: string,
  places?: readonly string[],
) => void;
