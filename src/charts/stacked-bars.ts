/**
 * Rows of stacked bars with their total and its interval: the common part of the pictures by step,
 * by carrier and by scope.
 */

import * as Plot from "@observablehq/plot";
import { InputError } from "../problems/input-error.js";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, LETTER_SIZE, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { type Fill, INK, SOFT, WHITE } from "./palette.js";
import { patterned } from "./pattern.js";
import {
  acrossAxis,
  acrossName,
  type Frame,
  type Plotted,
  plotted,
  ZERO_LINE,
} from "./plot-frame.js";
import { drawable, printedInterval, type Ranged, whiskerOf } from "./ranged.js";
import { labelColumn, type RowLabel } from "./row-labels.js";
import type { TextMeasure } from "./text-width.js";

/** One part of a bar. */
export interface Segment {
  /** Name, as in the legend. */
  readonly name: string;
  /** Quantity. */
  readonly value: number;
  /** How it is filled. */
  readonly fill: Fill;
}

/** One bar. */
export interface StackRow {
  /** What stands to its left. */
  readonly label: RowLabel;
  /** Its parts in reading order. */
  readonly segments: readonly Segment[];
  /** Their sum with its interval. */
  readonly total: Ranged;
}

/** Rows of stacked bars. */
export interface StackedBars {
  /** Which picture it is, for complaints. */
  readonly where: string;
  /** Bars from top to bottom. */
  readonly rows: readonly StackRow[];
  /** Height of a bar. */
  readonly barHeight: number;
  /** Entries of the legend in reading order. */
  readonly legend: readonly Pick<Segment, "name" | "fill">[];
  /** Name of the value axis, with unit. */
  readonly axis: string;
  /** Decimals of values. */
  readonly digits: number;
}

/** The parts of a bar may miss its total by rounding, not by more. [-] */
const SLACK = 0.01;

