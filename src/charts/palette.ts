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
  /** Lines on the ground. */
  readonly pattern: Pattern;
  /** Colour of the lines. */
  readonly line: string;
  /** Colour of letters on it. */
  readonly letters: string;
}

/**
 * Makes a fill.
 *
 * @param colour - ground
 * @param pattern - lines on it; none when absent
 * @param line - colour of the lines
 * @param letters - colour of letters on it
 * @returns the fill
 */
export function fill(
  colour: string,
  pattern: Pattern = "plain",
  line: string = WHITE,
  letters: string = INK,
): Fill {
  return { colour, pattern, line, letters };
}

/** One fill for each route, through all pictures. */
export const ROUTE_FILLS: Readonly<Record<Route, Fill>> = {
  dye: fill("#f2c647", "falling", "#7a5a00"),
  pigment: fill("#2a3f5e", "plain", WHITE, WHITE),
};

/** What is left over once the named parts have been taken out. */
export const REST_FILL: Fill = fill(BAND, "grid", "#8d99a8");
