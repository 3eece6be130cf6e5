import * as Plot from "@observablehq/plot";
import { type RoundAxis, roundAxis } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import {
  element,
  LETTER_SIZE,
  LINE_HEIGHT,
  lineStack,
  sheet,
  SHEET_WIDTH,
  words,
} from "./nodes.js";
import { formatChange } from "./number-format.js";
import { type Fill, SOFT, WHITE } from "./palette.js";
import { END_FILLS } from "./part-fills.js";
import { patterned } from "./pattern.js";
import {
  acrossAxis,
  acrossName,
  type Frame,
  type Plotted,
  plotted,
  TICK_ROOM,
  tickCount,
  ZERO_LINE,
} from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** One end of a factor's range. */
export interface SwingEnd {
  /** The factor's value there, with unit, as printed. */
  readonly label: string;
  /** Change of the saving. [percentage points] */
  readonly change: number;
}

/** What a factor does to the saving. */
export interface Swing {
  /** Name of the factor. */
  readonly factor: string;
  /** At its low value. */
  readonly low: SwingEnd;
  /** At its high value. */
  readonly high: SwingEnd;
}

/** What factors do to a saving. */
export interface SwingBarsData {
  /** The saving that moves, with its value, such as `saving of water withdrawn (41 %)`. */
  readonly saving: string;
  /** Decimals of changes. */
  readonly digits: number;
  /** Factors in any order. */
  readonly factors: readonly Swing[];
  /** Name of the axis, where not a saving in percentage points moves. */
  readonly axis?: string;
  /** What is said to the left and right of zero, where no saving moves. */
  readonly signs?: readonly [string, string];
}

/** Height of a bar; half of it where both bars lie on one side. */
const BAR = 18;

/** Longest line at the end of a bar, as a share of the sheet. [-] */
const LABEL_ROOM = 0.23;

/** Between the end of a bar and what stands there. */
const OFF = 5;

/** Least length of the axis, as a share of what the names leave. [-] */
const SHORTEST = 0.25;

interface Placed {
  readonly row: number;
  readonly end: SwingEnd;
  readonly fill: Fill;
  readonly lines: readonly string[];
  readonly width: number;
  /** Share of the row above it. [-] */
  readonly from: number;
  /** Share of the row that it takes. [-] */
  readonly share: number;
}

/**
 * Draws how far the saving moves when each factor alone goes to its low or its high value, the factor
 * that moves it most on top. Where both ends move it the same way they are drawn below each other.
 *
 * @param data - factors and the changes they bring
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a change is not finite
 */
export function swingBars(
  data: SwingBarsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  for (const { factor, low, high } of data.factors) {
    for (const { change } of [low, high]) drawable(`picture of swings, ${factor}`, change);
  }
  const swings = [...data.factors].sort((a, b) => reachOf(b) - reachOf(a));
  const key = legend(
    [
      fillItem("low value of the factor", END_FILLS.low),
      fillItem("high value of the factor", END_FILLS.high),
    ],
    0,
    width,
    measure,
  );
  const column = labelColumn(
    swings.map(({ factor }) => ({ name: factor })),
    measure,
    { ...labelRoom(width), lines: 5 },
  );
  const longest = LABEL_ROOM * width;
  const placed = swings.flatMap((swing, row) => place(swing, row, data.digits, longest, measure));
  const top = key.height + 20;
  const rows = rowsOf(placed, column.heights, top + 4);
  const reach = placed.map(({ end }) => end.change);
  let [low, high] = [Math.min(0, ...reach), Math.max(0, ...reach)];
  if (low === high) [low, high] = [-1, 1];
  const count = tickCount({
    left: column.width + longest,
    right: width - longest,
    top,
    bottom: top,
  });
  const axis = roundAxis(low, high, count);
  const frame: Frame = {
    ...sides(placed, axis, column.width, width),
    top,
    bottom: top + 8 + rows.reduce((sum, { height }) => sum + height, 0),
  };
  const plot = plotted(frame, { domain: axis.domain }, undefined, [
    ...acrossAxis(axis.ticks),
    Plot.rect(placed, {
      x1: 0,
      x2: ({ end }: Placed) => end.change,
      y1: (bar: Placed) => span(bar, rows).y,
      y2: (bar: Placed) => span(bar, rows).y + span(bar, rows).height,
      fill: ({ fill }: Placed) => fill.colour,
    }),
  ]);
  const axisName = data.axis ?? `change of the ${data.saving}, percentage points`;
  const name = acrossName(axisName, frame, measure);
  const zero = plot.x(0);
  const nodes = [
    ...key.nodes,
    ...signWords(zero, [top - 6, width], measure, data.signs),
    plot.node,
    ...placed.flatMap((bar) => dressed(bar, span(bar, rows), plot)),
    element("line", { x1: zero, x2: zero, y1: top - 12, y2: frame.bottom, ...ZERO_LINE }),
    ...rows.flatMap(({ y }, row) => column.draw(row, y)),
    ...name.nodes,
  ];
  return sheet(frame.bottom + TICK_ROOM + name.height, nodes, width);
}

