import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LotNames } from "../../src/log/lot-names.js";

describe("LotNames", () => {
  it("holds what was put in, once, and nothing else", () => {
    // Few different hashes, zero among them, so that slots clash and zero marks are met.
    const half = fc.oneof(fc.nat(3), fc.nat(0xffff_ffff));
    const names = fc.array(fc.tuple(half, half), { maxLength: 300 });
    fc.assert(
      fc.property(names, names, (put, others) => {
        const set = new LotNames();
        // Zero marks an empty slot, so 0 and 1 in the second half are one.
        const key = ([a, b]: readonly [number, number]): string => `${a}:${Math.max(1, b)}`;
        for (const name of put) set.add(name);
        const held = new Set(put.map(key));
        expect(set.size).toBe(held.size);
        for (const name of [...put, ...others]) expect(set.has(name)).toBe(held.has(key(name)));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("is empty at first", () => {
    expect(new LotNames().size).toBe(0);
    expect(new LotNames().has([0, 0])).toBe(false);
  });
});
