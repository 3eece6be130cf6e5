import { describe, expect, it } from "vitest";
import { statedCheck } from "../../src/suppliers/stated-checks.js";
import { packOf } from "./made.js";

const pack = packOf();

describe("what is stated alone", () => {
  it("passes as it was sealed", () => {
    expect(statedCheck(pack)).toMatchObject({ outcome: "pass", places: [] });
  });

  it("is held against strata month by vintage", () => {
    const months = [
      { month: "2026-01", lots: 4, accepted: 1 },
      { month: "2026-02", lots: 5, accepted: 1 },
    ];
    const [one] = pack.strata;
    const strata = [
      { ...one!, from: "2026-01", lots: 4 },
      { ...one!, from: "2026-02", lots: 5 },
    ];
    expect(statedCheck({ ...pack, months, strata }).outcome).toBe("pass");
    const moved = [
      { ...months[0]!, lots: 3 },
      { ...months[1]!, lots: 6 },
    ];
    expect(statedCheck({ ...pack, months: moved, strata })).toMatchObject({
      outcome: "flag",
      places: ["/pack/months", "/pack/months"],
    });
  });

  it("takes reprints without rejects up to the reprints there are", () => {
    const [one] = pack.strata;
    const strata = [{ ...one!, kind: "reprint" as const, amounts: { printed: 50 } }];
    const months = [{ month: one!.from, lots: one!.lots, accepted: 1 }];
    const at = (uncovered: number): string =>
      statedCheck({ ...pack, months, strata, totals: { ...pack.totals, uncovered } }).outcome;
    expect([at(50), at(51)]).toEqual(["pass", "flag"]);
  });
});
