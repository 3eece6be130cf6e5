import { describe, expect, it } from "vitest";
import { PAGE_LETTERS, PRINT_LETTERS } from "../../src/build/repertoire.js";

describe("repertoire", () => {
  it.each([
    ["Western and northern Europe", "ÄÖÜäöüßÉèêçñ¿¡ÅåØøÆæÐðÞþŒœ"],
    ["eastern Europe", "ąęłńśźżČčĎďĚěŇňŘřŠšŤťŮůŽžŐőŰűāēīūģķļņșțĂă"],
    ["Türkiye and Azerbaijan", "ĞğİıŞşÇçƏə"],
    ["Greek and Cyrillic", "ΑΩαωάώϊΔΣεηκλЁЂЇАЯаяёђїЎўҐґ"],
    ["signs of measures", "≥≤≈±×÷·−→₂₀₉³²°%‰µ½√∞∑∆"],
    ["punctuation and blanks", "–—‘’“”„…•‹›«»\u00a0\u202f\u2009\u2011"],
    ["currencies", "€£$¥₹₺₽₴¢"],
    ["what stands for letters that cannot be set", "□"],
  ])("holds %s", (_, letters) => {
    for (const letter of letters) expect(PAGE_LETTERS).toContain(letter);
  });

  it("offers print more than the page", () => {
    for (const letter of PAGE_LETTERS) expect(PRINT_LETTERS).toContain(letter);
    for (const letter of "ẠỹƠơƯưẞŴẁɏ\u0301") expect(PRINT_LETTERS).toContain(letter);
  });
});
