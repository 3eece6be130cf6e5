/**
 * What a picture may consist of. Everything that writes pictures out (HTML, PDF) has to know these
 * elements and attributes, and no others.
 */

import type { Drawing, DrawingNode } from "./drawing.js";

const PAINT = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-linecap",
  "stroke-linejoin",
  "stroke-miterlimit",
  "stroke-dasharray",
  "paint-order",
];
const LETTERS = ["font-family", "font-size", "font-weight", "font-variant", "text-anchor"];
const PLACED = ["transform", "clip-path"];

/** Elements of a picture, each with the attributes it may have. */
export const ELEMENTS: Readonly<Record<string, ReadonlySet<string>>> = {
  g: new Set([...PLACED, ...PAINT, ...LETTERS]),
  path: new Set([...PLACED, ...PAINT, "d"]),
  rect: new Set([...PLACED, ...PAINT, "x", "y", "width", "height"]),
  line: new Set([...PLACED, ...PAINT, "x1", "y1", "x2", "y2"]),
  circle: new Set([...PLACED, ...PAINT, "cx", "cy", "r"]),
  text: new Set([...PLACED, ...PAINT, ...LETTERS, "x", "y"]),
  tspan: new Set([...PAINT, ...LETTERS, "x", "y", "dx", "dy"]),
  defs: new Set(),
  clipPath: new Set(["id"]),
};

const NUMBER = /^-?\d+(\.\d+)?$/;
const COLOUR = /^(none|#[0-9a-f]{6})$/;

const VALUES: Readonly<Record<string, RegExp>> = {
  fill: COLOUR,
  stroke: COLOUR,
  id: /^[a-z][a-z0-9-]*$/,
  "clip-path": /^url\(#[a-z][a-z0-9-]*\)$/,
  "stroke-linecap": /^(butt|round|square)$/,
  "stroke-linejoin": /^(miter|round|bevel)$/,
  "stroke-dasharray": /^\d+(\.\d+)?([ ,]\d+(\.\d+)?)*$/,
  "paint-order": /^stroke$/,
  "font-family": /^[A-Za-z, -]+$/,
  "font-weight": /^(400|600)$/,
  "font-variant": /^(normal|tabular-nums)$/,
  "text-anchor": /^(start|middle|end)$/,
  transform: /^((translate|rotate)\(-?[\d.]+(,-?[\d.]+)*\) ?)+$/,
  d: /^[MLHVCSQTAZmlhvcsqtaz\d\s,.-]*$/,
};

/**
 * Finds what a picture must not hold.
 *
 * @param drawing - the picture
 * @returns one sentence for each fault; none when the picture keeps the rules
 */
export function drawingFaults(drawing: Drawing): readonly string[] {
  const faults: string[] = [];
  const visit = (node: DrawingNode, parent: string): void => {
    if (typeof node === "string") {
      if (parent !== "text" && parent !== "tspan") faults.push(`"${node}" stands outside a text`);
      return;
    }
    const names = Object.hasOwn(ELEMENTS, node.tag) ? ELEMENTS[node.tag] : undefined;
    if (names === undefined) faults.push(`<${node.tag}> is not known`);
    for (const [name, value] of Object.entries(node.attributes)) {
      if (names?.has(name) !== true) faults.push(`<${node.tag}> may not have ${name}="${value}"`);
      else if (!(VALUES[name] ?? NUMBER).test(value))
        faults.push(`${name}="${value}" is not plain`);
    }
    for (const child of node.children) visit(child, node.tag);
  };
  if (!(drawing.width > 0 && drawing.height > 0)) faults.push("the view box has no extent");
  for (const child of drawing.children) visit(child, "");
  return faults;
}
