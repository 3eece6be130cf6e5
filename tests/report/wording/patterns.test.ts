import { describe, expect, it } from "vitest";
import { LANGUAGES } from "../../../src/report/wording/language.js";
import { patternsOf, WORDS, wholeWords } from "../../../src/report/wording/patterns.js";

describe("wholeWords", () => {
  const first = (wording: string, text: string): string | undefined =>
    wholeWords([wording], "de").exec(text)?.[0];

  it("reads the signs of the language files", () => {
    expect(first("netto null~", "netto-nullziel")).toBe("netto-nullziel");
    expect(first("grün", "gruen")).toBe("gruen");
    expect(first("# duschen", "1.200 duschen")).toBe("1.200 duschen");
    expect(first("genug…autos", "genug strom fur 2.5 autos")).toBe("genug strom fur 2.5 autos");
    expect(first("genug…autos", "genug. viele autos")).toBeUndefined();
    expect(first("oko", "okonom")).toBeUndefined();
  });
});

describe("the words of each language", () => {
  it.each(LANGUAGES)("%s has a pattern for every kind of ban it names", (language) => {
    const { bans } = patternsOf(language);
    expect(bans.map(([id]) => id)).toEqual(Object.keys(WORDS[language].bans));
    // The kinds that the seeds of every language name.
    expect(Object.keys(WORDS[language].bans)).toEqual(
      expect.arrayContaining(["vague", "sustainable", "climate-neutral", "zero", "equivalent"]),
    );
  });
});
