import { describe, expect, it } from "vitest";
import { claimKind } from "../../../src/compare/claims/catalogue.js";
import {
  type ClaimSetting,
  evidenceOf,
  WATCHED_RISES,
} from "../../../src/compare/claims/evidence.js";
import { inputOf, LOTS, lotOf, smallMill } from "../../report/compose/small-mill.js";
import { LESS_WATER } from "./made.js";

function setting(change: Partial<ClaimSetting> = {}, lots = LOTS): ClaimSetting {
  const { account, groups, comparisons } = inputOf(smallMill(), lots);
  return {
    account,
    groups,
    comparisons,
    gaps: new Map([
      ["water", -0.12],
      ["gas", 0.03],
    ]),
    fastness: { pigment: false, dye: true },
    audience: "internal",
    review: undefined,
    ...change,
  };
}

describe("evidenceOf", () => {
  it("counts lots by the route they took, and the months that have any", () => {
    // Three lots on each route, in March and April.
    expect(evidenceOf(LESS_WATER, setting())).toMatchObject({
      lots: { pigment: 3, dye: 3 },
      months: 2,
      measured: { pigment: 0, dye: 0 },
      fastness: { pigment: false, dye: true },
      blends: 0,
    });
  });

  it("takes the gap of the meter that counts the quantity, whichever way it goes", () => {
    expect(evidenceOf(LESS_WATER, setting()).gap).toBe(0.12);
  });

  it("knows no gap where one of the meters needed is missing", () => {
    const energy = claimKind("less-energy");
    expect(energy).toBeDefined();
    if (energy !== undefined) expect(evidenceOf(energy, setting()).gap).toBeUndefined();
  });

  it("leaves strike-offs out of the lots", () => {
    const lots = [...LOTS, lotOf({ lot: "S-1", kind: "overhead" })];
    expect(evidenceOf(LESS_WATER, setting({}, lots)).lots).toEqual({ pigment: 3, dye: 3 });
  });

  it("names what rises, and nothing that falls", () => {
    const base = setting();
    const { rises } = evidenceOf(LESS_WATER, base);
    for (const id of WATCHED_RISES) {
      const high = base.comparisons.get(id)?.difference.high ?? 0;
      expect(rises.includes(id), id).toBe(high < 0);
    }
    expect(rises).toContain("paper");
  });
});
