import { describe, expect, it } from "vitest";
import { INDICATOR_IDS } from "../../../src/account/indicators.js";
import { CLAIM_IDS, CLAIM_KINDS, USUAL_CLAIMS } from "../../../src/compare/claims/catalogue.js";

describe("claims", () => {
  it("have names of their own", () => {
    expect(new Set(CLAIM_IDS).size).toBe(CLAIM_IDS.length);
  });

  it("speak of indicators that exist", () => {
    for (const { id, indicator } of CLAIM_KINDS)
      if (indicator !== undefined) expect(INDICATOR_IDS, id).toContain(indicator);
  });

  it("are judged by their names when none are asked for", () => {
    for (const id of USUAL_CLAIMS) expect(CLAIM_IDS).toContain(id);
  });

  it("refuse equivalents for good", () => {
    expect(CLAIM_KINDS.find(({ id }) => id === "equivalents")?.refused).toMatch(/no evidence/);
  });
});
