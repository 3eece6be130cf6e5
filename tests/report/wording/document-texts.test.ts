import { describe, expect, it } from "vitest";
import type { Block, ReportDocument } from "../../../src/report/document.js";
import { documentTexts } from "../../../src/report/wording/document-texts.js";

const text = (words: string): { kind: "text"; text: string } => ({ kind: "text", text: words });

const BLOCKS: readonly Block[] = [
  { kind: "heading", level: 1, text: "a heading", id: "h" },
  { kind: "paragraph", runs: [text("a "), { kind: "note-ref", note: "1" }, text("paragraph")] },
  { kind: "list", ordered: false, items: [[text("an item")]] },
  {
    kind: "table",
    id: "t",
    caption: "a caption",
    head: [{ runs: [text("a head")] }],
    rows: [[{ runs: [{ kind: "figure-ref", figure: "f", text: "a figure" }] }]],
  },
  {
    kind: "table",
    id: "sources",
    caption: "sources",
    head: [],
    rows: [[{ runs: [text("title of others")] }]],
  },
  { kind: "figure", id: "f", title: "a title", description: "a description", missing: "why" },
  {
    kind: "strip",
    words: "a strip",
    shares: { measured: 0, allocated: 0, modelled: 0, default: 1 },
  },
  {
    kind: "box",
    title: "a box",
    tone: "plain",
    blocks: [{ kind: "notes", notes: [{ id: "1", runs: [text("a note")] }] }],
  },
];

describe("documentTexts", () => {
  it("holds every text a reader meets, and no title of a source", () => {
    const document: ReportDocument = {
      ...{ title: "the title", author: "the house", language: "en", date: "2026-11-25" },
      ...{ footer: "the foot", blocks: BLOCKS, figures: {} },
    };
    expect(documentTexts(document)).toEqual([
      ...["the title", "the house", "the foot", "a heading", "a paragraph", "an item"],
      ...["a caption", "a head", "a figure", "sources", "a title", "a description", "why"],
      ...["a strip", "a box", "a note"],
    ]);
  });
});
