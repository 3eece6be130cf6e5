import * as Plot from "@observablehq/plot";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { type Band, bandsOf, crossesZero } from "./map-bands.js";
import { element, LINE_HEIGHT, plate, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { fill, type Fill, INK, SOFT, WHITE } from "./palette.js";
import { filled } from "./pattern.js";
import {
  acrossAxis,
  acrossName,
  type Frame,
  type Plotted,
  plotted,
  TICK_ROOM,
  tickCount,
  upwardAxis,
} from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** A value with a name beside an axis. */
export interface AxisMark {
  /** Name. */
  readonly label: string;
  /** Value. */
  readonly value: number;
}

/** One side of a map. */
export interface MapSide {
  /** Quantity and unit, as `liquor of the wash, L/kg`. */
  readonly name: string;
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** Value of today. */
  readonly today: number;
  /** Values that have a name, drawn where the side runs upwards. */
  readonly marks?: readonly AxisMark[];
}

/** A share saved over two settings. */
export interface TwoWayMapData {
  /** What is saved, as `final energy`. */
  readonly quantity: string;
  /** Side that runs across. */
  readonly across: MapSide;
  /** Side that runs upwards. */
  readonly up: MapSide;
  /** Shares saved at even steps from end to end of both sides, lowest row first; null where none is formed. [%] */
  readonly rows: readonly (readonly (number | null)[])[];
  /** Share saved today. [%] */
  readonly today: number;
}

/** Height of the plot. */
const HEIGHT = 260;

/** Where no share is formed. */
const EMPTY: Fill = fill(WHITE, "crossed", SOFT);

/**
 * Draws the share saved over two settings as bands of one hue, the darker the more is saved, with a heavy line
 * where nothing is saved and a ring at today's values.
 *
 * @param data - both sides and the shares
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function twoWayMap(
  data: TwoWayMapData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const known = data.rows.flat().flatMap((value) => (value === null ? [] : [value]));
  for (const value of [...known, data.today]) {
    drawable(`picture of two settings, ${data.quantity}`, value);
  }
  const bands = bandsOf(known);
  const hasGaps = known.length < data.rows.flat().length;
  const key = legend(
    [
      ...bands.map(({ label, tone }) => fillItem(label, tone)),
      ...(hasGaps ? [fillItem("no share is formed", EMPTY)] : []),
      ...(crossesZero(known) ? [ZERO_ITEM] : []),
      TODAY_ITEM,
    ],
    0,
    width,
    measure,
  );
  const title = cutText(data.up.name, width, 2, (text) => measure(text, SMALL_SIZE));
  const marks = data.up.marks ?? [];
  const markRoom = Math.max(0, ...marks.map(({ label }) => measure(label, SMALL_SIZE) + 12));
  const top = key.height + title.lines.length * LINE_HEIGHT + 8;
  const ticks = axisTicks(data.up.low, data.up.high, 5);
  const numberRoom = Math.max(
    ...ticks.values.map((value) => measure(formatNumber(value, ticks.digits), SMALL_SIZE)),
  );
  const frame: Frame = {
    left: Math.ceil(numberRoom) + 14,
    right: width - Math.max(8, Math.ceil(markRoom)),
    top,
    bottom: top + HEIGHT,
  };
  const plot = plotted(
    frame,
    { domain: [data.across.low, data.across.high] },
    { domain: [data.up.low, data.up.high] },
    [
      ...upwardAxis(ticks),
      ...acrossAxis(axisTicks(data.across.low, data.across.high, tickCount(frame))),
      ...bandMarks(data, bands),
      ...(crossesZero(known) ? [zeroMark(data)] : []),
    ],
  );
  const name = acrossName(data.across.name, frame, measure);
  const nodes = [
    ...key.nodes,
    ...title.lines.map((line, i) =>
      words(0, key.height + 4 + i * LINE_HEIGHT, line, { size: SMALL_SIZE, fill: SOFT }),
    ),
    plot.node,
    ...gaps(data, plot),
    ...markNodes(marks, frame, plot),
    ...todayNodes(data, frame, plot, measure),
    ...name.nodes,
  ];
  return sheet(frame.bottom + TICK_ROOM + name.height, nodes, width);
}

// Each band covers what is above its edge, so that the next lies on it.
function bandMarks(data: TwoWayMapData, bands: readonly Band[]): Plot.Markish[] {
  const { across, up } = data;
  return bands.map(({ from, tone }) =>
    from === -Infinity
      ? Plot.rect([0], {
          x1: across.low,
          x2: across.high,
          y1: up.low,
          y2: up.high,
          fill: tone.colour,
        })
      : Plot.contour(flat(data), { ...grid(data), thresholds: [from], fill: tone.colour }),
  );
}

function zeroMark(data: TwoWayMapData): Plot.Markish {
  return Plot.contour(flat(data), {
    ...grid(data),
    thresholds: [0],
    fill: "none",
    stroke: INK,
    strokeWidth: 2,
  });
}

// Cells without a share go on with that beside them, so that no line is drawn around them; they are covered.
function flat({ rows }: TwoWayMapData): readonly number[] {
  return rows.flatMap((row) => {
    let last = row.find((value) => value !== null) ?? 0;
    return row.map((value) => (last = value ?? last));
  });
}

// A share stands for a cell around its point. Cells at the ends reach half a step beyond the frame, where bands
// are cut off: what lies there is closed by the library along its own edge.
function grid({ rows, across, up }: TwoWayMapData): Plot.ContourOptions {
  const [columns, lines] = [rows[0]?.length ?? 0, rows.length];
  const [overX, overY] = [halfStep(across, columns), halfStep(up, lines)];
  return {
    width: columns,
    height: lines,
    x1: across.low - overX,
    x2: across.high + overX,
    y1: up.low - overY,
    y2: up.high + overY,
    value: Plot.identity,
    clip: true,
  };
}

function halfStep({ low, high }: MapSide, points: number): number {
  return (high - low) / Math.max(1, points - 1) / 2;
}

function gaps(data: TwoWayMapData, plot: Plotted): readonly DrawingNode[] {
  const { rows, across, up } = data;
  const edges = (side: MapSide, place: number, points: number): readonly [number, number] => {
    const half = halfStep(side, points);
    const middle = side.low + 2 * half * place;
    return [Math.max(side.low, middle - half), Math.min(side.high, middle + half)];
  };
  return rows.flatMap((row, j) =>
    row.flatMap((value, i) => {
      if (value !== null) return [];
      const [left, right] = edges(across, i, row.length).map(plot.x);
      const [bottom, top] = edges(up, j, rows.length).map(plot.y);
      const box = { x: left ?? 0, y: top ?? 0 };
      return filled({ ...box, width: (right ?? 0) - box.x, height: (bottom ?? 0) - box.y }, EMPTY);
    }),
  );
}

// Names stand beside the right edge, each at its value or as near as the one above lets it.
function markNodes(
  marks: readonly AxisMark[],
  frame: Frame,
  plot: Plotted,
): readonly DrawingNode[] {
  let free = frame.top;
  return [...marks]
    .sort((a, b) => b.value - a.value)
    .flatMap(({ label, value }) => {
      const y = plot.y(value);
      const at = Math.max(y, free);
      free = at + LINE_HEIGHT;
      const [from, to] = [frame.right, frame.right + 6];
      return [
        element("line", { x1: from, y1: y, x2: to, y2: at, stroke: SOFT }),
        words(to + 3, at, label, { size: SMALL_SIZE, fill: SOFT }),
      ];
    });
}

function todayNodes(
  { across, up, today }: TwoWayMapData,
  frame: Frame,
  plot: Plotted,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const [x, y] = [plot.x(across.today), plot.y(up.today)];
  const label = `today ${formatNumber(today, 0)} %`;
  const length = measure(label, SMALL_SIZE);
  const isLeft = x + 12 + length > frame.right;
  const start = isLeft ? x - 12 - length : x + 12;
  return [
    ...ring(x, y),
    plate(start, y, length, WHITE),
    words(start, y, label, { size: SMALL_SIZE }),
  ];
}

function ring(x: number, y: number): readonly DrawingNode[] {
  return [
    element("circle", { cx: x, cy: y, r: 6.5, fill: WHITE }),
    element("circle", { cx: x, cy: y, r: 4, fill: WHITE, stroke: INK, "stroke-width": 2 }),
  ];
}

const TODAY_ITEM: LegendItem = { label: "today", sign: ring };

const ZERO_ITEM: LegendItem = {
  label: "nothing saved",
  sign: (x, y) => [
    element("line", { x1: x - 8, x2: x + 8, y1: y, y2: y, stroke: INK, "stroke-width": 2 }),
  ],
};
