import * as Plot from "@observablehq/plot";
import type { DotAxis } from "./dot-axis.js";
import { GRID, SOFT } from "./palette.js";
import { type Frame, plotted } from "./plot-frame.js";

/**
 * Draws grid and numbers of an axis that dots are placed along, as many numbers as there is room for.
 *
 * @param frame - where the plot lies
 * @param axis - the axis
 * @param apart - least room of a number [px]
 * @returns the plot; its `x` places values of the scale
 */
export function dotPlot(frame: Frame, axis: DotAxis, apart: number): ReturnType<typeof plotted> {
  const most = Math.max(2, Math.floor((frame.right - frame.left) / apart));
  const every = Math.ceil(axis.ticks.length / most);
  const ticks = axis.ticks.filter((_, index) => index % every === 0);
  const scale = { domain: axis.domain, type: axis.isLog ? ("log" as const) : ("linear" as const) };
  return plotted(frame, scale, undefined, [
    Plot.gridX(ticks, { stroke: GRID, strokeOpacity: 1, strokeWidth: 0.75 }),
    Plot.axisX(ticks, {
      tickSize: 0,
      tickPadding: 6,
      label: null,
      fill: SOFT,
      tickFormat: axis.print,
    }),
  ]);
}

/**
 * A length to a tenth, for paths.
 *
 * @param value - the length
 * @returns the length rounded
 */
export function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
