/**
 * A value scale that runs upwards and is drawn again for each row of small panels.
 */

import { dotAxis } from "./dot-axis.js";
import type { DrawingNode } from "./drawing.js";
import { element, SMALL_SIZE, words } from "./nodes.js";
import { GRID, SOFT } from "./palette.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A scale of a given height. */
export interface UpwardScale {
  /** Room for the numbers left of the panels. */
  readonly room: number;
  /** How far above the lower edge a value stands; beyond 0 to the height where the scale does not hold it. */
  readonly above: (value: number) => number;
  /** Draws lines from left to right and the numbers before them, for a row that ends at a lower edge. */
  readonly draw: (left: number, right: number, bottom: number) => readonly DrawingNode[];
  /** Said behind the name of the scale. */
  readonly note: string;
}

/** Least height of a number with its line. */
const APART = 16;

/**
 * Makes the scale, from 0 where values lie within two powers of ten, logarithmic beyond that.
 *
 * @param held - values that it holds
 * @param height - its height
 * @param measure - measures text
 * @returns the scale
 */
export function upwardScale(
  held: readonly number[],
  height: number,
  measure: TextMeasure = interWidth,
): UpwardScale {
  const axis = dotAxis(held);
  const bend = axis.isLog ? Math.log : (value: number): number => value;
  const [low, high] = [bend(axis.domain[0]), bend(axis.domain[1])];
  const above = (value: number): number =>
    ((bend(axis.place(value)) - low) / (high - low)) * height;
  const every = Math.ceil(axis.ticks.length / Math.floor(height / APART));
  const ticks = axis.ticks
    .filter((_, index) => index % every === 0)
    .map((tick) => ({ up: above(tick), text: axis.print(tick) }));
  return {
    room: Math.ceil(Math.max(0, ...ticks.map(({ text }) => measure(text, SMALL_SIZE)))) + 6,
    above,
    draw: (left, right, bottom) =>
      ticks.flatMap(({ up, text }) => [
        element("line", {
          x1: left,
          x2: right,
          y1: bottom - up,
          y2: bottom - up,
          stroke: GRID,
          "stroke-width": 0.75,
        }),
        words(left - 5, bottom - up, text, { anchor: "end", size: SMALL_SIZE, fill: SOFT }),
      ]),
    note: axis.note,
  };
}
