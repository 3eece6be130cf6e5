/**
 * Marks of the two routes where there is no area to fill: a round one for pigment, one that stands on
 * its corner for dye. Shape and lightness tell them apart in grey print.
 */

import type { DrawingElement } from "./drawing.js";
import { element } from "./nodes.js";
import { type Route, ROUTE_FILLS } from "./palette.js";

/** Where a mark stands and how large it is. */
export interface Mark {
  /** Its middle. */
  readonly x: number;
  /** Its middle. */
  readonly y: number;
  /** Half its height. */
  readonly radius: number;
}

// A rim is drawn over all marks of the element, so it must not hide what lies below it: thousands of
// rims in white would leave nothing of them.
const RIMS: Readonly<Record<Route, string>> = { dye: "#6b4f00", pigment: "#9fb0c8" };

/**
 * Draws all marks of one route as one element, so that thousands of lots stay a light picture.
 *
 * @param route - the route
 * @param marks - the marks, drawn over each other in order
 * @returns one path; nothing without marks
 */
export function markers(route: Route, marks: readonly Mark[]): readonly DrawingElement[] {
  if (marks.length === 0) return [];
  const d = marks.map(route === "dye" ? diamond : disc).join("");
  return [
    element("path", {
      d,
      fill: ROUTE_FILLS[route].colour,
      stroke: RIMS[route],
      "stroke-width": 0.5,
    }),
  ];
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

function disc({ x, y, radius }: Mark): string {
  const r = tenth(radius);
  return `M${tenth(x - r)},${tenth(y)}a${r},${r},0,1,0,${tenth(2 * r)},0a${r},${r},0,1,0,${-tenth(2 * r)},0z`;
}

// As high as needed to look as large as the disc.
function diamond({ x, y, radius }: Mark): string {
  const r = tenth(radius * 1.25);
  return `M${tenth(x)},${tenth(y - r)}l${r},${r},${-r},${r},${-r},${-r}z`;
}
