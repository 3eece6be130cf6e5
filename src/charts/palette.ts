/**
 * Colours and fills of all pictures. No meaning hangs on a colour alone: every fill differs from its
 * neighbours by lightness or pattern as well, so that a grey print can be read.
 */

import type { Pattern } from "./pattern.js";

/** Letters, zero lines, marks of measurement. */
export const INK = "#1e2733";

/** Letters that stand back: axis labels, intervals, notes. */
export const SOFT = "#5b6675";

/** Lines of the grid. */
export const GRID = "#d9dde3";

/** The sheet. */
export const WHITE = "#ffffff";

/** Lighter of the two greys for bands. */
export const PALE = "#e4e9ef";

/** Darker of the two greys for bands. */
export const BAND = "#cdd5df";

/** The two routes: dye with steam and wash, pigment with heat. */
export type Route = "dye" | "pigment";

/** The routes in reading order. */
export const ROUTES: readonly Route[] = ["dye", "pigment"];

/** How an area is filled. */
export interface Fill {
  /** Ground. */
  readonly colour: string;
  /** Lines or dots on the ground. */
  readonly pattern: Pattern;
  /** Colour of the lines or dots. */
  readonly line: string;
  /** Colour of letters on it. */
  readonly letters: string;
}

const fill = (
  colour: string,
  pattern: Pattern = "plain",
  line: string = WHITE,
  letters: string = INK,
): Fill => ({ colour, pattern, line, letters });

/** One fill for each route, through all pictures. */
export const ROUTE_FILLS: Readonly<Record<Route, Fill>> = {
  dye: fill("#f2c647", "rising", "#7a5a00"),
  pigment: fill("#2a3f5e", "plain", WHITE, WHITE),
};

// Dark, light and middling grounds take turns, and none has the same pattern twice: so each can be
// told from all others in grey print too. The colours of the two routes are not among them: a step is
// not to be taken for a route.
const SERIES: readonly Fill[] = [
  fill("#4c7361", "plain", WHITE, WHITE),
  fill("#acd5c1", "rising", "#4c7361"),
  fill("#e38766"),
  fill(BAND, "dots", SOFT),
  fill(SOFT, "falling", "#aab3bf", WHITE),
  fill("#a288bc", "level"),
  fill(PALE, "upright", SOFT),
  fill("#4c7361", "dots", WHITE, WHITE),
  fill("#acd5c1"),
  fill("#e38766", "rising", "#7d3218"),
  fill(SOFT, "upright", "#aab3bf", WHITE),
  fill("#a288bc", "crossed"),
  fill("#4c7361", "level", WHITE, WHITE),
  fill(BAND, "falling", SOFT),
];

/** What is left over once the named parts have been taken out. */
export const REST_FILL: Fill = fill(WHITE, "dots", SOFT);

/**
 * Gives the fill of one part among several.
 *
 * @param index - place of the part in reading order, from 0
 * @returns its fill; after fourteen they start again
 */
export function seriesFill(index: number): Fill {
  return SERIES[index % SERIES.length] ?? REST_FILL;
}
