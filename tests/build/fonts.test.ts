import { readFileSync } from "node:fs";
import type { Font } from "fontkit";
import { create } from "fontkit";
import { beforeAll, describe, expect, it } from "vitest";
import { FACES, makeFonts } from "../../src/build/fonts.js";
import { PAGE_LETTERS, PRINT_LETTERS } from "../../src/build/repertoire.js";

const PACKAGE = new URL("../../node_modules/@expo-google-fonts/inter/", import.meta.url);

const files = new Map<string, Uint8Array>();

function font(name: string): Font {
  return create(Buffer.from(files.get(name) ?? new Uint8Array())) as Font;
}

beforeAll(async () => {
  await makeFonts(
    (path) => readFileSync(new URL(path, PACKAGE)),
    (name, content) => files.set(name, content),
  );
}, 60_000);

describe("makeFonts", () => {
  it("makes each face for page and print, with the licence beside them", () => {
    expect([...files.keys()].sort()).toEqual([
      "LICENSE.txt",
      ...Object.keys(FACES)
        .flatMap((face) => [`inter-${face}.ttf`, `inter-${face}.woff2`])
        .sort(),
    ]);
    expect(new TextDecoder().decode(files.get("LICENSE.txt"))).toContain("SIL Open Font License");
  });

  it("keeps the typeface of a page below 130 kB in base 64", () => {
    const page = [...files].filter(([name]) => name.endsWith(".woff2"));
    const weight = page.reduce((sum, [, { length }]) => sum + 4 * Math.ceil(length / 3), 0);
    expect(weight).toBeLessThan(130_000);
  });

  it.each(Object.keys(FACES))("draws every letter asked for in %s", (face) => {
    const missing = (name: string, letters: string): string =>
      Array.from(letters)
        .filter((one) => !font(name).hasGlyphForCodePoint(one.codePointAt(0) ?? 0))
        .join("");
    expect(missing(`inter-${face}.ttf`, PRINT_LETTERS)).toBe("");
    expect(missing(`inter-${face}.woff2`, PAGE_LETTERS)).toBe("");
  });

  it.each(Object.keys(FACES))("sets digits of %s to one width on demand", (face) => {
    for (const ending of ["ttf", "woff2"]) {
      const one = font(`inter-${face}.${ending}`);
      const width = (text: string): number => one.layout(text, ["tnum"]).advanceWidth;
      expect(new Set(Array.from("0123456789", width)).size).toBe(1);
      expect(one.layout("1").advanceWidth).not.toBe(width("1"));
    }
  });
});
