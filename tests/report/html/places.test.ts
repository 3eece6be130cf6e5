import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { findPlaces, textOf } from "../../../src/report/html/places.js";
import { cell, number, page, text } from "./sample-page.js";

const heading = (id: string, words = id): Block => ({
  kind: "heading",
  level: 2,
  text: words,
  id,
});

describe("findPlaces", () => {
  it("names every block once, in letters that an address may hold", () => {
    const blocks = [heading("a"), heading("a"), heading('b c"<é'), heading("page-text")];
    const { anchors, byId } = findPlaces(page(blocks));
    const names = blocks.map((block) => anchors.get(block) ?? "");
    expect(names).toEqual(["a", "a-2", "b_c_", "page-text-2"]);
    expect(byId.get("a")).toBe("a");
  });

  it("reaches into boxes, and numbers notes and pictures through the whole report", () => {
    const note = (id: string): Block => ({ kind: "notes", notes: [{ id, runs: [] }] });
    const picture: Block = { kind: "figure", id: "f", title: "", description: "" };
    const box: Block = { kind: "box", title: "", tone: "plain", blocks: [picture, note("y")] };
    const places = findPlaces(page([note("x"), box, note("x")]));
    expect(places.notes.get("x")).toEqual({ number: 1, anchor: "note-x", back: "ref-x" });
    expect(places.notes.get("y")?.number).toBe(2);
    expect(places.pictures.get(picture)).toBe("picture-1");
  });

  it("finds where each figure stands, in the order of the text", () => {
    const { shown } = findPlaces(
      page([
        heading("water", "Where the water goes"),
        {
          kind: "paragraph",
          runs: [
            text("A first sentence that is left out here. It fell by "),
            number("w", "41 L"),
            text(", which is a good deal more than last year."),
          ],
        },
        {
          kind: "table",
          id: "t1",
          caption: "Table 1. Water",
          head: [cell("Step"), cell(number("n", "2 lots"))],
          rows: [[cell("washing"), cell(number("w", "41"))]],
        },
        { kind: "list", ordered: false, items: [[number("w", "41 L")], [number("w", "41 L")]] },
      ]),
    );
    expect(shown).toEqual(
      new Map<string, unknown>([
        [
          "w",
          {
            anchor: "fig-w",
            mentions: [
              {
                part: "Where the water goes",
                anchor: "water",
                spot: "… out here. It fell by 41 L, which is a good deal …",
              },
              { part: "Table 1. Water", anchor: "t1", spot: "washing · 2 lots" },
              { part: "Where the water goes", anchor: "water", spot: "41 L" },
            ],
          },
        ],
        [
          "n",
          { anchor: "fig-n", mentions: [{ part: "Table 1. Water", anchor: "t1", spot: "Step" }] },
        ],
      ]),
    );
  });
});

describe("textOf", () => {
  it("leaves out the marks of notes", () => {
    expect(textOf([text("a"), { kind: "note-ref", note: "x" }, number("w", "41")])).toBe("a41");
  });
});
