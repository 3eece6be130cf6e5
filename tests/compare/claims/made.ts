import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { type ClaimKind, claimKind } from "../../../src/compare/claims/catalogue.js";
import type { ClaimEvidence } from "../../../src/compare/claims/gates.js";
import { type ClaimPolicy, ClaimPolicySchema } from "../../../src/compare/claims/policy.js";
import { TOP } from "../../tools/tree.js";

/** The shipped thresholds. */
export const POLICY: ClaimPolicy = ClaimPolicySchema.parse(
  parse(readFileSync(join(TOP, "templates", "claim-policy.yaml"), "utf8")),
);

/** Evidence without a flaw, or with those given. */
export function evidence(change: Partial<ClaimEvidence> = {}): ClaimEvidence {
  return {
    lots: { pigment: 400, dye: 300 },
    months: 12,
    measured: { pigment: 0.9, dye: 0.85 },
    documented: { pigment: 1, dye: 1 },
    gap: 0.02,
    saving: { median: 0.6, low: 0.53, high: 0.66 },
    fastness: { pigment: true, dye: true },
    blends: 0,
    rises: [],
    audience: "internal",
    review: undefined,
    banned: [],
    ...change,
  };
}

function kindOf(id: string): ClaimKind {
  const kind = claimKind(id);
  if (kind === undefined) throw new Error(`There is no claim ${id}.`);
  return kind;
}

/** A claim that is judged. */
export const LESS_WATER = kindOf("less-water");
