import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Fastness, missesMinimum } from "../../src/ledger/fastness.js";
import { Ledger } from "../../src/ledger/ledger.js";
import { ACCEPTED } from "../../src/ledger/tally.js";
import type { Lot } from "../../src/log/lot.js";
import type { Plant } from "../../src/plant/plant.js";
import { anyLots, canonical, lotOf, PLANT } from "./made.js";

/** The client takes wet rub from 3 and wash from 4. */
const STRICT: Plant = {
  ...PLANT,
  text: { ...PLANT.text, clients: { "Client Elm": { minimum: { rub_wet: 3, wash: 4 } } } },
};

const graded = (rubWet?: number, wash?: number, rubDry?: number): Lot["fastness"] => ({
  rubDry,
  rubWet,
  wash,
});

function countsOf(lots: readonly Lot[], plant = STRICT): ReturnType<Fastness["toJSON"]> {
  const fastness = new Fastness();
  for (const lot of lots) fastness.add(lot, plant, 100);
  return fastness.toJSON();
}

describe("missesMinimum", () => {
  it.each([
    ["a grade at the least", graded(3, 4), false],
    ["half a grade less", graded(2.5, 4), true],
    ["one grade of two below", graded(4, 3.5), true],
    ["nothing logged", graded(), false],
    ["a grade the client does not ask for", graded(3, 4, 1), false],
  ])("of %s", (_, fastness, expected) => {
    expect(missesMinimum(lotOf({ fastness }), STRICT)).toBe(expected);
  });

  it("never holds for overhead, for other clients, or where the name is that of a property", () => {
    const fastness = graded(1, 1, 1);
    expect(missesMinimum(lotOf({ fastness, kind: "overhead" }), STRICT)).toBe(false);
    expect(missesMinimum(lotOf({ fastness, client: "Client Hazel" }), STRICT)).toBe(false);
    expect(missesMinimum(lotOf({ fastness, client: "constructor" }), STRICT)).toBe(false);
    expect(missesMinimum(lotOf({ fastness }), PLANT)).toBe(false);
  });
});

describe("Fastness", () => {
  it("counts lots by route and half grade, without overhead", () => {
    const [one, ...more] = countsOf([
      lotOf({ fastness: graded(2.5, 4, 5) }),
      lotOf({ lot: "L-2", fastness: graded(3) }),
      lotOf({ lot: "R-1", kind: "reprint", reprintOf: "L-1", fastness: graded(3, 4.5, 1) }),
      lotOf({ lot: "O-1", kind: "overhead", fastness: graded(1, 1, 1) }),
    ]);
    expect(more).toEqual([]);
    expect(one).toEqual({
      ...{ route: "reactive", lots: 3, graded: 2, reprints: 1, asked: 3, below: 1 },
      belowArea: 1_000_000,
      grades: {
        rub_dry: [1, 0, 0, 0, 0, 0, 0, 0, 1],
        rub_wet: [0, 0, 0, 1, 2, 0, 0, 0, 0],
        wash: [0, 0, 0, 0, 0, 0, 1, 1, 0],
      },
    });
  });

  it("refuses counts that are not as they were saved", () => {
    const [one] = countsOf([lotOf()]);
    if (one === undefined) throw new Error("no counts");
    for (const bad of [
      { ...one, lots: 0.5 },
      { ...one, below: -1 },
      { ...one, grades: { ...one.grades, wash: [1] } },
    ])
      expect(() => {
        new Fastness().take([bad]);
      }).toThrow(/not as they were saved/);
  });
});

describe("a ledger with least grades", () => {
  it("gives a lot that misses them no accepted area, and lets a reprint make up for it", () => {
    const ledger = new Ledger();
    ledger.add(lotOf({ rejected: 20, fastness: graded(2, 5) }), STRICT);
    ledger.add(lotOf({ lot: "L-2", fastness: graded(4, 5) }), STRICT);
    ledger.add(lotOf({ lot: "R-1", kind: "reprint", reprintOf: "L-1", length: 190 }), STRICT);
    const { groups, uncovered } = ledger.settled();
    const accepted = (kind: string): number =>
      groups
        .filter(({ key }) => key.kind === kind)
        .reduce((sum, { amounts }) => sum + (amounts[ACCEPTED] ?? 0), 0);
    // 200 m of 1.5 m: nothing of L-1, all of L-2, and 190 m reprinted, which 200 m missed cover.
    expect(accepted("production")).toBeCloseTo(300, 9);
    expect(accepted("reprint")).toBeCloseTo(285, 9);
    expect(uncovered).toEqual([]);
    // What would have been first quality: 180 m of 1.5 m.
    expect(ledger.fastness()).toMatchObject([{ below: 1, belowArea: 2_700_000 }]);
  });

  it("counts the same in any order, and merged from parts", () => {
    fc.assert(
      fc.property(anyLots, fc.nat(40), (lots, cut) => {
        const ledgerOf = (some: readonly Lot[]): Ledger => {
          const ledger = new Ledger();
          for (const lot of some) ledger.add(lot, STRICT);
          return ledger;
        };
        const whole = canonical(ledgerOf(lots));
        const parts = ledgerOf(lots.slice(cut).toReversed());
        parts.merge(ledgerOf(lots.slice(0, cut)));
        expect(canonical(parts)).toEqual(whole);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
