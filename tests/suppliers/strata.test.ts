import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Group, Ledger } from "../../src/ledger/ledger.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import {
  FEWEST_LOTS,
  groupsOf,
  identityText,
  OTHER,
  placeOf,
  strataOf,
  travelling,
} from "../../src/suppliers/strata.js";
import { lotOf, smallMill } from "../report/compose/small-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const PLANT = smallMill();

function groupsFrom(lots: readonly Parameters<typeof lotOf>[0][]): readonly Group[] {
  const ledger = new Ledger();
  lots.forEach((lot, i) => {
    ledger.add(lotOf({ lot: `L-${i}`, ...lot }), PLANT);
  });
  return ledger.settled().groups;
}

describe("strata", () => {
  it("name no client and no fabric, and add clients up", () => {
    const lots = ["Aspen", "Birch", "Cedar"].map((client) => ({
      client,
      fabric: `cloth of ${client}`,
    }));
    const strata = strataOf(groupsFrom(lots), SHIPPED);
    expect(strata).toHaveLength(1);
    expect(strata[0]?.lots).toBe(3);
    expect(JSON.stringify(strata)).not.toMatch(/Aspen|Birch|Cedar|cloth of/);
  });

  it("join the few, whatever their bands, and keep routes and cloth apart", () => {
    const strata = strataOf(
      groupsFrom([
        ...[1, 2, 3].map(() => ({ gsm: 120 })),
        { gsm: 160 },
        { gsm: 210, coverage: 0.1 },
        { route: "reactive" },
        { fibre: [{ fibre: "viscose", share: 1 }] },
      ]),
      SHIPPED,
    );
    expect(
      strata.map(({ blend, weight, coverage, route, lots }) => [
        blend,
        weight,
        coverage,
        route,
        lots,
      ]),
    ).toEqual([
      ["cotton", OTHER, OTHER, "pigment-calender", 5],
      ["cotton", OTHER, OTHER, "reactive", 1],
      ["viscose", OTHER, OTHER, "pigment-calender", 1],
    ]);
    expect(FEWEST_LOTS).toBe(3);
  });

  it("never have fewer than three lots, whatever bands, kinds and vintages they are of", () => {
    const lot = fc.record({
      gsm: fc.integer({ min: 80, max: 240 }),
      coverage: fc.constantFrom(0.1, 0.4, 0.9),
      kind: fc.constantFrom("production" as const, "reprint" as const),
      date: fc.constantFrom("2026-01-05", "2026-07-05"),
      route: fc.constantFrom("reactive", "pigment-calender"),
      fibre: fc.constantFrom("cotton", "viscose").map((fibre) => [{ fibre, share: 1 }]),
    });
    fc.assert(
      fc.property(fc.array(lot, { minLength: 1, maxLength: 30 }), (lots) => {
        const groups = groupsFrom(lots);
        const kept = travelling(groups);
        const strata = strataOf(kept, SHIPPED);
        expect(strata.every((one) => one.lots >= FEWEST_LOTS)).toBe(true);
        const sum = (some: readonly { readonly lots: number }[]): number =>
          some.reduce((all, one) => all + one.lots, 0);
        expect(sum(strata)).toBe(sum(kept));
        // At most two lots of each of four cloths and routes stay at home.
        expect(sum(groups) - sum(kept)).toBeLessThanOrEqual(8);
        const order = strata.map(identityText);
        expect(order).toEqual([...new Set(order)].sort());
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("hold every sum of the ledger, in whatever order lots came", () => {
    const lot = fc.record({
      client: fc.constantFrom("a", "b"),
      gsm: fc.integer({ min: 80, max: 240 }),
      length: fc.integer({ min: 10, max: 900 }),
      date: fc.constantFrom("2026-01-05", "2026-02-05", "2026-07-05"),
      route: fc.constantFrom("reactive", "pigment-calender"),
    });
    fc.assert(
      fc.property(fc.array(lot, { minLength: 1, maxLength: 30 }), (lots) => {
        const named = lots.map((one, i) => ({ ...one, lot: `N-${i}` }));
        const groups = groupsFrom(named);
        const strata = strataOf(groups, SHIPPED);
        expect(strataOf(groupsFrom([...named].reverse()), SHIPPED)).toEqual(strata);
        const back = groupsOf(strata);
        AMOUNTS.forEach((_, i) => {
          const all = (some: readonly Group[]): number =>
            some.reduce((sum, { amounts }) => sum + amounts[i]!, 0);
          expect(Math.abs(all(back) - all(groups))).toBeLessThanOrEqual(1e-9 * (1 + all(groups)));
        });
      }),
      { seed: 1, numRuns: 40 },
    );
  });

  it("keep months apart only where factors change between them", () => {
    const dated = (from: string) => ({
      ...SHIPPED.factors.get("boiler.efficiency")!.values[0]!,
      from,
    });
    const boiler = {
      ...SHIPPED.factors.get("boiler.efficiency")!,
      values: [dated("2026-06-01"), dated("2000-01-01")],
    };
    const set = { ...SHIPPED, factors: new Map([["boiler.efficiency", boiler]]) };
    const lots = [
      "2026-03-01",
      "2026-04-01",
      "2026-05-31",
      "2026-06-01",
      "2026-07-01",
      "2026-08-01",
    ].map((date) => ({ date }));
    expect(strataOf(groupsFrom(lots), set).map(({ from, lots: n }) => [from, n])).toEqual([
      ["2026-03", 3],
      ["2026-06", 3],
    ]);
  });

  it("refuse an amount that is not in the list", () => {
    const [stratum] = strataOf(groupsFrom([{}]), SHIPPED);
    expect(() => groupsOf([{ ...stratum!, amounts: { money: 1 } }])).toThrow(
      "There is no amount money",
    );
    expect(placeOf("accepted")).toBeGreaterThan(0);
    expect(placeOf("money")).toBe(-1);
  });
});
