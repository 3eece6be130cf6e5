import { InputError } from "../problems/input-error.js";
import type { Drawing } from "./drawing.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { BAND, GRID, INK, SOFT, WHITE } from "./palette.js";

/** A spread, as it is drawn. */
export interface SpreadStripData {
  /** Unit of the values. */
  readonly unit: string;
  /** 2.5 %, 25 %, 50 %, 75 % and 97.5 % quantiles, never falling. */
  readonly quantiles: readonly [number, number, number, number, number];
  /** The quantiles as they are to be printed. */
  readonly printed: readonly [string, string, string, string, string];
  /** Physical limits; drawn where they lie near. */
  readonly limits: readonly [number, number];
}

const SIDE = 70;
const MIDDLE = 16;
const HALF = 6;

/**
 * Draws a spread as a line from its 2.5 % to its 97.5 % quantile, a box over its middle half and a mark at
 * its median, to a scale from 0 or the lower limit, whichever is nearer.
 *
 * @param data - quantiles and limits
 * @returns the picture
 * @throws InputError when the quantiles fall or are not finite
 */
export function spreadStrip(data: SpreadStripData): Drawing {
  const [low, lower, median, upper, high] = data.quantiles;
  if (!(low <= lower && lower <= median && median <= upper && upper <= high)) {
    throw new InputError("picture of a spread", median, "expected quantiles that never fall");
  }
  const width = high - low;
  const from = Math.max(data.limits[0], low - 0.25 * width);
  const to = Math.min(data.limits[1], high + 0.25 * width);
  // A number without doubt stands in the middle.
  const x = (value: number): number =>
    to > from && width > 0
      ? SIDE + ((value - from) / (to - from)) * (SHEET_WIDTH - 2 * SIDE)
      : SHEET_WIDTH / 2;
  const box = high > low;
  return sheet(46, [
    element("line", { x1: SIDE, x2: SHEET_WIDTH - SIDE, y1: MIDDLE, y2: MIDDLE, stroke: GRID }),
    ...(box
      ? [
          element("line", { x1: x(low), x2: x(high), y1: MIDDLE, y2: MIDDLE, stroke: INK }),
          element("rect", {
            x: x(lower),
            y: MIDDLE - HALF,
            width: Math.max(1, x(upper) - x(lower)),
            height: 2 * HALF,
            fill: BAND,
            stroke: SOFT,
          }),
        ]
      : []),
    element("line", {
      x1: x(median),
      x2: x(median),
      y1: MIDDLE - HALF - 2,
      y2: MIDDLE + HALF + 2,
      stroke: INK,
      "stroke-width": 2,
    }),
    ...(box
      ? [
          words(x(low) - 4, MIDDLE, data.printed[0], { anchor: "end", fill: SOFT, halo: WHITE }),
          words(x(high) + 4, MIDDLE, data.printed[4], { fill: SOFT, halo: WHITE }),
        ]
      : []),
    words(x(median), 38, `${data.printed[2]} ${data.unit}`, { anchor: "middle", strong: true }),
  ]);
}
