import type { Drawing, DrawingNode } from "../../../src/report/document.js";

/** Makes an element of a picture. */
export function node(
  tag: string,
  attributes: Readonly<Record<string, string | number>> = {},
  ...children: readonly DrawingNode[]
): DrawingNode {
  const written = Object.entries(attributes).map(([name, value]) => [name, String(value)] as const);
  return { tag, attributes: Object.fromEntries(written), children };
}

const FLOWS = [
  ["washing", 46.2, 3.1],
  ["steaming", 7.4, 0],
  ["pad and dry", 2.1, 2.6],
  ["screen and rotor cleaning", 5.8, 6.3],
] as const;

/** Bars for two routes, with patterns, a halo, rotated letters, a clipped line and dashes. */
export const bars: Drawing = {
  width: 640,
  height: 250,
  children: [
    node("title", {}, "Water by step"),
    node(
      "defs",
      {},
      node(
        "pattern",
        {
          id: "strokes",
          patternUnits: "userSpaceOnUse",
          width: 6,
          height: 6,
          patternTransform: "rotate(45)",
        },
        node("rect", { width: 6, height: 6, fill: "#f2c647" }),
        node("rect", { width: 1.6, height: 6, fill: "#1e2733" }),
      ),
      node("clipPath", { id: "plot" }, node("rect", { x: 170, y: 20, width: 420, height: 190 })),
    ),
    node(
      "g",
      { stroke: "#d9dde3", "stroke-width": 0.75 },
      ...[0, 10, 20, 30, 40, 50].map((tick) =>
        node("line", { x1: x(tick), x2: x(tick), y1: 20, y2: 210 }),
      ),
    ),
    node(
      "g",
      { "font-size": 11, "text-anchor": "middle", fill: "#5b6675", "font-variant": "tabular-nums" },
      ...[0, 10, 20, 30, 40, 50].map((tick) =>
        node("text", { x: x(tick), y: 210, dy: "1.35em" }, String(tick)),
      ),
      node("text", { x: 590, y: 244, "text-anchor": "end" }, "litres per kilogram of cloth"),
    ),
    ...FLOWS.map(([name, dye, pigment], index) =>
      node(
        "g",
        { transform: `translate(0,${24 + index * 46})`, "aria-label": name, "font-size": 11 },
        node("rect", { x: 170, y: 4, width: x(dye) - 170, height: 16, fill: "url(#strokes)" }),
        node("rect", { x: 170, y: 21, width: x(pigment) - 170, height: 16, fill: "#2a3f5e" }),
        node(
          "text",
          { x: 162, y: 20, "text-anchor": "end", "dominant-baseline": "middle", fill: "#1e2733" },
          name,
        ),
        label(x(dye) + 5, 12, dye),
        label(x(pigment) + 5, 29, pigment),
      ),
    ),
    node("line", { x1: 170, x2: 170, y1: 20, y2: 210, stroke: "#1e2733" }),
    node("path", {
      d: "M120,200 C240,40 380,190 640,30",
      fill: "none",
      stroke: "#e38766",
      "stroke-width": 1.5,
      "stroke-dasharray": "5 3",
      "clip-path": "url(#plot)",
    }),
    node("circle", {
      cx: 430,
      cy: 128,
      r: 4,
      fill: "white",
      stroke: "#e38766",
      "stroke-width": 1.5,
    }),
    node(
      "text",
      { transform: "translate(620,120) rotate(-90)", "font-size": 10, fill: "#5b6675" },
      "trend, ",
      node("tspan", { "font-weight": 600, fill: "#1e2733" }, "indicative"),
    ),
  ],
};

function x(value: number): number {
  return 170 + value * 8;
}

function label(at: number, y: number, value: number): DrawingNode {
  return node(
    "text",
    {
      x: at,
      y,
      dy: "0.32em",
      fill: "#1e2733",
      stroke: "#ffffff",
      "stroke-width": 3,
      "stroke-linejoin": "round",
      "paint-order": "stroke",
    },
    value.toFixed(1),
  );
}
