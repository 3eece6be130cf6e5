import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Account } from "../../src/account/account.js";
import { compareArms, rangeOf } from "../../src/compare/compare.js";
import { inputOf } from "../report/compose/small-mill.js";

const { account } = inputOf();

/** The account with other draws of water. */
function withWater(pigment: readonly number[], dye: readonly number[]): Account {
  const { indicators } = account;
  const of = (side: ReadonlyMap<"water", Float64Array>, draws: readonly number[]) =>
    new Map([...side, ["water", Float64Array.from(draws)] as const]);
  return {
    ...account,
    indicators: {
      ...indicators,
      pigment: of(indicators.pigment as ReadonlyMap<"water", Float64Array>, pigment),
      dye: of(indicators.dye as ReadonlyMap<"water", Float64Array>, dye),
    },
  };
}

/** 1 … 101 times a number: median 51, ends 3.5 and 98.5 times it. */
const stairs = (step: number): number[] => Array.from({ length: 101 }, (_, i) => (i + 1) * step);

describe("compareArms", () => {
  it("divides totals by the units, and leaves shares as they are", () => {
    const once = compareArms(withWater(stairs(2), stairs(4)), "water", 1);
    const tenth = compareArms(withWater(stairs(2), stairs(4)), "water", 10);
    expect(once.pigment.median).toBe(102);
    expect(tenth.pigment.median).toBeCloseTo(10.2, 12);
    expect(tenth.difference.low).toBeCloseTo(once.difference.low / 10, 12);
    expect(tenth.saving).toEqual(once.saving);
  });

  it("pairs the draws: half as much in every draw is half without doubt", () => {
    const { saving, breakEvenYield, less, count, resolved } = compareArms(
      withWater(stairs(2), stairs(4)),
      "water",
      1,
    );
    expect(saving).toEqual({ median: 0.5, low: 0.5, high: 0.5 });
    expect(breakEvenYield).toEqual({ median: 0.5, low: 0.5, high: 0.5 });
    expect([less, count, resolved]).toEqual([101, 101, true]);
  });

  it("saves nothing when both arms are equal", () => {
    const { saving, difference, less, resolved } = compareArms(
      withWater(stairs(3), stairs(3)),
      "water",
      7,
    );
    expect(saving).toEqual({ median: 0, low: 0, high: 0 });
    expect(difference).toEqual({ median: 0, low: 0, high: 0 });
    expect([less, resolved]).toEqual([0, false]);
  });

  it("gives 1 − 1/(1 − S) when the arms change places", () => {
    const litres = fc.double({ min: 0.5, max: 50, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(litres, litres), { minLength: 3, maxLength: 40 }), (pairs) => {
        const p = pairs.map(([value]) => value);
        const d = pairs.map(([, value]) => value);
        const one = compareArms(withWater(p, d), "water", 1);
        const other = compareArms(withWater(d, p), "water", 1);
        one.draws?.forEach((s, i) => {
          expect(other.draws?.[i]).toBeCloseTo(1 - 1 / (1 - s), 9);
        });
        expect(other.difference.median).toBeCloseTo(-one.difference.median, 9);
        expect(other.difference.low).toBeCloseTo(-one.difference.high, 9);
        expect(other.resolved).toBe(one.resolved);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("forms no share of next to nothing", () => {
    const nothing = compareArms(withWater(stairs(1), stairs(0)), "water", 1);
    expect(nothing.saving).toBeUndefined();
    expect(nothing.draws).toBeUndefined();
    expect(compareArms(withWater(stairs(100), stairs(0.9)), "water", 1).saving).toBeUndefined();
    expect(compareArms(withWater(stairs(100), stairs(1.1)), "water", 1).saving).toBeDefined();
  });

  it("is not resolved while zero lies in the interval of the difference", () => {
    const dye = stairs(1);
    const shifted = (by: number): boolean =>
      compareArms(
        withWater(
          dye.map((_, i) => 200 + by - i),
          dye.map(() => 200),
        ),
        "water",
        1,
      ).resolved;
    // The difference runs from −by to 100 − by in steps of 1; its ends are 2.5 inside.
    expect([0, 2, 3, 50, 97, 98, 101].map(shifted)).toEqual([
      true,
      true,
      false,
      false,
      false,
      true,
      true,
    ]);
  });
});

describe("rangeOf", () => {
  it("takes the middle 95 %", () => {
    expect(rangeOf(Float64Array.from(stairs(1)))).toEqual({ median: 51, low: 3.5, high: 98.5 });
  });

  it("has no numbers without draws", () => {
    expect(rangeOf(new Float64Array(0))).toEqual({ median: NaN, low: NaN, high: NaN });
  });
});
