import { describe, expect, it } from "vitest";
import { ORIGINS } from "../../../src/report/compose/origin-list.js";
import { originOf, placesOf, withOrigins } from "../../../src/report/compose/origins.js";
import type { Block } from "../../../src/report/document.js";

const text = (words: string): Block => ({
  kind: "paragraph",
  runs: [{ kind: "text", text: words }],
});
const chapter = (id: string): Block => ({ kind: "heading", level: 2, id, text: `On ${id}` });
const table = (id: string, cell: string): Block => ({
  kind: "table",
  id,
  caption: `Some ${id}, per m²`,
  head: [],
  rows: [[{ runs: [{ kind: "text", text: cell }] }]],
});

describe("places with numbers", () => {
  it("are chapters whose text has one and tables whose cells have one, in boxes too, each once", () => {
    const box: Block = {
      kind: "box",
      title: "B",
      tone: "plain",
      blocks: [table("claims", "3 of 4")],
    };
    const places = placesOf([
      chapter("water"),
      text("It is 5 L."),
      text("And 6 L."),
      chapter("method"),
      text("No number."),
      table("water-steps", "4.9"),
      table("boundary-table", "counted"),
      box,
    ]);
    expect(places.map(({ id }) => id)).toEqual(["water", "water-steps", "claims"]);
  });

  it("do not count a number that opens by itself", () => {
    const opens: Block = {
      kind: "paragraph",
      runs: [{ kind: "figure-ref", figure: "water.dye", text: "4.9" }],
    };
    expect(placesOf([chapter("water"), opens])).toEqual([]);
  });
});

describe("the table of origins", () => {
  it("leads to each place, named by the start of its caption, and tells the command", () => {
    const empty = table("origins", "");
    const [, , filled] = withOrigins([table("water-steps", "4.9"), table("cod-steps", "9"), empty]);
    expect(filled).toMatchObject({
      rows: [
        [
          {
            runs: [
              { kind: "link", text: "Some water-steps", href: "#water-steps" },
              { kind: "text", text: "; " },
              { kind: "link", text: "Some cod-steps", href: "#cod-steps" },
            ],
          },
          { runs: [{ kind: "text", text: originOf("water-steps")?.from }] },
          {
            runs: [{ kind: "text", text: "millrace explain INDICATOR --terms 100", style: "code" }],
          },
        ],
      ],
    });
  });

  it("has one origin for a place: none hides behind another", () => {
    const ids = ["answer", "indicators", "water-steps", "by-client", "meter-gas-table", "factors"];
    for (const id of ids) expect(ORIGINS.filter(({ at }) => at.test(id))).toHaveLength(1);
  });
});
