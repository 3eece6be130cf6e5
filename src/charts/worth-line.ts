import * as Plot from "@observablehq/plot";
import { roundAxis } from "./axis-ticks.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { BAND, fill, INK, PALE, SOFT, WHITE } from "./palette.js";
import { acrossAxis, acrossName, plotted, TICK_ROOM, tickCount, upwardAxis } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A line of equal worth. */
export interface EqualWorth {
  /** What it stands for, such as `NPV 0`. */
  readonly name: string;
  /** Points by rising place across; those without a height part the line. */
  readonly points: readonly { readonly x: number; readonly y: number | undefined }[];
}

/** Lines of equal worth over two drivers. */
export interface WorthLineData {
  /** Driver across, with unit. */
  readonly across: string;
  /** Driver upwards, with unit. */
  readonly up: string;
  /** Lines; the first is the one at which nothing is won or lost. */
  readonly lines: readonly EqualWorth[];
  /** Where one stands today, with the box of its doubt. */
  readonly today: {
    readonly x: readonly [number, number, number];
    readonly y: readonly [number, number, number];
  };
}

const HEIGHT = 240;
const DOUBT = fill(PALE, "plain", SOFT);
const DASHES = [undefined, "5 4", "1.5 3"] as const;

/**
 * Draws lines of equal worth, with today's point and the box of its doubt. Below the first line, which is the heavy
 * one, the thing pays.
 *
 * @param data - lines and point
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function worthLine(
  data: WorthLineData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const { lines, today } = data;
  for (const value of [...today.x, ...today.y]) drawable("picture of equal worth", value);
  const key = legend(
    [
      ...lines.map(({ name }, i): LegendItem => ({ label: name, sign: lineSign(i) })),
      POINT_ITEM,
      fillItem("10 to 90\u00a0% of both", DOUBT),
    ],
    0,
    width,
    measure,
  );
  const known = lines.map(({ points }) =>
    points.flatMap(({ x, y }) =>
      y === undefined ? [] : [{ x, y: drawable("line of equal worth", y) }],
    ),
  );
  const xs = [...known.flat().map(({ x }) => x), ...today.x];
  const ys = [...known.flat().map(({ y }) => y), ...today.y];
  const top = key.height + 22;
  const frame = { left: 54, right: width - 18, top, bottom: top + HEIGHT };
  const across = roundAxis(Math.min(...xs), Math.max(...xs), tickCount(frame));
  const up = roundAxis(Math.min(0, ...ys), Math.max(...ys), 6);
  const [xLow, x, xHigh] = today.x;
  const [yLow, y, yHigh] = today.y;
  const plot = plotted(
    frame,
    { domain: across.domain },
    { domain: up.domain, range: [frame.bottom, frame.top] },
    [
      ...acrossAxis(across.ticks),
      ...upwardAxis(up.ticks),
      Plot.rect([0], {
        x1: () => xLow,
        x2: () => xHigh,
        y1: () => yLow,
        y2: () => yHigh,
        fill: DOUBT.colour,
        stroke: BAND,
      }),
      ...known.map((points, i) =>
        Plot.lineY(points, {
          x: "x",
          y: "y",
          stroke: INK,
          strokeWidth: i === 0 ? 2 : 1,
          ...(DASHES[i % 3] === undefined ? {} : { strokeDasharray: DASHES[i % 3] ?? "" }),
        }),
      ),
    ],
  );
  const name = acrossName(data.across, frame, measure);
  return sheet(
    frame.bottom + TICK_ROOM + name.height,
    [
      ...key.nodes,
      words(0, top - 12, data.up, { fill: SOFT }),
      plot.node,
      ...point(plot.x(x), plot.y(y)),
      ...name.nodes,
    ],
    width,
  );
}

const point = (x: number, y: number): ReturnType<LegendItem["sign"]> => [
  element("circle", { cx: x, cy: y, r: 5, fill: WHITE, stroke: INK, "stroke-width": 2 }),
];

const POINT_ITEM: LegendItem = { label: "values in the file", sign: point };

function lineSign(i: number): LegendItem["sign"] {
  return (x, y) => [
    element("line", {
      x1: x - 8,
      x2: x + 8,
      y1: y,
      y2: y,
      stroke: INK,
      "stroke-width": i === 0 ? 2 : 1,
      "stroke-dasharray": DASHES[i % 3],
    }),
  ];
}
