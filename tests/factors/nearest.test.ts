import { describe, expect, it } from "vitest";
import { nearest } from "../../src/factors/nearest.js";

const WORDS = ["pad.pickup", "pad.power", "printer.power", "unit"];

describe("nearest", () => {
  it.each([
    ["pad.pikup", "pad.pickup"], // a letter left out
    ["pad.pickkup", "pad.pickup"], // one too many
    ["pad.pickip", "pad.pickup"], // another one
    ["pad.pikcup", "pad.pickup"], // two swapped
    ["unti", "unit"],
    ["pad.power", "pad.power"],
  ])("finds what %s was meant for", (word, meant) => {
    expect(nearest(word, WORDS)).toBe(meant);
  });

  // Two swapped letters are one slip: counted as two, they would lie beyond a third of five letters.
  it("counts a swap once", () => {
    expect(nearest("claim", ["cliam"])).toBe("cliam");
    expect(nearest("claim", ["clxxm"])).toBeUndefined();
  });

  it("prefers the fewest slips, then the first named", () => {
    expect(nearest("unitt", ["units", "unit"])).toBe("units");
    expect(nearest("uni", ["unx", "unit"])).toBe("unx");
    expect(nearest("pad.powr", ["pad.pow", "pad.power", "pad.powers"])).toBe("pad.pow");
  });

  it("keeps silent when nothing is near", () => {
    expect(nearest("colour", WORDS)).toBeUndefined();
    expect(nearest("x", [])).toBeUndefined();
  });
});