// What stands at the ends of the bars may reach beyond the axis, so the axis takes what they leave: each end
// asks for a straight line between both edges, and the longest axis is found by halving.
function sides(
  placed: readonly Placed[],
  { domain: [low, high] }: RoundAxis,
  left: number,
  width: number,
): Pick<Frame, "left" | "right"> {
  const whole = width - left - 8;
  const overhang = (length: number, side: -1 | 1): number =>
    Math.max(
      8,
      ...placed
        .filter(({ end }) => sideOf(end) === side)
        .map((bar) => {
          const free = side < 0 ? bar.end.change - low : high - bar.end.change;
          return OFF + bar.width + 3 - (free / (high - low)) * length;
        }),
    );
  let [fits, fails] = [SHORTEST * whole, whole];
  for (let step = 0; step < 20; step++) {
    const length = (fits + fails) / 2;
    if (length + overhang(length, -1) + overhang(length, 1) <= whole) fits = length;
    else fails = length;
  }
  const start = left + Math.ceil(overhang(fits, -1));
  return { left: start, right: Math.floor(start + fits) };
}

function reachOf({ low, high }: Swing): number {
  return Math.max(low.change, high.change, 0) - Math.min(low.change, high.change, 0);
}

function sideOf({ change }: SwingEnd): -1 | 1 {
  return change < 0 ? -1 : 1;
}

function place(
  { low, high }: Swing,
  row: number,
  digits: number,
  room: number,
  measure: TextMeasure,
): readonly Placed[] {
  const sameSide = sideOf(low) === sideOf(high);
  return (
    [
      [low, END_FILLS.low],
      [high, END_FILLS.high],
    ] as const
  ).map(([end, fill], index): Placed => {
    // The change stays with the end of the value.
    const text = `${end.label}:\u00a0${formatChange(end.change, digits)}`;
    const { lines, width } = cutText(text, room, 3, (line) => measure(line, LETTER_SIZE));
    const where = sameSide ? { from: index / 2, share: 0.5 } : { from: 0, share: 1 };
    return { row, end, fill, lines, width, ...where };
  });
}

interface Row {
  /** Its middle. */
  readonly y: number;
  readonly height: number;
}

// A row is as high as its name, and as what stands at the ends of its bars.
function rowsOf(placed: readonly Placed[], names: readonly number[], top: number): readonly Row[] {
  let y = top;
  return names.map((name, row): Row => {
    const ends = placed
      .filter((bar) => bar.row === row)
      .map(({ lines, share }) => (lines.length * LINE_HEIGHT) / share);
    const height = Math.max(BAR + 4, name, ...ends) + 8;
    y += height;
    return { y: y - height / 2, height };
  });
}

function span(bar: Placed, rows: readonly Row[]): { readonly y: number; readonly height: number } {
  const { y, height } = rows[bar.row] ?? { y: 0, height: 0 };
  if (bar.share === 1) return { y: y - BAR / 2, height: BAR };
  const half = (height - 6) / 2;
  const thick = Math.min(half - 2, BAR * 0.6);
  const middle = y + (bar.from === 0 ? -half / 2 : half / 2);
  return { y: middle - thick / 2, height: thick };
}

// Left out where the words would leave the sheet.
function signWords(
  zero: number,
  [y, width]: readonly [number, number],
  measure: TextMeasure,
  [falls, rises]: readonly [string, string] = ["saving falls", "saving rises"],
): readonly DrawingNode[] {
  const hasLeft = zero - 8 - measure(falls, LETTER_SIZE) >= 0;
  const hasRight = zero + 8 + measure(rises, LETTER_SIZE) <= width;
  return [
    ...(hasLeft ? [words(zero - 8, y, falls, { anchor: "end", fill: SOFT })] : []),
    ...(hasRight ? [words(zero + 8, y, rises, { fill: SOFT })] : []),
  ];
}

function dressed(
  { end, fill, lines, width }: Placed,
  { y, height }: { readonly y: number; readonly height: number },
  plot: Plotted,
): readonly DrawingNode[] {
  const [zero, tip] = [plot.x(0), plot.x(end.change)];
  const box = { x: Math.min(zero, tip), y, width: Math.abs(tip - zero), height };
  const isLeft = sideOf(end) < 0;
  const x = isLeft ? tip - OFF : tip + OFF;
  const middle = y + height / 2;
  const tall = lines.length * LINE_HEIGHT;
  // A plain ground, so that no line of the grid runs through the letters.
  const ground = { x: isLeft ? x - width : x, y: middle - tall / 2, width, height: tall };
  return [
    ...patterned(box, fill),
    element("rect", { ...ground, fill: WHITE }),
    ...lineStack(x, middle, lines, isLeft ? { anchor: "end" } : {}),
  ];
}
