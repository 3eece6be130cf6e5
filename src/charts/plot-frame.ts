/**
 * The plot within a picture: draws it with the library and reads it back as plain elements, with the
 * positions of values on its scales.
 */

import * as Plot from "@observablehq/plot";
import type { Ticks } from "./axis-ticks.js";
import { canvas } from "./canvas.js";
import type { DrawingElement } from "./drawing.js";
import { LETTER_SIZE, words } from "./nodes.js";
import { normalise } from "./normalise.js";
import { formatNumber } from "./number-format.js";
import { GRID, INK, SOFT } from "./palette.js";
import { cutText, type TextMeasure } from "./text-width.js";

/** Where a plot lies on its sheet. */
export interface Frame {
  /** Left edge. */
  readonly left: number;
  /** Right edge. */
  readonly right: number;
  /** Upper edge. */
  readonly top: number;
  /** Lower edge. */
  readonly bottom: number;
}

/** Room below a plot for the numbers of its axis. */
export const TICK_ROOM = 20;

/** A plot drawn. */
export interface Plotted {
  /** All of it. */
  readonly node: DrawingElement;
  /** Position of a value across. */
  readonly x: (value: number) => number;
  /** Position of a value downwards. */
  readonly y: (value: number) => number;
}

/**
 * Draws a plot. Its axes are marks like others; none is added by itself.
 *
 * @param frame - where it lies
 * @param x - scale across
 * @param y - scale downwards; positions on the sheet when absent
 * @param marks - what is drawn, in order
 * @returns the plot and its scales
 */
export function plotted(
  frame: Frame,
  x: Plot.ScaleOptions,
  y: Plot.ScaleOptions | undefined,
  marks: Plot.Markish[],
): Plotted {
  const svg = Plot.plot({
    document: canvas,
    className: "plot",
    width: frame.right,
    height: frame.bottom + TICK_ROOM,
    marginLeft: frame.left,
    marginRight: 0,
    marginTop: frame.top,
    marginBottom: TICK_ROOM,
    x: { axis: null, ...x },
    y: { axis: null, ...(y ?? { type: "identity" }) },
    marks,
  });
  const scale = (name: "x" | "y") => {
    const found = svg.scale(name);
    return (value: number) => Number(found?.apply(value) ?? value);
  };
  return { node: normalise(svg), x: scale("x"), y: scale("y") };
}

/**
 * Makes the grid and the numbers of a value axis that runs across.
 *
 * @param ticks - values with a line and a number
 * @returns marks, to be drawn first
 */
export function acrossAxis(ticks: Ticks): Plot.Markish[] {
  return [
    Plot.gridX(ticks.values, { stroke: GRID, strokeOpacity: 1, strokeWidth: 0.75 }),
    Plot.axisX(ticks.values, {
      tickSize: 0,
      tickPadding: 6,
      label: null,
      fill: SOFT,
      tickFormat: (value: number) => formatNumber(value, ticks.digits),
    }),
  ];
}

/**
 * Makes the grid and the numbers of a value axis that runs upwards.
 *
 * @param ticks - values with a line and a number
 * @returns marks, to be drawn first
 */
export function upwardAxis(ticks: Ticks): Plot.Markish[] {
  return [
    Plot.gridY(ticks.values, { stroke: GRID, strokeOpacity: 1, strokeWidth: 0.75 }),
    Plot.axisY(ticks.values, {
      tickSize: 0,
      tickPadding: 6,
      label: null,
      fill: SOFT,
      tickFormat: (value: number) => formatNumber(value, ticks.digits),
    }),
  ];
}

/**
 * Finds how many numbers an axis across can take without crowding.
 *
 * @param frame - where the plot lies
 * @returns a count, 2 at least
 */
export function tickCount(frame: Frame): number {
  return Math.max(2, Math.min(7, Math.floor((frame.right - frame.left) / 68)));
}

/** The line at which bars start. */
export const ZERO_LINE = { stroke: INK };

/** The name of an axis laid out. */
export interface AxisName {
  /** Its lines. */
  readonly nodes: readonly DrawingElement[];
  /** Height it takes. */
  readonly height: number;
}

/**
 * Sets the name of an axis below its numbers, flush with its right end.
 *
 * @param text - quantity and unit, and what the marks stand for
 * @param frame - where the plot lies
 * @param measure - measures text
 * @returns lines and the height they take
 */
export function acrossName(text: string, frame: Frame, measure: TextMeasure): AxisName {
  const { lines } = cutText(text, frame.right, 3, (line) => measure(line, LETTER_SIZE));
  const top = frame.bottom + TICK_ROOM;
  const nodes = lines.map((line, index) =>
    words(frame.right, top + 8 + index * 13, line, { anchor: "end", fill: SOFT }),
  );
  return { nodes, height: lines.length * 13 + 4 };
}
