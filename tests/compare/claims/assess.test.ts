import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judgeClaim, monthsLater, roundedDown } from "../../../src/compare/claims/assess.js";
import { CLAIM_KINDS } from "../../../src/compare/claims/catalogue.js";
import { evidence, POLICY } from "./made.js";

const judged = (change: Parameters<typeof evidence>[0] = {}): ReturnType<typeof judgeClaim> =>
  judgeClaim("less-water", evidence(change), POLICY, "2026-08-31");

describe("judgeClaim", () => {
  it("supports what passes all gates, and says what may cautiously be printed", () => {
    const { verdict, cautious, expires, mend } = judged();
    expect([verdict, cautious, expires, mend]).toEqual(["supported", 0.5, "2027-08-31", undefined]);
  });

  it("names the condition, and what it hangs on", () => {
    const { verdict, mend } = judged({ months: 6 });
    expect(verdict).toBe("conditions");
    expect(mend).toMatchObject({ gate: "sample", why: "few-lots" });
  });

  it("supports nothing that one gate refuses, whatever the others say", () => {
    const { verdict, mend } = judged({ months: 6, gap: 0.14 });
    expect(verdict).toBe("not-supported");
    expect(mend).toMatchObject({ gate: "meters", why: "wide-gap" });
  });

  it("never goes beyond conditions while one route is a model", () => {
    expect(judged({ measured: { pigment: 0.79, dye: 0.79 } }).verdict).toBe("conditions");
  });

  it("gives no value where pigment takes more", () => {
    const { verdict, cautious } = judged({ saving: { median: -0.2, low: -0.4, high: -0.1 } });
    expect([verdict, cautious]).toEqual(["not-supported", undefined]);
  });

  it("supports no claim that a log cannot show", () => {
    for (const { id } of CLAIM_KINDS.filter(({ indicator }) => indicator === undefined))
      expect(judgeClaim(id, evidence(), POLICY, "2026-08-31").verdict, id).toBe("not-supported");
  });

  it("refuses a name it does not know", () => {
    expect(() => judgeClaim("greenest", evidence(), POLICY, "2026-08-31")).toThrow(
      "There is no claim greenest.",
    );
  });
});

describe("roundedDown", () => {
  it.each([
    [0.66, 0.65],
    [0.65, 0.65],
    [0.6499, 0.6],
    [0.049, 0],
    [0.15, 0.15],
  ])("takes %d down to %d", (value, down) => {
    expect(roundedDown(value, 0.05)).toBe(down);
  });

  it("is never above the value, nor a whole step below", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (value) => {
        const down = roundedDown(value, 0.05);
        expect(down).toBeLessThanOrEqual(value + 1e-9);
        expect(value - down).toBeLessThan(0.05 + 1e-9);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});

describe("monthsLater", () => {
  it.each([
    ["2026-08-31", 12, "2027-08-31"],
    ["2027-02-28", 12, "2028-02-28"],
    ["2028-02-29", 12, "2029-02-28"],
    ["2026-11-30", 3, "2027-02-28"],
  ])("finds the day %s + %d months", (day, months, later) => {
    expect(monthsLater(day, months)).toBe(later);
  });
});
