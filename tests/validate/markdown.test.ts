import { describe, expect, it } from "vitest";
import MarkdownIt from "markdown-it";
import type { Block } from "../../src/report/document.js";
import { numberCell, textCell } from "../../src/report/figure-desk.js";
import { markdownOf } from "./markdown.js";

const written = (...blocks: readonly Block[]): string =>
  markdownOf({
    title: "Page",
    author: "The hall",
    language: "en",
    date: "2026-11-25",
    footer: "seed 1",
    blocks,
    figures: {},
  });

const html = (...blocks: readonly Block[]): string =>
  new MarkdownIt({ html: true }).render(written(...blocks));

describe("markdownOf", () => {
  it("writes what a reader of Markdown reads as a table, numbers flush right", () => {
    const read = html({
      kind: "table",
      id: "t",
      caption: "Two lots",
      head: [textCell("Lot"), textCell("Water")],
      rows: [
        [textCell("a|b"), numberCell("12")],
        [textCell("c"), numberCell("3")],
      ],
    });
    expect(read).toContain("<p>Two lots</p>");
    expect(read).toContain('<th style="text-align:right">Water</th>');
    expect(read).toContain("<td>a|b</td>");
    expect(read.match(/<tr>/g)).toHaveLength(3);
  });

  it("keeps signs as they are", () => {
    const text = "5 * 3 < 2_x_ [a](b) `c` <b>";
    const read = html({ kind: "paragraph", runs: [{ kind: "text", text }] });
    expect(read).toContain("5 * 3 &lt; 2_x_ [a](b) `c` &lt;b&gt;");
  });

  it("writes headings, lists, boxes and pictures in words", () => {
    const read = html(
      { kind: "heading", level: 1, id: "top", text: "Title" },
      { kind: "heading", level: 3, id: "low", text: "Section" },
      { kind: "list", ordered: true, items: [[{ kind: "text", text: "one", style: "bold" }]] },
      {
        kind: "box",
        tone: "plain",
        title: "Box",
        blocks: [{ kind: "paragraph", runs: [{ kind: "text", text: "inside" }] }],
      },
      { kind: "figure", id: "f", title: "Picture", description: "told in words" },
    );
    expect(read).toContain("<h1>Title</h1>");
    expect(read).toContain("<h3>Section</h3>");
    expect(read).toContain("<li><strong>one</strong></li>");
    expect(read).toContain("<p>inside</p>");
    expect(read).toContain("<strong>Picture.</strong> told in words");
    expect(read.match(/<h1>/g)).toHaveLength(1);
    expect(read).toMatch(/25\sNovember\s2026/);
    expect(read).toContain("seed 1");
  });
});
