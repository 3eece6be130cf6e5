import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Rejects, type SavedRejects } from "../../src/ledger/rejects.js";
import { hash64 } from "../../src/numbers/digest.js";

type Entry = readonly [lot: string, area: number];

function rejectsOf(entries: readonly Entry[]): Rejects {
  const rejects = new Rejects();
  for (const [lot, area] of entries) rejects.add(hash64(lot), area);
  return rejects;
}

// Sums as a reader would form them: by name, smallest first.
function plainly(entries: readonly Entry[], names: readonly string[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [lot, area] of entries.toSorted((a, b) => a[1] - b[1])) {
    if (names.includes(lot)) sums.set(lot, (sums.get(lot) ?? 0) + area);
  }
  return sums;
}

const name = fc.nat(6).map((n) => `L-${n}`);
const entries = fc.array(fc.tuple(name, fc.double({ min: 0, max: 1e4, noNaN: true })), {
  maxLength: 40,
});

describe("Rejects", () => {
  it("gives the areas of the lots asked for, in whatever order they came and were merged", () => {
    const orders = entries.chain((list) =>
      fc.record({
        list: fc.constant(list),
        other: fc.shuffledSubarray([...list], { minLength: list.length }),
        cut: fc.nat(list.length),
        names: fc.array(name),
      }),
    );
    fc.assert(
      fc.property(orders, ({ list, other, cut, names }) => {
        const expected = plainly(list, names);
        expect(new Map(rejectsOf(list).areasOf(names))).toEqual(expected);
        const merged = rejectsOf(other.slice(cut));
        merged.merge(rejectsOf(other.slice(0, cut)));
        expect(new Map(merged.areasOf(names))).toEqual(expected);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("comes back from JSON, and goes on", () => {
    fc.assert(
      fc.property(entries, entries, (before, after) => {
        const text = JSON.stringify(rejectsOf(before));
        const resumed = Rejects.fromJSON(JSON.parse(text) as SavedRejects);
        expect(JSON.stringify(resumed)).toBe(text);
        for (const [lot, area] of after) resumed.add(hash64(lot), area);
        expect(JSON.stringify(resumed)).toBe(JSON.stringify(rejectsOf([...before, ...after])));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("forgets nothing over many lots, and is doubled when merged with itself", () => {
    const many = Array.from({ length: 10_000 }, (_, i): Entry => [`L-${i}`, i + 1]);
    const rejects = rejectsOf(many);
    const names = many.map(([lot]) => lot);
    expect([...rejects.areasOf(names)]).toEqual(many);
    rejects.merge(rejects);
    expect([...rejects.areasOf(names)]).toEqual(many.map(([lot, area]) => [lot, 2 * area]));
    expect(rejects.toJSON().areas).toHaveLength(20_000);
  });

  it("tells names apart that share half of their hash", () => {
    const [first, second] = hash64("L-1");
    const rejects = new Rejects();
    rejects.add([first, second ^ 1], 5);
    rejects.add([first ^ 1, second], 7);
    expect(rejects.areasOf(["L-1"]).size).toBe(0);
    rejects.add([first, second], 3);
    expect([...rejects.areasOf(["L-1", "L-1"])]).toEqual([["L-1", 3]]);
  });

  it.each([
    { lots: [1, 2, 3], areas: [1] },
    { lots: [1, 2], areas: [-1] },
    { lots: [1, 2], areas: [Number.NaN] },
  ])("refuses %j", (saved) => {
    expect(() => Rejects.fromJSON(saved)).toThrow("not as they were saved");
  });
});
