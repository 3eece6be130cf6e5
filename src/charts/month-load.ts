import * as Plot from "@observablehq/plot";
import { roundAxis } from "./axis-ticks.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { INK, ROUTE_FILLS, ROUTES, SOFT } from "./palette.js";
import { patterned } from "./pattern.js";
import { plotted, upwardAxis } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A month of a machine. */
export interface LoadMonth {
  /** Month as printed. */
  readonly month: string;
  /** Area of lots on dye routes. [m²] */
  readonly dye: number;
  /** Area of lots on pigment routes. [m²] */
  readonly pigment: number;
}

/** What a machine is asked for, month by month. */
export interface MonthLoadData {
  /** Name of the upward axis, such as `m² a month through printer-1`. */
  readonly area: string;
  /** Months in order. */
  readonly months: readonly LoadMonth[];
  /** Area the machine can do in a month. [m²] */
  readonly capacity: number;
}

const HEIGHT = 190;

/**
 * Draws the area that a machine is asked for as bars by route, with a line at what it can do.
 *
 * @param data - months and capacity
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function monthLoad(
  data: MonthLoadData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  drawable("picture of a machine's load, capacity", data.capacity);
  const drawn = ROUTES.filter((route) => data.months.some((month) => month[route] > 0));
  const key = legend(
    [...drawn.map((route) => fillItem(route, ROUTE_FILLS[route])), CAPACITY_ITEM],
    0,
    width,
    measure,
  );
  const sums = data.months.map(({ month, dye, pigment }) =>
    drawable(`picture of a machine's load, ${month}`, dye + pigment),
  );
  const axis = roundAxis(0, Math.max(data.capacity, ...sums), 5);
  const top = key.height + 22;
  const frame = { left: 62, right: width - 8, top, bottom: top + HEIGHT };
  const plot = plotted(
    frame,
    { domain: [0, data.months.length] },
    { domain: axis.domain, range: [frame.bottom, frame.top] },
    [...upwardAxis(axis.ticks), Plot.ruleY([0], { stroke: SOFT })],
  );
  const wide = plot.x(1) - plot.x(0);
  const every = Math.ceil(46 / wide);
  const bars = data.months.flatMap((month, i) => {
    let below = 0;
    return ROUTES.flatMap((route) => {
      const size = month[route];
      const y = plot.y(below + size);
      const box = { x: plot.x(i) + 0.12 * wide, y, width: 0.76 * wide, height: plot.y(below) - y };
      below += size;
      if (!(size > 0)) return [];
      const fill = ROUTE_FILLS[route];
      return [element("rect", { ...box, fill: fill.colour }), ...patterned(box, fill)];
    });
  });
  const line = plot.y(data.capacity);
  return sheet(
    frame.bottom + 24,
    [
      ...key.nodes,
      words(0, top - 12, data.area, { fill: SOFT }),
      plot.node,
      ...bars,
      element("line", {
        x1: frame.left,
        x2: frame.right,
        y1: line,
        y2: line,
        stroke: INK,
        "stroke-width": 2,
        "stroke-dasharray": "6 4",
      }),
      ...data.months.flatMap(({ month }, i) =>
        i % every === 0
          ? [words(plot.x(i + 0.5), frame.bottom + 12, month, { anchor: "middle", fill: SOFT })]
          : [],
      ),
    ],
    width,
  );
}

const CAPACITY_ITEM: LegendItem = {
  label: "what the machine can do",
  sign: (x, y) => [
    element("line", {
      x1: x - 8,
      x2: x + 8,
      y1: y,
      y2: y,
      stroke: INK,
      "stroke-width": 2,
      "stroke-dasharray": "6 4",
    }),
  ],
};
