import * as fontkit from "fontkit";
import { describe, expect, it } from "vitest";
import { join } from "../../../src/report/pdf/faces.js";
import { Paper } from "../../../src/report/pdf/paper.js";
import { inter, report } from "./sample-text.js";

const { faces } = new Paper(report([]), inter).pen;

// The font file read by its own library is the judge of widths.
const judge = fontkit.create(inter.regular as Buffer) as fontkit.Font;

describe("openFace", () => {
  it("measures a word as the font says, kerning included", () => {
    const width = judge.layout("AVATAR To").advanceWidth / judge.unitsPerEm;
    expect(faces.regular.set("AVATAR To", false).width).toBeCloseTo(width, 2);
    const kerned = judge
      .layout("AVATAR")
      .glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0);
    expect(faces.regular.set("AVATAR", false).width).toBeLessThan(kerned / judge.unitsPerEm);
  });

  it("gives digits equal widths in numbers, those of the font's tabular forms", () => {
    const wide = judge.layout("0", ["tnum"]).advanceWidth / judge.unitsPerEm;
    for (const digit of "0123456789") {
      expect(faces.regular.set(digit, true).width).toBeCloseTo(wide, 6);
    }
    expect(faces.regular.set("111,111.1", true).width).toBe(
      faces.regular.set("888,888.8", true).width,
    );
    expect(faces.regular.set("1111", false).width).toBeLessThan(
      faces.regular.set("8888", false).width,
    );
  });

  it("sets words in a cell of numbers as words", () => {
    expect(faces.regular.set("AVATAR", true)).toEqual(faces.regular.set("AVATAR", false));
  });

  it("does not join letters into other signs", () => {
    const parts = ["a-", ">b 2x", "3"].map((text) => faces.regular.set(text, false));
    const glyphs = (setting: { parts: readonly { items: string }[] }): string =>
      setting.parts.map(({ items }) => items.replace(/[^0-9a-f]*-?\d+ |[<>]/g, "")).join("");
    expect(glyphs(faces.regular.set("a->b 2x3", false)).length).toBe(glyphs(join(parts)).length);
  });

  it("says which letters it has", () => {
    expect(faces.regular.has(0x2265)).toBe(true);
    expect(faces.regular.has(0x1f600)).toBe(false);
  });
});
