import { describe, expect, it } from "vitest";
import type { ReferenceMix } from "../../src/suppliers/reference.js";
import { reversalOf } from "../../src/suppliers/reversal.js";

const MIX: ReferenceMix = {
  from: "file",
  name: "half and half",
  digest: "",
  strata: [
    { words: "pigment", classes: { route: "pigment" }, weight: 0.5 },
    { words: "reactive", classes: { route: "reactive" }, weight: 0.5 },
  ],
};
const still = (value: number) => ({ median: value, low: value, high: value });
const shown = (alias: string, crude: number, ...areas: readonly [number, number]) => ({
  alias,
  crude: still(crude),
  cells: areas.map((accepted) => ({ accepted })),
  accepted: areas[0] + areas[1],
});
const standing = (alias: string, atMix: number) => ({ alias, covered: 1, value: still(atMix) });

describe("an order turned round", () => {
  // Worked by hand: 80 % pigment at 6 and dye at 70 is 18.8; 20 % at 5 and 60 is 49; at half and half 38 and 32.5.
  it("is told with the part of the mix that turned it", () => {
    const standings = {
      ranked: [standing("B", 32.5), standing("A", 38)],
      unranked: [],
      others: [],
    };
    expect(reversalOf(MIX, [shown("A", 18.8, 80, 20), shown("B", 49, 20, 80)], standings)).toEqual({
      first: { alias: "A", crude: 18.8, atMix: 38, share: 0.8 },
      second: { alias: "B", crude: 49, atMix: 32.5, share: 0.2 },
      of: "pigment",
      inMix: 0.5,
    });
  });

  it("is not told where the order is the same", () => {
    const standings = { ranked: [standing("A", 30), standing("B", 38)], unranked: [], others: [] };
    expect(
      reversalOf(MIX, [shown("A", 18.8, 80, 20), shown("B", 49, 20, 80)], standings),
    ).toBeUndefined();
  });
});
