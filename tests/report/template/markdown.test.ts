import { describe, expect, it } from "vitest";
import { OWN, templateMarkdown } from "../../../src/report/template/markdown.js";

function types(source: string): readonly string[] {
  return templateMarkdown()
    .parse(source, {})
    .map(({ type, info, markup }) => (type === OWN.directive ? `${markup}|${info}` : type))
    .filter((type) => !type.endsWith("_close"));
}

describe("templateMarkdown", () => {
  it("reads directives, also right after a paragraph, list or table", () => {
    expect(types("a\n::place  b c")).toEqual(["paragraph_open", "inline", "::|place  b c"]);
    expect(types(":::box A\na\n:::")).toEqual([":::|box A", "paragraph_open", "inline", ":::|"]);
    expect(types("| a |\n| - |\n:::").at(-1)).toBe(":::|");
    expect(types("- a\n::page")).toEqual([
      ...["bullet_list_open", "list_item_open", "paragraph_open", "inline", "::|page"],
    ]);
  });

  it("leaves colons inside a line alone", () => {
    expect(types("a ::place b")).toEqual(["paragraph_open", "inline"]);
  });

  it("reads notes and references to them", () => {
    const [paragraph, text, , note, inline] = templateMarkdown().parse(
      "a[^n] b\n\n[^n]: c *d*",
      {},
    );
    expect(paragraph?.type).toBe("paragraph_open");
    expect(text?.children?.map(({ type, info }) => [type, info])).toEqual([
      ["text", ""],
      [OWN.noteRef, "n"],
      ["text", ""],
    ]);
    expect([note?.type, note?.info]).toEqual([OWN.note, "n"]);
    expect(inline?.children?.some(({ type }) => type === "em_open")).toBe(true);
  });

  it("makes no links of bare addresses and no markup of HTML", () => {
    const [, text] = templateMarkdown().parse("https://example.org <b>x</b>", {});
    expect(text?.children?.every(({ type }) => type === "text")).toBe(true);
  });
});
