import { describe, expect, it } from "vitest";
import type { Block, Run } from "../../../src/report/document.js";
import { figureOf, runsHtml } from "../../../src/report/html/runs.js";
import { pageOf, read } from "./made.js";
import { number, text } from "./sample-page.js";

function html(...runs: readonly Run[]): string {
  const blocks: readonly Block[] = [
    { kind: "heading", level: 2, text: "A", id: "a b" },
    { kind: "paragraph", runs },
    { kind: "notes", notes: [{ id: "n", runs: [] }] },
  ];
  return runsHtml(runs, pageOf(blocks)).html;
}

describe("runsHtml", () => {
  it("writes styles", () => {
    expect(html(text("<"), text("b", "bold"), text("i", "italic"), text("c", "code"))).toBe(
      "&lt;<strong>b</strong><em>i</em><code>c</code>",
    );
  });

  it("follows links to safe addresses and to places of the page alone", () => {
    const link = (href: string): string => html({ kind: "link", text: "x", href });
    expect(link("https://example.org/?a=1&b=2")).toBe(
      '<a href="https://example.org/?a=1&amp;b=2">x</a>',
    );
    expect(link("#a b")).toBe('<a href="#a_b">x</a>');
    expect(link("#n")).toBe('<a href="#note-n">x</a>');
    for (const href of ["http://example.org", "javascript:alert(1)", "#gone", "data:,x", "//x.org"])
      expect(link(href)).toBe("x");
  });

  it("leads from a number to its trace and says it when pointed at", () => {
    const link = read({ html: html(number("water.difference", "41 L")) }).querySelector("a");
    expect(link?.className).toBe("fig");
    expect(link?.getAttribute("href")).toBe("#fig-water.difference");
    expect(link?.getAttribute("title")).toBe(
      "\u221241\u00a0L/m²; 95 % interval \u221248 to \u221235; median of the draws",
    );
    expect(link?.textContent).toBe("41 L");
  });

  it("marks the first reference to a note as the way back", () => {
    const marks = read({
      html: html({ kind: "note-ref", note: "n" }, { kind: "note-ref", note: "n" }),
    }).querySelectorAll("sup a");
    expect([...marks].map((mark) => [mark.id, mark.textContent])).toEqual([
      ["ref-n", "1"],
      ["", "1"],
    ]);
    expect(html({ kind: "note-ref", note: "gone" })).toBe("<sup>[gone]</sup>");
  });
});

describe("figureOf", () => {
  it("refuses a figure that the report does not hold", () => {
    expect(() => figureOf("gone", pageOf([]))).toThrow('the figure "gone"');
    expect(() => figureOf("constructor", pageOf([]))).toThrow('the figure "constructor"');
  });
});
