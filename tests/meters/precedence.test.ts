import { describe, expect, it } from "vitest";
import { best, TIERS } from "../../src/meters/precedence.js";

describe("best", () => {
  it("takes the highest tier and never averages", () => {
    const chosen = best([
      { value: 30, tier: "T7" },
      { value: 10, tier: "T2" },
      { value: 20, tier: "T4" },
    ]);
    expect(chosen).toEqual({ used: { value: 10, tier: "T2" }, passedOver: [] });
  });

  it("passes over what cannot be right, and keeps it", () => {
    const wrong = { value: -1, tier: "T1", against: "below 0" };
    expect(best([{ value: 20, tier: "T5" }, wrong])).toEqual({
      used: { value: 20, tier: "T5" },
      passedOver: [wrong],
    });
  });

  it("uses the best where something speaks against all, and knows no other tiers", () => {
    const odd = { value: 1, tier: "T3", against: "above its parent" };
    expect(best([odd])?.used).toBe(odd);
    expect(best([{ value: 1, tier: "T9" }])).toBeUndefined();
  });

  it("has seven tiers, measured ones first", () => {
    expect(TIERS.map(({ id }) => id)).toEqual(["T1", "T2", "T3", "T4", "T5", "T6", "T7"]);
    expect(TIERS.map(({ provenance }) => provenance).slice(0, 4)).toEqual([
      "measured",
      "measured",
      "allocated",
      "allocated",
    ]);
  });
});
