import { describe, expect, it } from "vitest";
import { type Candidate, candidateOf } from "../../src/suppliers/candidate.js";
import { qualityRating, supplierRating } from "../../src/suppliers/quality-rating.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const part = (
  [technology, time, place, reliability]: readonly [number, number, number, number],
  share: number,
) => ({ technology, time, place, reliability, completeness: 3, share });

describe("rating of data", () => {
  it("is that of the published example of three processes", () => {
    // Formula DQR = (TeR + TiR + GeR + P) / 4 of Recommendation (EU) 2021/2279, Annex I 4.6.5, as third-party texts
    // give it; the example of three processes as worked there by hand.
    const rated = qualityRating([
      part([2, 1.5, 2, 1], 0.6),
      part([3, 2, 3, 3], 0.3),
      part([4, 3, 2, 4], 0.1),
    ])!;
    expect(rated.technology).toBeCloseTo(2.5, 12);
    expect(rated.time).toBeCloseTo(1.8, 12);
    expect(rated.place).toBeCloseTo(2.3, 12);
    expect(rated.reliability).toBeCloseTo(1.9, 12);
    expect(rated.rating).toBeCloseTo(2.125, 12);
    expect(qualityRating([part([1, 2, 2, 1], 5)])!.rating).toBe(1.5);
    expect(qualityRating([part([2, 2, 2, 3], 5)])!.rating).toBe(2.25);
  });

  it("weighs credits by their size, and has nothing to say of nothing", () => {
    expect(qualityRating([part([1, 1, 1, 1], -1), part([5, 5, 5, 5], 1)])!.rating).toBe(3);
    expect(qualityRating([])).toBeUndefined();
    expect(qualityRating([part([1, 1, 1, 1], 0)])).toBeUndefined();
  });

  it("falls where a house states what weighs most", () => {
    const rated = (settings: object): number =>
      supplierRating(
        candidateOf(
          houseOf("A", { settings: { ...settings } }),
          SHIPPED,
          "2026-11-25",
        ) as Candidate,
        "water",
        SHIPPED,
      )!.rating;
    expect(rated({ "wash-range.fresh-water": 20 })).toBeLessThan(rated({}) - 0.2);
  });
});
