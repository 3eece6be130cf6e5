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

// Rims lie below the marks of their element: over them, hundreds of rims would take the colour of what is
// crowded. Elements lie over each other, so that in a crowd some rims are still seen.
const RIMS: Readonly<Record<Route, string>> = { dye: "#8a6700", pigment: "#9fb0c8" };

/** Up to this many marks stand in one element; more are shared out among a few. */
const ALONE = 40;
const MOST = 8;

/**
 * Draws all marks of one route as few elements, so that thousands of lots stay a light picture.
 *
 * @param route - the route
 * @param marks - the marks, drawn over each other in order
 * @returns paths; nothing without marks
 */
export function markers(route: Route, marks: readonly Mark[]): readonly DrawingElement[] {
  if (marks.length === 0) return [];
  const share = Math.ceil(marks.length / Math.min(MOST, Math.ceil(marks.length / ALONE)));
  const count = Math.ceil(marks.length / share);
  return Array.from({ length: count }, (_, index) =>
    element("path", {
      d: marks
        .slice(index * share, (index + 1) * share)
        .map(route === "dye" ? diamond : disc)
        .join(""),
      fill: ROUTE_FILLS[route].colour,
      stroke: RIMS[route],
      "stroke-width": 1,
      "paint-order": "stroke",
    }),
  );
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
