import { describe, expect, it } from "vitest";
import { ClaimPolicySchema, policyChanges } from "../../../src/compare/claims/policy.js";
import { POLICY } from "./made.js";

describe("policyChanges", () => {
  it("says which way a threshold was moved", () => {
    const own = {
      ...POLICY,
      gap: { pass: 0.2, conditional: 0.1 },
      measured: { ...POLICY.measured, pass: 0.9 },
    };
    expect(policyChanges(POLICY, POLICY)).toEqual([]);
    expect(policyChanges(POLICY, own)).toEqual([
      { key: "measured.pass", shipped: 0.8, own: 0.9, looser: false },
      { key: "gap.pass", shipped: 0.05, own: 0.2, looser: true },
    ]);
  });
});

describe("ClaimPolicySchema", () => {
  it("refuses shares above 1 and keys it does not know", () => {
    expect(ClaimPolicySchema.safeParse({ ...POLICY, blends: 1.5 }).success).toBe(false);
    expect(ClaimPolicySchema.safeParse({ ...POLICY, gaps: 0 }).success).toBe(false);
    expect(ClaimPolicySchema.safeParse({ ...POLICY, version: "" }).success).toBe(false);
  });
});
