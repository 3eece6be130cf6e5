import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { type Candidate, candidateOf } from "../../src/suppliers/candidate.js";
import { cellTotals } from "../../src/suppliers/cells.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const made = candidateOf(houseOf("A", { lots: [5, 7] }), SHIPPED, "2026-11-25") as Candidate;
const ASK = { program: made.program, groups: made.groups, counts: () => true, draws: 700, seed: 3 };

describe("totals by stratum", () => {
  // The account adds all terms up by flow, and strata by another way: both must come to the same in every draw.
  it("add up to the account of all lots, draw by draw", () => {
    const ids = ["water", "energy", "cod", "co2-location"] as const;
    const { totals, lots, accepted, mass } = cellTotals({
      ...ASK,
      ids,
      cells: 2,
      cellOf: made.groups.map(({ key }) => (key.own === "dye" ? 1 : 0)),
    });
    const account = accountOf(made.program, 700, 3);
    for (const id of ids) {
      const whole = account.indicators.pigment.get(id)!;
      const [pigment, dye, outside] = totals.get(id)!;
      whole.forEach((value, i) => {
        expect(Math.abs((pigment![i]! + dye![i]! + outside![i]!) / value - 1)).toBeLessThan(1e-9);
      });
    }
    expect(lots).toEqual([5, 7, 0]);
    expect(accepted.reduce((a, b) => a + b, 0)).toBeCloseTo(made.given.pack.totals.accepted, 6);
    expect(mass.reduce((a, b) => a + b, 0)).toBeCloseTo(made.given.pack.totals.mass, 6);
  });

  it("keep lots outside the mix apart", () => {
    const { lots, totals } = cellTotals({
      ...ASK,
      ids: ["water"],
      cells: 1,
      cellOf: made.groups.map(({ key }) => (key.own === "dye" ? -1 : 0)),
    });
    expect(lots).toEqual([5, 7]);
    expect(totals.get("water")![1]![0]).toBeGreaterThan(totals.get("water")![0]![0]!);
  });

  it("leave out the terms that do not count", () => {
    const all = cellTotals({ ...ASK, ids: ["water"], cells: 1, cellOf: made.groups.map(() => 0) });
    const dry = cellTotals({
      ...ASK,
      ids: ["water"],
      cells: 1,
      cellOf: made.groups.map(() => 0),
      counts: ({ kind }) => kind !== "wash-range",
    });
    expect(dry.totals.get("water")![0]![0]).toBeLessThan(0.8 * all.totals.get("water")![0]![0]!);
    const none = cellTotals({
      ...ASK,
      ids: ["water"],
      cells: 1,
      cellOf: made.groups.map(() => 0),
      counts: () => false,
    });
    expect(none.totals.get("water")![0]![0]).toBe(0);
  });
});
