import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import type { Placement } from "../../src/steps/flows.js";
import { fateConversions, type SubstanceFacts } from "../../src/utilities/fate.js";
import { valueOf } from "../steps/context.js";

function facts(fixed: number, evaporated: number, formaldehyde?: number): SubstanceFacts {
  return {
    fixed: constant("fixed", fixed),
    evaporated: constant("evaporated", evaporated),
    cod: constant("cod", 1.5, "g/g"),
    nitrogen: constant("nitrogen", 0.25, "g/g"),
    salt: constant("salt", 0.125, "g/g"),
    carbon: constant("carbon", 0.5, "g/g"),
    ...(formaldehyde === undefined
      ? {}
      : { formaldehyde: constant("formaldehyde", formaldehyde, "g/g") }),
  };
}

function fate(
  placement: Placement,
  washed: boolean,
  about: SubstanceFacts = facts(0.6, 0.2),
): Record<string, number> {
  return Object.fromEntries(
    fateConversions("binder", placement, about, washed).map(({ to, rate }) => [to, valueOf(rate)]),
  );
}

const ENDS = ["cloth", "water", "air", "waste"].map((end) => `to-${end}.binder`);

describe("fateConversions", () => {
  it("end one gram of every substance somewhere, once", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const placement = fc.constantFrom<Placement>("cloth", "drain", "bath", "waste");
    fc.assert(
      fc.property(share, share, placement, fc.boolean(), (fixed, evaporated, where, washed) => {
        const ends = fate(where, washed, facts(fixed, evaporated));
        const sum = ENDS.reduce((total, end) => total + (ends[end] ?? 0), 0);
        expect(sum).toBeCloseTo(1, 12);
        expect(ends["used.binder"]).toBe(1);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("wash out what is neither evaporated nor fixed", () => {
    const ends = fate("cloth", true);
    // 0.8 × 0.6 stays, 0.8 × 0.4 = 0.32 goes to the drain.
    expect(ends["to-cloth.binder"]).toBeCloseTo(0.48, 12);
    expect(ends["to-water.binder"]).toBeCloseTo(0.32, 12);
    expect(ends["cod"]).toBeCloseTo(0.48, 12);
    expect(ends["nitrogen"]).toBeCloseTo(0.08, 12);
    expect(ends["salt"]).toBeCloseTo(0.04, 12);
    expect(ends["carbon.air"]).toBeCloseTo(0.1, 12);
  });

  it("leave on the cloth what is not washed and not evaporated", () => {
    const ends = fate("cloth", false);
    expect(ends["to-cloth.binder"]).toBeCloseTo(0.8, 12);
    expect(ends).not.toHaveProperty("cod");
  });

  it.each(["drain", "bath"] as const)("let all of it into the drain from the %s", (placement) => {
    const ends = fate(placement, true);
    expect(ends["to-water.binder"]).toBe(1);
    expect(ends["cod"]).toBe(1.5);
    expect(ends).not.toHaveProperty("carbon.air");
  });

  it("count no load for what is taken away as waste", () => {
    expect(fate("waste", true)).toEqual({ "used.binder": 1, "to-waste.binder": 1 });
  });

  it("set formaldehyde free where print is cured, not where it is washed", () => {
    expect(fate("cloth", false, facts(1, 0, 0.002))["formaldehyde"]).toBe(0.002);
    expect(fate("cloth", true, facts(1, 0, 0.002))).not.toHaveProperty("formaldehyde");
    expect(fate("drain", false, facts(1, 0, 0.002))).not.toHaveProperty("formaldehyde");
  });
});
