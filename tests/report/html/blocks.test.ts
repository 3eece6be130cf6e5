import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { blocksHtml } from "../../../src/report/html/blocks.js";
import { pageOf, read } from "./made.js";
import { text } from "./sample-page.js";

const DRAWING = {
  width: 640,
  height: 200,
  children: [{ tag: "text", attributes: { id: "a" }, children: ["<b>"] }],
};

function html(...blocks: readonly Block[]): HTMLElement {
  return read(blocksHtml(blocks, pageOf(blocks)));
}

describe("blocksHtml", () => {
  it("writes headings, paragraphs and lists", () => {
    const made = html(
      { kind: "heading", level: 3, text: "A & B", id: "a", newPage: true },
      { kind: "paragraph", tone: "lead", runs: [text("c")] },
      { kind: "list", ordered: true, items: [[text("d")], [text("e")]] },
    );
    expect(made.innerHTML).toBe(
      '<h3 id="a" class="page">A &amp; B</h3><p class="lead">c</p><ol><li>d</li><li>e</li></ol>',
    );
  });

  it("puts pictures into a box that scrolls, with their caption", () => {
    const figure: Block = {
      kind: "figure",
      id: "f.water",
      title: "Figure 1. Water, L",
      description: "Bars.",
      drawing: DRAWING,
    };
    const made = html(figure, { ...figure, id: "small", drawing: { ...DRAWING, width: 200 } });
    const [first, second] = made.querySelectorAll("figure");
    expect(first?.id).toBe("f.water");
    expect(first?.querySelector("figcaption")?.textContent).toBe("Figure 1. Water, L");
    expect(first?.querySelector(".scroll[tabindex='0'] > svg")?.getAttribute("role")).toBe("img");
    expect(first?.querySelector("svg > text")?.textContent).toBe("<b>");
    expect([first?.className, second?.className]).toEqual(["drawn", "drawn small"]);
    const ids = [...made.querySelectorAll("[id]")].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("puts the picture for a narrow screen beside the other, under names of its own", () => {
    const narrow = { ...DRAWING, width: 360 };
    const made = html({
      kind: "figure",
      id: "f",
      title: "Figure 1",
      description: "Bars.",
      drawing: DRAWING,
      narrow,
    });
    expect(made.querySelector(".scroll.wide > svg")?.getAttribute("viewBox")).toBe("0 0 640 200");
    expect(made.querySelector(".narrow > svg")?.getAttribute("viewBox")).toBe("0 0 360 200");
    const ids = [...made.querySelectorAll("[id]")].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("says why a picture is missing", () => {
    const figure = { kind: "figure", id: "f", title: "Figure 1", description: "Bars." } as const;
    expect(html({ ...figure, missing: "No tariffs." }).querySelector(".missing")?.textContent).toBe(
      "No tariffs.",
    );
  });

  it("names boxes and what stands in them", () => {
    const box = html({
      kind: "box",
      title: "Caution",
      tone: "caution",
      blocks: [{ kind: "paragraph", runs: [text("a")] }],
    }).querySelector(".box.caution[role=group]");
    expect(box?.getAttribute("aria-label")).toBe("Caution");
    expect(box?.textContent).toBe("Cautiona");
  });

  it("leads from notes back to the text, where the text refers to them", () => {
    const made = html(
      { kind: "paragraph", runs: [{ kind: "note-ref", note: "x" }] },
      {
        kind: "notes",
        notes: [
          { id: "x", runs: [text("a")] },
          { id: "y", runs: [] },
        ],
      },
      { kind: "notes", notes: [{ id: "z", runs: [] }] },
    );
    const [x, y] = made.querySelectorAll("li");
    expect(x?.id).toBe("note-x");
    expect(x?.querySelector("a")?.getAttribute("href")).toBe("#ref-x");
    expect(made.querySelector("#ref-x")?.getAttribute("href")).toBe("#note-x");
    expect(y?.querySelector("a")).toBeNull();
    expect([...made.querySelectorAll("ol")].map((list) => list.getAttribute("start"))).toEqual([
      null,
      "3",
    ]);
  });
});
