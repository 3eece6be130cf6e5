import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GroupSums } from "../../src/ledger/group-sums.js";
import { BinnedSums } from "../../src/numbers/binned-sum.js";
import { AMOUNTS } from "../../src/steps/amounts.js";

const WIDTH = AMOUNTS.length;

function rowOf(value: number): Float64Array {
  return Float64Array.from({ length: WIDTH }, (_, k) => value * (k + 1));
}

function sumsOf(entries: readonly (readonly [string, number])[]): GroupSums {
  const sums = new GroupSums();
  for (const [key, value] of entries) sums.add(key, rowOf(value));
  return sums;
}

const entries = fc.array(
  fc.tuple(
    fc.nat(700).map((n) => `key ${n}`),
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  ),
  { minLength: 1, maxLength: 800 },
);

describe("GroupSums", () => {
  it("holds the exact sum of each key, sorted by key", () => {
    fc.assert(
      fc.property(entries, (list) => {
        const rows = [...sumsOf(list).rows()];
        const keys = [...new Set(list.map(([key]) => key))].sort();
        expect(rows.map(([key]) => key)).toEqual(keys);
        for (const [key, amounts] of rows) {
          const exact = new BinnedSums(WIDTH);
          for (const [other, value] of list) if (other === key) exact.addRow(0, rowOf(value));
          expect([...amounts]).toEqual([...exact.values()]);
        }
      }),
      { seed: 1, numRuns: 20 },
    );
  });

  it("is the same in any order, and put together from parts that were saved", () => {
    const split = entries.chain((list) =>
      fc.record({
        list: fc.constant(list),
        other: fc.shuffledSubarray([...list], { minLength: list.length }),
        cut: fc.nat(list.length),
      }),
    );
    fc.assert(
      fc.property(split, ({ list, other, cut }) => {
        const merged = sumsOf(other.slice(cut));
        const text = JSON.stringify(sumsOf(other.slice(0, cut)).save());
        merged.take(JSON.parse(text) as ReturnType<GroupSums["save"]>);
        expect([...merged.rows()]).toEqual([...sumsOf(list).rows()]);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  it("hands out rows that may be written into", () => {
    const sums = sumsOf([["a", 1]]);
    for (const [, amounts] of sums.rows()) amounts.fill(99);
    expect([...sums.rows()]).toEqual([["a", rowOf(1)]]);
  });

  it("refuses sums that are not as they were saved, and stays as it was", () => {
    const sums = sumsOf([["a", 1]]);
    const saved = sumsOf([
      ["a", 2],
      ["b", 3],
    ]).save();
    const { keys, sums: two } = saved;
    const short = { keys, sums: { ...two, whole: two.whole.slice(1) } };
    const broken = { keys, sums: { ...two, whole: two.whole.with(-1, 0.5) } };
    for (const wrong of [short, broken]) {
      expect(() => {
        sums.take(wrong);
      }).toThrow();
      expect([...sums.rows()]).toEqual([["a", rowOf(1)]]);
    }
  });
});
