import { describe, expect, it } from "vitest";
import type { DrawingElement, DrawingNode } from "../../src/charts/drawing.js";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import { spreadStrip, type SpreadStripData } from "../../src/charts/spread-strip.js";

const DATA: SpreadStripData = {
  unit: "kg/kg",
  quantiles: [0.05, 0.08, 0.1, 0.12, 0.15],
  printed: ["0.05", "0.08", "0.1", "0.12", "0.15"],
  limits: [0, 0.25],
};

function elements(node: DrawingNode): readonly DrawingElement[] {
  return typeof node === "string" ? [] : [node, ...node.children.flatMap(elements)];
}

const all = (data: SpreadStripData): readonly DrawingElement[] =>
  spreadStrip(data).children.flatMap(elements);

describe("spreadStrip", () => {
  it("keeps the rules of pictures", () => {
    expect(drawingFaults(spreadStrip(DATA))).toEqual([]);
  });

  it("puts the median in the middle of a symmetric spread, and the box about it", () => {
    const box = all(DATA).find(({ tag }) => tag === "rect")?.attributes ?? {};
    expect(Number(box["x"]) + Number(box["width"]) / 2).toBeCloseTo(320, 1);
  });

  it("draws a mark alone for a number without doubt", () => {
    const still: SpreadStripData = {
      ...DATA,
      quantiles: [3.6, 3.6, 3.6, 3.6, 3.6],
      limits: [0, 10],
    };
    expect(all(still).filter(({ tag }) => tag === "rect")).toEqual([]);
    expect(drawingFaults(spreadStrip(still))).toEqual([]);
  });

  it("refuses quantiles that fall", () => {
    expect(() => spreadStrip({ ...DATA, quantiles: [0.1, 0.05, 0.1, 0.1, 0.1] })).toThrow(
      "never fall",
    );
    expect(() => spreadStrip({ ...DATA, quantiles: [NaN, 0, 0, 0, 0] })).toThrow("never fall");
  });
});
