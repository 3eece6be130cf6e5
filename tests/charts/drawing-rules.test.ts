import { describe, expect, it } from "vitest";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import type { Drawing, DrawingNode } from "../../src/charts/drawing.js";

const of = (...children: readonly DrawingNode[]): Drawing => ({ width: 10, height: 10, children });
const rect = (attributes: Record<string, string>): DrawingNode => ({
  tag: "rect",
  attributes,
  children: [],
});

describe("rules of pictures", () => {
  it("let plain elements pass", () => {
    const clip = {
      tag: "clipPath",
      attributes: { id: "part-1" },
      children: [rect({ width: "2" })],
    };
    expect(
      drawingFaults(
        of(
          { tag: "defs", attributes: {}, children: [clip] },
          rect({ x: "-1.5", fill: "#2a3f5e", "clip-path": "url(#part-1)" }),
          { tag: "text", attributes: { transform: "translate(1,2) rotate(-90)" }, children: ["a"] },
        ),
      ),
    ).toEqual([]);
  });

  it.each<[DrawingNode, string]>([
    [{ tag: "style", attributes: {}, children: [] }, "<style> is not known"],
    [{ tag: "constructor", attributes: {}, children: [] }, "<constructor> is not known"],
    [rect({ style: "fill:red" }), '<rect> may not have style="fill:red"'],
    [rect({ class: "a" }), '<rect> may not have class="a"'],
    [rect({ fill: "red" }), 'fill="red" is not plain'],
    [rect({ fill: "rgba(0,0,0,.5)" }), 'fill="rgba(0,0,0,.5)" is not plain'],
    [rect({ x: "1e3" }), 'x="1e3" is not plain'],
    [rect({ x: "1em" }), 'x="1em" is not plain'],
    [rect({ "clip-path": "url(http://a)" }), 'clip-path="url(http://a)" is not plain'],
    ["stray", '"stray" stands outside a text'],
  ])("name %j", (node, fault) => {
    expect(drawingFaults(of(node))).toEqual([fault]);
  });

  it("ask for an extent", () => {
    expect(drawingFaults({ width: 10, height: 0, children: [] })).toEqual([
      "the view box has no extent",
    ]);
  });
});
