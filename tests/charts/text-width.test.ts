import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutText, interWidth } from "../../src/charts/text-width.js";
import { setWidth } from "./sound.js";

// The faces themselves are the outside judge: Inter 4.001 as TrueType, set by fontkit.
describe("width of a text", () => {
  it.each([
    "water withdrawn, L/m²",
    "CO₂e, partial, gate to gate",
    "−12\u202f345.6 to +7",
    "AVATAR Työväki façade",
    "Żółć, ΔΩμ, Щит",
    "liquor ratio of the wash range (open-width)",
  ])("of %j is that of the face, or a little more", (text) => {
    for (const [weight, code] of [
      ["regular", "400"],
      ["semibold", "600"],
    ] as const) {
      const own = setWidth(text, 11, code);
      expect(interWidth(text, 11, weight)).toBeGreaterThanOrEqual(own * 0.999);
      expect(interWidth(text, 11, weight)).toBeLessThan(own * 1.06);
    }
  });

  it("grows with the size and takes no room for marks above letters", () => {
    expect(interWidth("abc", 22)).toBeCloseTo(2 * interWidth("abc", 11), 9);
    expect(interWidth("e\u0301", 10)).toBe(interWidth("é", 10));
    expect(interWidth("q\u0301", 10)).toBe(interWidth("q", 10));
  });

  it("takes signs of other scripts for as wide as they are high", () => {
    expect(interWidth("染", 10)).toBe(10);
  });
});

describe("text in lines", () => {
  const measure = (text: string): number => Array.from(text).length;

  it.each([
    ["pad", 10, ["pad"]],
    ["", 10, [""]],
    ["steam and wash", 9, ["steam and", "wash"]],
    ["open-width range", 8, ["open-", "width", "range"]],
    ["12\u202f345\u00a0% of it", 11, ["12\u202f345\u00a0% of", "it"]],
    ["aaaaaaaaaaaa b", 5, ["aaaaa", "aaaaa", "aa b"]],
    ["at -40 to -30", 7, ["at -40", "to -30"]],
  ])("breaks %j after %d", (text, room, lines) => {
    expect(cutText(text, room, 5, measure).lines).toEqual(lines);
  });

  it("says with an ellipsis that something is left out", () => {
    expect(cutText("one, two, three", 6, 2, measure).lines).toEqual(["one,", "two…"]);
    expect(cutText("one, two, three", 9, 1, measure).lines).toEqual(["one, two…"]);
  });

  it("is never longer than its room and loses no letter while lines are left", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), fc.integer({ min: 2, max: 20 }), (text, room) => {
        const cut = cutText(text, room, 1000, measure);
        const inked = (one: string): string => one.replace(/\s/g, "");
        expect(inked(cut.lines.join(""))).toBe(inked(text));
        expect(Math.max(...cut.lines.map(measure))).toBeLessThanOrEqual(room);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
