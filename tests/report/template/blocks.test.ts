import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { blocksOf } from "../../../src/report/template/blocks.js";
import { templateMarkdown } from "../../../src/report/template/markdown.js";
import { markLines } from "../../../src/report/template/marks.js";

const PLACED: Block = { kind: "paragraph", runs: [{ kind: "text", text: "made by code" }] };
const NOTES: Block = { kind: "notes", notes: [{ id: "far", runs: [] }] };

function blocks(source: string): readonly Block[] {
  const text = markLines(source);
  const placed = {
    it: [PLACED, PLACED],
    notes: [{ kind: "box", title: "", tone: "plain", blocks: [NOTES] } as const],
    nothing: [],
  };
  return blocksOf(templateMarkdown().parse(text, {}), { name: "t.md", text, carried: [], placed });
}

describe("blocksOf", () => {
  it("places blocks where they are asked for, inside containers too", () => {
    expect(blocks("::place it\n::place nothing")).toEqual([PLACED, PLACED]);
    expect(blocks(":::box A\n::place it\n:::")).toEqual([
      { kind: "box", title: "A", tone: "plain", blocks: [PLACED, PLACED] },
    ]);
  });

  it("gives headings of one text different ids", () => {
    const ids = blocks("# A\n## A\n### A {#b}\n## B\n## 水").map((block) =>
      block.kind === "heading" ? block.id : "",
    );
    expect(ids).toEqual(["a", "a-2", "b", "b-2", "section"]);
  });

  it("gathers notes that follow each other", () => {
    expect(blocks("a[^x][^y]\n\n[^x]: b\n[^y]: c").at(-1)).toEqual({
      kind: "notes",
      notes: [
        { id: "x", runs: [{ kind: "text", text: "b" }] },
        { id: "y", runs: [{ kind: "text", text: "c" }] },
      ],
    });
  });

  it("knows the notes of placed blocks", () => {
    expect(blocks("a[^far]")).toHaveLength(1);
  });

  it.each([
    ["#### a", "t.md, line 1: a heading begins with one to three #"],
    ["a\n===", "t.md, line 1: a heading begins with one to three #"],
    ["a\n\n::page\nb", "t.md, line 4: ::page stands before a heading"],
    ["a\n::page", "t.md, line 2: ::page stands before a heading"],
    ["::page 2\n# a", 't.md, line 1: unknown directive "::page 2"'],
    ["::place __proto__", 'there is no "__proto__" to place; known: it, notes, nothing'],
    ["a\n\n***", 't.md, line 2: "hr" cannot be printed'],
    [":::box A\n:::lead\n:::", "t.md, line 1: the :::box opened here is never closed"],
  ])("refuses %j", (source, complaint) => {
    expect(() => blocks(source)).toThrow(complaint);
  });
});