interface Placed extends Segment {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Draws rows of stacked bars.
 *
 * @param bars - what is drawn
 * @param measure - measures text
 * @returns the picture
 * @throws {@link InputError} when a number is not finite, or the parts of a bar miss its total by
 *   more than one percent
 */
export function stackedBars(bars: StackedBars, measure: TextMeasure): Drawing {
  const { rows, barHeight, digits } = bars;
  const placed = rows.flatMap((row, index) => stack(bars.where, row, index));
  const column = labelColumn(
    rows.map(({ label }) => label),
    measure,
  );
  const key = legend(
    bars.legend.map((item) => fillItem(item.name, item.fill)),
    0,
    SHEET_WIDTH,
    measure,
  );
  const totals = rows.map(
    ({ total }) =>
      [formatNumber(total.value, digits), printedInterval(total, digits) ?? ""] as const,
  );
  const labelRoom = Math.max(
    ...totals.flatMap(([value, interval]) => [
      measure(value, LETTER_SIZE, "semibold"),
      measure(interval, SMALL_SIZE),
    ]),
  );
  const top = key.height + 4;
  const pitch = barHeight + 12;
  const frame: Frame = {
    left: column.width,
    right: SHEET_WIDTH - Math.ceil(labelRoom) - 10,
    top,
    bottom: top + rows.length * pitch + 2,
  };
  const reach = [0, ...placed.map(({ to }) => to), ...rows.flatMap(({ total }) => ends(total))];
  const low = Math.min(...reach);
  const high = Math.max(...reach) > low ? Math.max(...reach) : low + 1;
  const middle = (row: number): number => top + 7 + row * pitch + barHeight / 2;
  const plot = plotted(frame, { domain: [low, high] }, undefined, [
    ...acrossAxis(axisTicks(low, high, 6)),
    Plot.rect(placed, {
      x1: "from",
      x2: "to",
      y1: ({ row }: Placed) => middle(row) - barHeight / 2,
      y2: ({ row }: Placed) => middle(row) + barHeight / 2,
      fill: ({ fill }: Placed) => fill.colour,
    }),
  ]);
  const name = acrossName(bars.axis, frame, measure);
  const zero = plot.x(0);
  return sheet(frame.bottom + 20 + name.height, [
    ...key.nodes,
    plot.node,
    ...placed.flatMap((part) => dressed(part, plot, middle(part.row), barHeight, digits, measure)),
    ...gaps(placed, plot, middle, barHeight),
    element("line", { x1: zero, x2: zero, y1: frame.top, y2: frame.bottom, ...ZERO_LINE }),
    ...rows.flatMap(({ total }, row) => [
      ...column.draw(row, middle(row)),
      ...totalMark(total, plot, middle(row)),
      ...totalWords(plot.x(Math.max(0, ...ends(total))) + 8, middle(row), totals[row] ?? ["", ""]),
    ]),
    ...name.nodes,
  ]);
}

function ends(total: Ranged): readonly number[] {
  const whisker = whiskerOf(total);
  return whisker === undefined ? [total.value] : [total.value, whisker.low, whisker.high];
}

// Parts above zero grow to the right, parts below zero to the left.
function stack(where: string, row: StackRow, index: number): readonly Placed[] {
  let [above, below, sum] = [0, 0, 0];
  const placed = row.segments.map((segment): Placed => {
    const value = drawable(`${where}, ${segment.name}`, segment.value);
    const from = value < 0 ? below : above;
    const to = from + value;
    if (value < 0) below = to;
    else above = to;
    sum += value;
    return { ...segment, row: index, from, to };
  });
  const total = drawable(`${where}, total`, row.total.value);
  if (!(Math.abs(sum - total) <= SLACK * Math.max(above, -below, Math.abs(total)))) {
    throw new InputError(
      `${where}, total of ${row.label.name}`,
      total,
      `expected the sum of its parts, ${sum}; share the total out among them`,
    );
  }
  return placed.filter(({ value }) => value !== 0);
}

function dressed(
  part: Placed,
  plot: Plotted,
  y: number,
  height: number,
  digits: number,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const x = Math.min(plot.x(part.from), plot.x(part.to));
  const width = Math.abs(plot.x(part.to) - plot.x(part.from));
  const value = formatNumber(part.value, digits);
  const room = width - 8;
  const look = { anchor: "middle", fill: part.fill.letters, halo: part.fill.colour } as const;
  const nodes: DrawingNode[] = [...patterned({ x, y: y - height / 2, width, height }, part.fill)];
  if (measure(value, LETTER_SIZE) > room) return nodes;
  const both = height >= 30 && measure(part.name, SMALL_SIZE) <= room;
  if (both) nodes.push(words(x + width / 2, y - 7, part.name, { ...look, size: SMALL_SIZE }));
  nodes.push(words(x + width / 2, both ? y + 7 : y, value, look));
  return nodes;
}

// White lines between the parts; where parts are thinner than a line one of them has to do.
function gaps(
  placed: readonly Placed[],
  plot: Plotted,
  middle: (row: number) => number,
  height: number,
): readonly DrawingNode[] {
  let path = "";
  let last = { row: -1, x: 0 };
  for (const { row, from } of placed) {
    const x = plot.x(from);
    if (from === 0 || (last.row === row && Math.abs(x - last.x) < 3)) continue;
    last = { row, x };
    const y = middle(row) - height / 2;
    path += `M${Math.round(x * 100) / 100},${y}v${height}`;
  }
  return path === ""
    ? []
    : [element("path", { d: path, fill: "none", stroke: WHITE, "stroke-width": 1.5 })];
}

// A rim of white keeps the whisker clear of what is filled.
function totalMark(total: Ranged, plot: Plotted, y: number): readonly DrawingNode[] {
  const whisker = whiskerOf(total);
  if (whisker === undefined) return [];
  const at = (value: number): number => Math.round(plot.x(value) * 100) / 100;
  const [low, high, value] = [at(whisker.low), at(whisker.high), at(total.value)];
  const d = `M${low},${y}H${high}M${low},${y - 4}v8M${high},${y - 4}v8M${value},${y - 6}v12`;
  return [
    element("path", {
      d,
      fill: "none",
      stroke: WHITE,
      "stroke-width": 4,
      "stroke-linecap": "square",
    }),
    element("path", { d, fill: "none", stroke: INK, "stroke-width": 1.25 }),
  ];
}

function totalWords(
  x: number,
  y: number,
  [value, interval]: readonly [string, string],
): readonly DrawingNode[] {
  if (interval === "") return [words(x, y, value, { strong: true })];
  return [
    words(x, y - 7, value, { strong: true }),
    words(x, y + 7, interval, { size: SMALL_SIZE, fill: SOFT }),
  ];
}
