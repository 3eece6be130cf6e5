import { roundAxis } from "./axis-ticks.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH } from "./nodes.js";
import { BAND, fill, INK, PALE, ROUTE_FILLS, type Route, SOFT } from "./palette.js";
import { patterned } from "./pattern.js";
import { acrossAxis, acrossName, plotted, TICK_ROOM, tickCount } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** How long lots take on a route. */
export interface TimeRow {
  /** What the row is. */
  readonly name: string;
  /** Route. */
  readonly route: Route;
  /** Hours on machines, median. */
  readonly process: number;
  /** Hours waiting for machines, median. */
  readonly queue: number;
  /** Hours for batches and in store, median; not drawn when 0. */
  readonly given: number;
  /** 5, 25, 50, 75 and 95 % quantiles of all together. [h] */
  readonly total: readonly number[];
}

/** How long lots take. */
export interface TimeBoxesData {
  /** Routes from top to bottom. */
  readonly rows: readonly TimeRow[];
}

const PITCH = 58;
const WAITING = fill(BAND, "crossed", SOFT);
const STORED = fill(PALE, "plain", SOFT);

/**
 * Draws for each route the hours on machines, waiting and in store as a bar, and below it the quantiles of all
 * together as a box with whiskers.
 *
 * @param data - routes
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function timeBoxes(
  data: TimeBoxesData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  for (const { name, process, queue, given, total } of data.rows)
    for (const value of [process, queue, given, ...total])
      drawable(`picture of times, ${name}`, value);
  const key = legend(
    [
      fillItem("on machines, dye", ROUTE_FILLS.dye),
      fillItem("on machines, pigment", ROUTE_FILLS.pigment),
      fillItem("waiting for machines", WAITING),
      ...(data.rows.some(({ given }) => given > 0) ? [fillItem("batch and store", STORED)] : []),
      BOX_ITEM,
    ],
    0,
    width,
    measure,
  );
  const column = labelColumn(
    data.rows.map(({ name, route }) => ({ name, route })),
    measure,
    labelRoom(width),
  );
  const frame = {
    left: column.width + 6,
    right: width - 16,
    top: key.height + 2,
    bottom: key.height + 4 + data.rows.length * PITCH,
  };
  const most = Math.max(
    ...data.rows.flatMap(({ total, process, queue, given }) => [...total, process + queue + given]),
  );
  const axis = roundAxis(0, most, tickCount(frame));
  const plot = plotted(frame, { domain: axis.domain }, undefined, acrossAxis(axis.ticks));
  const nodes = data.rows.flatMap(({ route, process, queue, given, total }, i) => {
    const top = frame.top + i * PITCH;
    const bar = (from: number, to: number, look: typeof WAITING) => {
      const box = { x: plot.x(from), y: top + 8, width: plot.x(to) - plot.x(from), height: 16 };
      return [element("rect", { ...box, fill: look.colour }), ...patterned(box, look)];
    };
    const at = (place: number): number => plot.x(total[place] ?? 0);
    return [
      ...column.draw(i, top + PITCH / 2),
      ...bar(0, process, ROUTE_FILLS[route]),
      ...bar(process, process + queue, WAITING),
      ...(given > 0 ? bar(process + queue, process + queue + given, STORED) : []),
      ...box(at(0), at(1), at(2), at(3), at(4), top + 40),
    ];
  });
  const name = acrossName("hours of one lot from first machine to last", frame, measure);
  return sheet(
    frame.bottom + TICK_ROOM + name.height,
    [...key.nodes, plot.node, ...nodes, ...name.nodes],
    width,
  );
}

function box(
  low: number,
  first: number,
  middle: number,
  third: number,
  high: number,
  y: number,
): ReturnType<LegendItem["sign"]> {
  const line = (x1: number, x2: number, dy = 0, weight = 1) =>
    element("line", { x1, x2, y1: y - dy, y2: y + dy, stroke: INK, "stroke-width": weight });
  return [
    line(low, high),
    line(low, low, 4),
    line(high, high, 4),
    element("rect", {
      x: first,
      y: y - 6,
      width: Math.max(1, third - first),
      height: 12,
      fill: "#ffffff",
      stroke: INK,
    }),
    line(middle, middle, 6, 2),
  ];
}

const BOX_ITEM: LegendItem = {
  label: "5, 25, 50, 75 and 95\u00a0% of the draws",
  sign: (x, y) => box(x - 7, x - 4, x, x + 3, x + 6, y),
};
