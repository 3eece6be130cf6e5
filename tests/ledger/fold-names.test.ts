import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldNames, MOST_NAMES } from "../../src/ledger/fold-names.js";
import { Ledger } from "../../src/ledger/ledger.js";
import { ACCEPTED } from "../../src/ledger/tally.js";
import type { Lot } from "../../src/log/lot.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import { lotOf, PLANT } from "./made.js";

function ledgerOf(lots: readonly Lot[]): Ledger {
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, PLANT);
  return ledger;
}

// Lots of 1 m width and route reactive: the accepted area is the length.
function lot(client: string, length: number, more: Partial<Lot> = {}): Lot {
  return lotOf({ lot: `${client} ${length}`, client, length, width: 1, ...more });
}

function clientsOf(folded: ReturnType<typeof foldNames>): (readonly [string, number])[] {
  return folded.groups.map(({ key, amounts }) => [key.client, amounts[ACCEPTED] ?? NaN] as const);
}

describe("foldNames", () => {
  const { groups } = ledgerOf([
    lot("A", 30),
    lot("B", 10),
    lot("C", 20),
    lot("D", 10),
    lot("", 1),
  ]).settled();

  it("leaves few names alone", () => {
    expect(foldNames(() => groups, 4)).toEqual({ groups, folded: {} });
  });

  it("folds the smallest by accepted area, among equals the last by name, never those without", () => {
    const folded = foldNames(() => groups, 3);
    expect(clientsOf(folded)).toEqual([
      ["", 1],
      ["A", 30],
      ["C", 20],
      ["other (2 clients)", 20],
    ]);
    expect(folded.folded).toEqual({
      client: { names: 2, into: "other (2 clients)", lots: 2, accepted: 20 },
    });
    expect(clientsOf(foldNames(() => groups, 2))).toEqual([
      ["", 1],
      ["A", 30],
      ["other (3 clients)", 40],
    ]);
  });

  it("does not add up what a rate or another table tells apart", () => {
    const { groups: apart } = ledgerOf([
      lot("A", 30),
      lot("B", 10),
      lot("C", 5, { date: "2026-04-02" }),
      lot("D", 5, { route: "pigment-calender" }),
    ]).settled();
    const folded = foldNames(() => apart, 2).groups;
    expect(folded.map(({ key }) => [key.client, key.month, key.route])).toEqual([
      ["A", "2026-03", "reactive"],
      ["other (3 clients)", "2026-03", "pigment-calender"],
      ["other (3 clients)", "2026-03", "reactive"],
      ["other (3 clients)", "2026-04", "reactive"],
    ]);
  });

  it("folds clients and fabrics each by their own area", () => {
    const { groups: both } = ledgerOf([
      lot("A", 30, { fabric: "voile" }),
      lot("B", 20, { fabric: "satin" }),
      lot("C", 15, { fabric: "twill" }),
      lot("C", 14, { fabric: "satin" }),
    ]).settled();
    const { groups: after, folded } = foldNames(() => both, 2);
    expect(after.map(({ key }) => `${key.client}, ${key.fabric}`).sort()).toEqual([
      "A, other (2 fabrics)",
      "other (2 clients), other (2 fabrics)",
      "other (2 clients), satin",
    ]);
    expect(folded.fabric).toEqual({
      names: 2,
      into: "other (2 fabrics)",
      lots: 2,
      accepted: 45,
    });
  });

  it("keeps every sum, whatever is folded", () => {
    const lots = fc.array(fc.tuple(fc.nat(12), fc.nat(8), fc.integer({ min: 1, max: 1000 })), {
      minLength: 1,
      maxLength: 60,
    });
    fc.assert(
      fc.property(lots, fc.integer({ min: 1, max: 6 }), (list, most) => {
        const before = ledgerOf(
          list.map(([client, fabric, length], i) =>
            lot(`C${client}`, length, { lot: `L-${i}`, fabric: `F${fabric}` }),
          ),
        ).settled().groups;
        const after = foldNames(() => before, most).groups;
        for (const by of ["client", "fabric"] as const) {
          expect(new Set(after.map(({ key }) => key[by])).size).toBeLessThanOrEqual(most);
        }
        // Sums of some hundred whole lengths and products of theirs: plain addition is close enough.
        for (const [k] of AMOUNTS.entries()) {
          const total = (list_: typeof before): number =>
            list_.reduce((sum, { amounts }) => sum + (amounts[k] ?? NaN), 0);
          expect(total(after)).toBeCloseTo(total(before), 6);
        }
        expect(after.reduce((sum, { lots: count }) => sum + count, 0)).toBe(list.length);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe("a ledger of many clients", () => {
  const lots = Array.from({ length: MOST_NAMES + 200 }, (_, i) =>
    lotOf({
      lot: `L-${i}`,
      client: `Client ${i}`,
      // Areas that round when added, and lie so close that the order of addition would show.
      length: 100 + ((i * 7919) % 701) / 7,
      rejected: i % 3 === 0 ? 1 / 3 : undefined,
    }),
  );

  it("is settled with at most so many names, the same to the last bit in any order and merged", () => {
    const one = ledgerOf(lots).settled();
    expect(one.folded.client).toMatchObject({ names: 201, into: "other (201 clients)", lots: 201 });
    expect(one.folded.fabric).toBeUndefined();
    expect(new Set(one.groups.map(({ key }) => key.client)).size).toBe(MOST_NAMES);
    expect(ledgerOf(lots.toReversed()).settled()).toEqual(one);
    const merged = ledgerOf(lots.slice(450));
    merged.merge(ledgerOf(lots.slice(0, 450)));
    expect(merged.settled()).toEqual(one);
  });

  it("keeps all names when it is saved, so that parts can still be merged", () => {
    const ledger = ledgerOf(lots);
    ledger.settled();
    expect(ledger.save().keys).toHaveLength(lots.length);
  });
});
