import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { asItStands, fold } from "../../../src/report/wording/fold.js";

const folded = (text: string, joined = false): string => fold(asItStands(text), joined).text;

describe("fold", () => {
  it.each([
    ["ÉCOLOGIQUE", "ecologique"],
    ["İklim SIFIR ılık", "iklim sifir ilik"],
    ["Straße", "strasse"],
    ["CO₂", "co2"],
    ["eco\u2011friendly", "eco-friendly"],
    ["nature\u2019s", "nature's"],
    ["a \t\u00a0 b\nc\n\nd", "a b c\nd"],
  ])("makes %j into %j", (text, expected) => {
    expect(folded(text)).toBe(expected);
  });

  it("puts words broken at the end of a line together only when asked", () => {
    expect(folded("clean-\ning")).toBe("clean- ing");
    expect(folded("clean-\ning", true)).toBe("cleaning");
    expect(folded("1-\n2", true)).toBe("1- 2");
  });

  it("keeps places in order and inside the source, whatever the text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), fc.boolean(), (text, joined) => {
        const { text: made, from, to } = fold(asItStands(text), joined);
        expect([from.length, to.length]).toEqual([made.length, made.length]);
        for (const [i, start] of from.entries()) {
          expect(start).toBeGreaterThanOrEqual(from[i - 1] ?? 0);
          expect(to[i]).toBeGreaterThan(start);
          expect(to[i]).toBeLessThanOrEqual(text.length);
        }
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
