import * as Plot from "@observablehq/plot";
import { roundAxis } from "./axis-ticks.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { BAND, fill, INK, PALE, SOFT, WHITE } from "./palette.js";
import { acrossAxis, plotted, TICK_ROOM, tickCount, upwardAxis, ZERO_LINE } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** Running sum of discounted money at the end of a year. */
export interface CashPoint {
  /** Number of the year. */
  readonly year: number;
  /** At central values. */
  readonly base: number;
  /** 10 % quantile of the draws. */
  readonly low: number;
  /** 90 % quantile of the draws. */
  readonly high: number;
}

/** Discounted money over the years. */
export interface CashBandData {
  /** Name of the upward axis, with currency and kind of money. */
  readonly money: string;
  /** Years in order, from 0. */
  readonly points: readonly CashPoint[];
  /** Years until the money is back; absent where it never is. */
  readonly payback?: number;
}

const HEIGHT = 76;
const BAND_FILL = fill(PALE, "plain", SOFT);

/**
 * Draws the running sum of discounted money as steps, with the band that holds eight of ten draws, the line at which
 * nothing is won or lost, and a dot where the money is back.
 *
 * @param data - years
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function cashBand(
  data: CashBandData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const { points, payback } = data;
  for (const { base, low, high } of points)
    for (const value of [base, low, high]) drawable("picture of money over years", value);
  const key = legend(
    [
      fillItem("10 to 90\u00a0% of the draws", BAND_FILL),
      BASE_ITEM,
      ...(payback === undefined ? [] : [BACK_ITEM]),
    ],
    0,
    width,
    measure,
  );
  const values = points.flatMap(({ base, low, high }) => [base, low, high, 0]);
  const axis = roundAxis(Math.min(...values), Math.max(...values), 3);
  const top = key.height + 22;
  const frame = { left: 74, right: width - 14, top, bottom: top + HEIGHT };
  const years = points.map(({ year }) => year);
  const last = Math.max(...years);
  const every = Math.ceil((last + 1) / (tickCount(frame) * 2));
  const ticks = { values: years.filter((year) => year % every === 0), digits: 0 };
  const plot = plotted(
    frame,
    { domain: [0, last] },
    { domain: axis.domain, range: [frame.bottom, frame.top] },
    [
      ...acrossAxis(ticks),
      ...upwardAxis(axis.ticks),
      Plot.areaY(points, { x: "year", y1: "low", y2: "high", fill: BAND_FILL.colour }),
      ...(["low", "high"] as const).map((end) =>
        Plot.lineY(points, { x: "year", y: end, stroke: BAND, strokeWidth: 1 }),
      ),
      Plot.lineY(points, {
        x: "year",
        y: "base",
        stroke: INK,
        strokeWidth: 2,
        curve: "step-after",
      }),
    ],
  );
  const zero = plot.y(0);
  return sheet(
    frame.bottom + TICK_ROOM,
    [
      ...key.nodes,
      words(0, top - 12, data.money, { fill: SOFT }),
      plot.node,
      element("line", { x1: frame.left, x2: frame.right, y1: zero, y2: zero, ...ZERO_LINE }),
      ...(payback === undefined
        ? []
        : [
            element("circle", {
              cx: plot.x(payback),
              cy: zero,
              r: 5,
              fill: WHITE,
              stroke: INK,
              "stroke-width": 2,
            }),
          ]),
    ],
    width,
  );
}

const BASE_ITEM: LegendItem = {
  label: "at central values",
  sign: (x, y) => [
    element("line", { x1: x - 8, x2: x + 8, y1: y, y2: y, stroke: INK, "stroke-width": 2 }),
  ],
};

const BACK_ITEM: LegendItem = {
  label: "the money is back",
  sign: (x, y) => [
    element("circle", { cx: x, cy: y, r: 5, fill: WHITE, stroke: INK, "stroke-width": 2 }),
  ],
};
