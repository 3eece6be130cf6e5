import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { plainText, printable, xmlText } from "../../../src/report/pdf/printable.js";

const every = (): boolean => true;

describe("printable", () => {
  it("leaves plain letters as they are", () => {
    const tally = new Map<string, number>();
    expect(printable("Lot 7 & <b> \u2265 5 µm", every, tally)).toBe("Lot 7 & <b> \u2265 5 µm");
    expect(tally.size).toBe(0);
  });

  it("shows a square for what has no form and counts it", () => {
    const tally = new Map<string, number>();
    expect(printable("a\u0007b\u0000\u0007", every, tally)).toBe("a\u25a1b\u25a1\u25a1");
    expect([...tally]).toEqual([
      ["U+0007", 2],
      ["U+0000", 1],
    ]);
  });

  it("shows marks that turn the reading order", () => {
    expect(printable("a\u202eb\u200fc\u2066d", every, new Map())).toBe("a\u25a1b\u25a1c\u25a1d");
  });

  it("shows a square where the face has no glyph", () => {
    const tally = new Map<string, number>();
    const latin = (codePoint: number): boolean => codePoint < 0x250;
    expect(printable("Łódź 👩‍🏭", latin, tally)).toBe("Łódź \u25a1\u25a1");
    expect([...tally.keys()]).toEqual(["U+1F469", "U+1F3ED"]);
  });

  it("composes letters, drops what is unseen and keeps to one line", () => {
    expect(printable("cafe\u0301 so\u00adft\r\n\tzero\u200bwidth", every, new Map())).toBe(
      "caf\u00e9 soft zerowidth",
    );
  });

  it("never lets a control character, a lone surrogate or a turning mark through", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const lone = `${text}\ud800`;
        expect(printable(lone, every, new Map())).not.toMatch(
          /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u,
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("xmlText", () => {
  it("escapes what XML reads as markup", () => {
    expect(xmlText(`<A&B> "c" 'd'`)).toBe("&lt;A&amp;B&gt; &quot;c&quot; &apos;d&apos;");
  });

  it("holds no character that XML 1.0 forbids", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        // Extensible Markup Language (XML) 1.0, fifth edition, production 2 (Char).
        expect(xmlText(`${text}\u000b`)).toMatch(
          /^[\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]*$/u,
        );
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("plainText", () => {
  it("keeps letters of every script and replaces control characters", () => {
    expect(plainText("漢字 \u0001 عربية\n2")).toBe("漢字 \ufffd عربية 2");
  });
});
