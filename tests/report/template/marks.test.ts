import { describe, expect, it } from "vitest";
import {
  firstLine,
  hasPrivateUse,
  markLines,
  pieces,
  plain,
  tidied,
  valueMark,
  withoutLines,
} from "../../../src/report/template/marks.js";
import type { Carried } from "../../../src/report/template/marks.js";

const VALUES: readonly Carried[] = [
  { kind: "text", text: "Albers" },
  { kind: "figure", figure: "water", text: "41" },
];

/** Shows marks as numbers in angle brackets. */
function shown(text: string): string {
  return text.replace(
    /\ue002([\ue010-\ue019]+)\ue003/g,
    (_, digits: string) =>
      `<${Array.from(digits, (digit) => digit.charCodeAt(0) - 0xe010).join("")}>`,
  );
}

describe("markLines", () => {
  it.each([
    ["text", "<1>text"],
    ["\n\ntext", "\n\n<3>text"],
    ["## Title {#id}", "## <1>Title {#id}"],
    ["- item", "- <1>item"],
    ["12. item", "12. <1>item"],
    ["| a | b |", "| <1>a | b |"],
    ["| --- | ---: |", "| --- | ---: |"],
    ["::place id", "::<1>place id"],
    [":::", ":::"],
    ["[^note]: text", "[^note]: <1>text"],
    ["[^note]: [^x]", "[^note]: [^x]"],
    ["**bold**", "**<1>bold**"],
    ["[{{ x }}](#id)", "[{{ x }}](#id)"],
    ["{{ x }} is", "{{ x }} <1>is"],
    ["{{ x }}", "{{ x }}"],
    ["{% if x %}", "{% if x %}"],
    ["{% comment %}\na\n{% endcomment %}b", "{% comment %}\na\n{% endcomment %}<3>b"],
    ["&amp; so", "&amp; so"],
    ["<https://example.org>", "<https://example.org>"],
  ])("marks %j", (source, marked) => {
    expect(shown(markLines(source))).toBe(marked);
  });

  it("numbers lines beyond ten", () => {
    expect(shown(markLines(`${"\n".repeat(41)}text`))).toBe(`${"\n".repeat(41)}<42>text`);
  });
});

describe("pieces", () => {
  it("takes a text apart into texts, values and lines", () => {
    const text = `a${valueMark(0)}b${markLines("c")}${valueMark(1)}`;
    expect(pieces(text, VALUES)).toEqual([
      { kind: "text", text: "a" },
      VALUES[0],
      { kind: "text", text: "b" },
      { kind: "line", line: 1 },
      { kind: "text", text: "c" },
      VALUES[1],
    ]);
    expect(plain(text, VALUES)).toBe("aAlbersbc41");
    expect(firstLine(text)).toBe(1);
    expect(withoutLines(text)).toBe(`a${valueMark(0)}bc${valueMark(1)}`);
  });

  it("finds nothing in an empty text", () => {
    expect(pieces("", VALUES)).toEqual([]);
    expect(firstLine(valueMark(1))).toBeUndefined();
  });

  it("leaves out a mark without value", () => {
    expect(pieces(valueMark(9), VALUES)).toEqual([]);
  });
});

describe("tidied", () => {
  it("puts everything on one line and drops what has no form", () => {
    expect(tidied("a\r\n b\u2028c\td")).toBe("a b c d");
    expect(tidied("a\ue000\u0007\ud83db\u{f0000}")).toBe("ab");
    expect(tidied("1\u202f284\u00a0L")).toBe("1\u202f284\u00a0L");
  });
});

describe("hasPrivateUse", () => {
  it("tells private-use letters from others", () => {
    expect(hasPrivateUse("a\uf8ff")).toBe(true);
    expect(hasPrivateUse("aé漢🙂")).toBe(false);
  });
});
