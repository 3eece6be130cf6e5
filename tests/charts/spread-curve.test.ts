import { describe, expect, it } from "vitest";
import type { DrawingElement, DrawingNode } from "../../src/charts/drawing.js";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import { spreadCurve, type SpreadCurveData } from "../../src/charts/spread-curve.js";

// A triangle from 0 to 4 with its peak at 2: 60 units of the sheet at both sides leave 130 for each unit.
const DATA: SpreadCurveData = {
  unit: "kg/kg",
  curve: [
    [0, 0],
    [2, 0.5],
    [4, 0],
  ],
  other: [],
  value: 2,
  interval: [1, 3],
  printed: ["1", "2", "3"],
};

function elements(node: DrawingNode): readonly DrawingElement[] {
  return typeof node === "string" ? [] : [node, ...node.children.flatMap(elements)];
}

const all = (data: SpreadCurveData): readonly DrawingElement[] =>
  spreadCurve(data).children.flatMap(elements);
const paths = (data: SpreadCurveData): readonly string[] =>
  all(data).flatMap(({ tag, attributes }) => (tag === "path" ? [attributes["d"] ?? ""] : []));
const texts = (data: SpreadCurveData): readonly DrawingNode[] =>
  all(data).flatMap(({ tag, children }) => (tag === "text" ? children : []));

describe("spreadCurve", () => {
  it("keeps the rules of pictures", () => {
    expect(drawingFaults(spreadCurve({ ...DATA, other: DATA.curve }))).toEqual([]);
  });

  it("fills the interval and cuts the curve at half height at its ends", () => {
    // From 24 at the peak to 74 at the base; half way up is 49.
    expect(paths(DATA)).toEqual(["M190,74L190,49L320,24L450,49L450,74Z", "M60,74L320,24L580,74"]);
  });

  it("prints both ends and the value with its unit", () => {
    expect(texts(DATA)).toEqual(["2 kg/kg", "1", "3"]);
  });

  it("sets another spread beside it as a broken line, on the same scale", () => {
    const other: SpreadCurveData["other"] = [
      [1, 0],
      [2, 1],
      [3, 0],
    ];
    const broken = all({ ...DATA, other }).filter(
      ({ attributes }) => attributes["stroke-dasharray"] !== undefined && attributes["d"] !== "",
    );
    expect(broken.map(({ attributes }) => attributes["d"])).toEqual(["M190,74L320,24L450,74"]);
  });

  it("draws a line alone for a number without doubt", () => {
    const still: SpreadCurveData = { ...DATA, curve: [], interval: [2, 2] };
    expect(paths(still)).toEqual([]);
    expect(texts(still)).toEqual(["2 kg/kg"]);
    expect(drawingFaults(spreadCurve(still))).toEqual([]);
  });

  it("refuses what has no order", () => {
    expect(() => spreadCurve({ ...DATA, interval: [3, 1] })).toThrow("interval in order");
    expect(() => spreadCurve({ ...DATA, value: NaN })).toThrow("picture of a spread");
    const falling: SpreadCurveData["curve"] = [
      [2, 0.1],
      [1, 0.1],
    ];
    expect(() => spreadCurve({ ...DATA, curve: falling })).toThrow("values rise");
    expect(() => spreadCurve({ ...DATA, curve: [[0, NaN]] })).toThrow("values rise");
  });
});
