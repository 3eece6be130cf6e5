import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LotTable, type Seen } from "../../src/log/lot-table.js";
import { hash64 } from "../../src/numbers/digest.js";

describe("LotTable", () => {
  it("agrees with a map of names and contents", () => {
    const word = fc.integer({ min: 0, max: 3 });
    // The highest bit and zero are where signed and empty numbers would go wrong.
    const wide = word.map((n) => [0, 1, 0x7fffffff, 0xffffffff][n] ?? 0);
    const entry = fc.tuple(fc.tuple(wide, wide), fc.tuple(wide, wide));
    fc.assert(
      fc.property(fc.array(entry, { maxLength: 60 }), (entries) => {
        const table = new LotTable();
        const map = new Map<string, string>();
        for (const [name, content] of entries) {
          // Zero stands for an empty slot, so 0 and 1 are one name by design.
          const key = `${name[0]}:${Math.max(1, name[1])}`;
          const known = map.get(key);
          const expected: Seen =
            known === undefined ? "new" : known === content.join() ? "same" : "different";
          if (known === undefined) map.set(key, content.join());
          expect(table.see(name, content)).toBe(expected);
        }
        expect(table.size).toBe(map.size);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("forgets nothing as it grows", () => {
    const table = new LotTable();
    const lots = Array.from({ length: 20_000 }, (_, i) => hash64(`L-${i}`));
    for (const lot of lots) expect(table.see(lot, lot)).toBe("new");
    expect(table.size).toBe(lots.length);
    for (const lot of lots) expect(table.see(lot, lot)).toBe("same");
    expect(table.see(lots[777] ?? [0, 0], [1, 2])).toBe("different");
    expect(table.size).toBe(lots.length);
  });
});
