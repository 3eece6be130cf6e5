import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Rejects } from "../../src/ledger/rejects.js";
import { type Reprint, settle } from "../../src/ledger/reprints.js";
import { hash64 } from "../../src/numbers/digest.js";

function reprint(lot: string, of: string, area: number, key = "k"): Reprint {
  return { lot, of, area, key };
}

function rejectsOf(...list: readonly { readonly lot: string; readonly area: number }[]): Rejects {
  const rejects = new Rejects();
  for (const { lot, area } of list) rejects.add(hash64(lot), area);
  return rejects;
}

const REJECTED = rejectsOf({ lot: "L-1", area: 30 });

describe("settle", () => {
  it("counts a reprint that the rejects of its original cover", () => {
    const { byKey, uncovered } = settle(REJECTED, [reprint("R-1", "L-1", 30)]);
    expect([...byKey]).toEqual([["k", 30]]);
    expect(uncovered).toEqual([]);
    expect(settle(REJECTED, [reprint("R-1", "L-1", 12)]).byKey.get("k")).toBe(12);
  });

  it("counts the part that is covered and reports the rest", () => {
    const { byKey, uncovered } = settle(REJECTED, [reprint("R-1", "L-1", 40)]);
    expect(byKey.get("k")).toBe(30);
    expect(uncovered).toEqual([{ lot: "R-1", of: "L-1", area: 10 }]);
  });

  it("counts nothing for a reprint whose original is not there, or had no rejects", () => {
    const { byKey, uncovered } = settle(REJECTED, [
      reprint("R-1", "L-7", 20),
      reprint("R-2", "", 5),
    ]);
    expect(byKey.get("k")).toBe(0);
    expect(uncovered).toEqual([
      { lot: "R-1", of: "L-7", area: 20 },
      { lot: "R-2", of: "", area: 5 },
    ]);
  });

  it("shares the rejects among several reprints of one lot in proportion", () => {
    const { byKey, uncovered } = settle(REJECTED, [
      reprint("R-1", "L-1", 20, "a"),
      reprint("R-2", "L-1", 40, "b"),
    ]);
    expect(byKey.get("a")).toBeCloseTo(10, 12);
    expect(byKey.get("b")).toBeCloseTo(20, 12);
    expect(uncovered.map(({ lot }) => lot)).toEqual(["R-1", "R-2"]);
    expect(uncovered[1]?.area).toBeCloseTo(20, 12);
  });

  it("lets a reprint without area be", () => {
    expect(settle(rejectsOf(), [reprint("R-1", "L-1", 0)])).toEqual({
      byKey: new Map([["k", 0]]),
      uncovered: [],
    });
  });

  it("gives the same bits in any order, though names repeat", () => {
    const name = fc.nat(4).map((n) => `L-${n}`);
    const area = fc.double({ min: 0, max: 1e4, noNaN: true });
    const rejects = fc.array(fc.record({ lot: name, area }), { maxLength: 12 });
    const key = fc.constantFrom("a", "b");
    const reprints = fc.array(fc.record({ lot: name, of: name, area, key }), { maxLength: 12 });
    fc.assert(
      fc.property(
        rejects.chain((list) => fc.tuple(fc.constant(list), shuffledOf(list))),
        reprints.chain((list) => fc.tuple(fc.constant(list), shuffledOf(list))),
        ([rejected, otherRejected], [made, otherMade]) => {
          const one = settle(rejectsOf(...rejected), made);
          const two = settle(rejectsOf(...otherRejected), otherMade);
          expect(two.uncovered).toEqual(one.uncovered);
          expect(new Set(two.byKey.keys())).toEqual(new Set(one.byKey.keys()));
          for (const [text, sum] of one.byKey)
            expect(Object.is(two.byKey.get(text), sum)).toBe(true);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it("never counts more than was rejected, nor more than was reprinted", () => {
    const name = fc.nat(3).map((n) => `L-${n}`);
    const area = fc.double({ min: 0, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(area, { minLength: 4, maxLength: 4 }),
        fc.array(fc.tuple(name, area), { maxLength: 12 }),
        (rejected, made) => {
          const { byKey, uncovered } = settle(
            rejectsOf(...rejected.map((one, i) => ({ lot: `L-${i}`, area: one }))),
            made.map(([of, one], i) => reprint(`R-${i}`, of, one, of)),
          );
          for (const [i, cover] of rejected.entries()) {
            const claimed = made.reduce((sum, [of, one]) => sum + (of === `L-${i}` ? one : 0), 0);
            const counted = byKey.get(`L-${i}`) ?? 0;
            const rest = uncovered.reduce(
              (sum, one) => sum + (one.of === `L-${i}` ? one.area : 0),
              0,
            );
            expect(counted).toBeCloseTo(Math.min(cover, claimed), 6);
            expect(counted + rest).toBeCloseTo(claimed, 6);
          }
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });
});

function shuffledOf<T>(list: readonly T[]): fc.Arbitrary<T[]> {
  return fc.shuffledSubarray([...list], { minLength: list.length });
}
