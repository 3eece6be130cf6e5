import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { claimKind } from "../../../src/compare/claims/catalogue.js";
import { GATES, gatesOf, type Outcome } from "../../../src/compare/claims/gates.js";
import { evidence, LESS_WATER, POLICY } from "./made.js";

const outcomes = (...changes: Parameters<typeof evidence>): Readonly<Record<string, Outcome>> =>
  Object.fromEntries(
    gatesOf(LESS_WATER, evidence(...changes), POLICY).map(({ gate, outcome }) => [gate, outcome]),
  );

describe("gatesOf", () => {
  it("answers every gate once, in the order of the list", () => {
    expect(gatesOf(LESS_WATER, evidence(), POLICY).map(({ gate }) => gate)).toEqual(GATES);
  });

  it("lets evidence without a flaw pass all gates", () => {
    expect(new Set(Object.values(outcomes()))).toEqual(new Set(["pass"]));
  });

  // Thresholds of the policy: 12 months and 30 lots pass, 3 months and 10 lots pass with a condition;
  // 80 % measured passes, 40 % with a condition; a gap of 5 % passes, 10 % with a condition.
  it.each<readonly [string, Parameters<typeof evidence>[0], string, Outcome]>([
    ["eleven months", { months: 11 }, "sample", "condition"],
    ["two months", { months: 2 }, "sample", "fail"],
    ["29 lots of one route", { lots: { pigment: 400, dye: 29 } }, "sample", "condition"],
    ["9 lots of one route", { lots: { pigment: 400, dye: 9 } }, "sample", "fail"],
    ["half measured", { measured: { pigment: 0.5, dye: 0.9 } }, "coverage", "condition"],
    [
      "nothing measured, all documented",
      { measured: { pigment: 0, dye: 0 }, documented: { pigment: 1, dye: 0.85 } },
      "coverage",
      "condition",
    ],
    [
      "nothing measured, half documented",
      { measured: { pigment: 0, dye: 0 }, documented: { pigment: 1, dye: 0.5 } },
      "coverage",
      "fail",
    ],
    ["a gap of 7 %", { gap: 0.07 }, "meters", "condition"],
    ["a gap of 7 % the other way", { gap: -0.07 }, "meters", "condition"],
    ["a gap of 14 %", { gap: 0.14 }, "meters", "fail"],
    ["no meter", { gap: undefined }, "meters", "fail"],
    [
      "an interval with zero",
      { saving: { median: 0.1, low: -0.1, high: 0.3 } },
      "interval",
      "fail",
    ],
    ["a rise", { saving: { median: -0.2, low: -0.4, high: -0.1 } }, "interval", "fail"],
    ["no percentage", { saving: undefined }, "interval", "fail"],
    ["fastness of one route", { fastness: { pigment: true, dye: false } }, "function", "condition"],
    ["a fifth in blends", { blends: 0.2 }, "function", "condition"],
    ["the public without review", { audience: "public" }, "audience", "fail"],
    ["the public with review", { audience: "public", review: "panel" }, "audience", "pass"],
    ["a banned phrase", { banned: ["eco"] }, "wording", "fail"],
    [
      "a counterpart nobody measured",
      { measured: { pigment: 0.7, dye: 0.7 } },
      "evidence",
      "condition",
    ],
  ])("judges %s", (_, change, gate, outcome) => {
    expect(outcomes(change)[gate]).toBe(outcome);
  });

  it("keeps what is for the owner inside the house", () => {
    const kind = claimKind("future-saving");
    expect(kind).toBeDefined();
    if (kind === undefined) return;
    const [audience] = gatesOf(kind, evidence({ audience: "client" }), POLICY).filter(
      ({ gate }) => gate === "audience",
    );
    expect(audience).toMatchObject({ outcome: "fail", why: "internal-only" });
  });

  it("never passes more easily for less evidence", () => {
    const rank = { pass: 2, condition: 1, fail: 0 } as const;
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.nat(60), fc.nat(60), (a, b, n, m) => {
        const worse = evidence({
          measured: { pigment: Math.min(a, b), dye: 1 },
          lots: { pigment: Math.min(n, m), dye: 99 },
        });
        const better = evidence({
          measured: { pigment: Math.max(a, b), dye: 1 },
          lots: { pigment: Math.max(n, m), dye: 99 },
        });
        const of = gatesOf(LESS_WATER, worse, POLICY);
        gatesOf(LESS_WATER, better, POLICY).forEach(({ outcome }, at) => {
          expect(rank[outcome]).toBeGreaterThanOrEqual(rank[of[at]!.outcome]);
        });
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
