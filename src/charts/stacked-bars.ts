/**
 * Rows of stacked bars with their total and its interval: the common part of the pictures by step,
 * by carrier and by scope.
 */

import * as Plot from "@observablehq/plot";
import { InputError } from "../problems/input-error.js";
import { axisTicks, ZERO_ONLY } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, LETTER_SIZE, plate, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { type Fill, INK, SOFT, WHITE } from "./palette.js";
import { patterned } from "./pattern.js";
import {
  acrossAxis,
  acrossName,
  type Frame,
  type Plotted,
  plotted,
  tickCount,
  ZERO_LINE,
} from "./plot-frame.js";
import { drawable, printedInterval, type Ranged, whiskerOf } from "./ranged.js";
import { labelColumn, labelRoom, type RowLabel } from "./row-labels.js";
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

/** Room below a bar, where the whisker lies clear of what is written in the bar. */
const BELOW = 18;

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
 * @param width - width of the sheet
 * @returns the picture
 * @throws {@link InputError} when a number is not finite, or the parts of a bar miss its total by
 *   more than one percent
 */
export function stackedBars(
  bars: StackedBars,
  measure: TextMeasure,
  width: number = SHEET_WIDTH,
): Drawing {
  const { rows, barHeight, digits } = bars;
  const placed = rows.flatMap((row, index) => stack(bars.where, row, index));
  const column = labelColumn(
    rows.map(({ label }) => label),
    measure,
    labelRoom(width),
  );
  const key = legend(
    bars.legend.map((item) => fillItem(item.name, item.fill)),
    0,
    width,
    measure,
  );
  const totals = rows.map(
    ({ total }) =>
      [formatNumber(total.value, digits), printedInterval(total, digits) ?? ""] as const,
  );
  const totalRoom = Math.max(
    ...totals.flatMap(([value, interval]) => [
      measure(value, LETTER_SIZE, "semibold"),
      measure(interval, SMALL_SIZE),
    ]),
  );
  const top = key.height + 4;
  const pitch = barHeight + BELOW;
  const frame: Frame = {
    left: column.width,
    right: width - Math.ceil(totalRoom) - 10,
    top,
    bottom: top + rows.length * pitch + 2,
  };
  const reach = [0, ...placed.map(({ to }) => to), ...rows.flatMap(({ total }) => ends(total))];
  const low = Math.min(...reach);
  const isEmpty = reach.every((value) => value === 0);
  const high = isEmpty ? 1 : Math.max(...reach);
  const middle = (row: number): number => top + 5 + row * pitch + barHeight / 2;
  const plot = plotted(frame, { domain: [low, high] }, undefined, [
    ...acrossAxis(isEmpty ? ZERO_ONLY : axisTicks(low, high, tickCount(frame))),
    Plot.rect(placed, {
      x1: "from",
      x2: "to",
      y1: ({ row }: Placed) => middle(row) - barHeight / 2,
      y2: ({ row }: Placed) => middle(row) + barHeight / 2,
      fill: ({ fill }: Placed) => fill.colour,
    }),
  ]);
  const note = rows.some(({ total }) => whiskerOf(total) !== undefined)
    ? "; whisker: 95\u00a0% interval of the total"
    : "";
  const name = acrossName(bars.axis + note, frame, measure);
  const zero = plot.x(0);
  const edgeOf = (row: number): number =>
    Math.max(
      0,
      ...placed.filter((part) => part.row === row).map(({ to }) => to),
      ...ends(rows[row]?.total ?? { value: 0 }),
    );
  const nodes = [
    ...key.nodes,
    plot.node,
    ...placed.flatMap((part) => dressed(part, plot, middle(part.row), barHeight, digits, measure)),
    ...gaps(placed, plot, middle, barHeight),
    element("line", { x1: zero, x2: zero, y1: frame.top, y2: frame.bottom, ...ZERO_LINE }),
    ...rows.flatMap(({ total }, row) => [
      ...column.draw(row, middle(row)),
      ...totalMark(total, plot, middle(row) + barHeight / 2),
      ...totalWords(plot.x(edgeOf(row)) + 8, middle(row), totals[row] ?? ["", ""]),
    ]),
    ...name.nodes,
  ];
  return sheet(frame.bottom + 20 + name.height, nodes, width);
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
  const box = { x, y: y - height / 2, width, height };
  const nodes: DrawingNode[] = [...patterned(box, part.fill)];
  const write = (text: string, at: number, size: number): void => {
    const long = measure(text, size);
    if (part.fill.pattern !== "plain") {
      nodes.push(plate(x + (width - long) / 2, at, long, part.fill.colour));
    }
    nodes.push(words(x + width / 2, at, text, { anchor: "middle", size, fill: part.fill.letters }));
  };
  if (measure(value, LETTER_SIZE) > room) return nodes;
  const both = height >= 30 && measure(part.name, SMALL_SIZE) <= room;
  if (both) write(part.name, y - 7, SMALL_SIZE);
  write(value, both ? y + 7 : y, LETTER_SIZE);
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

// Hangs below the bar, with a longer tick at the total.
function totalMark(total: Ranged, plot: Plotted, bottom: number): readonly DrawingNode[] {
  const whisker = whiskerOf(total);
  if (whisker === undefined) return [];
  const at = (value: number): number => Math.round(plot.x(value) * 100) / 100;
  const [low, high, value] = [at(whisker.low), at(whisker.high), at(total.value)];
  const y = bottom + 6;
  const d = `M${low},${y}H${high}M${low},${y - 3}v6M${high},${y - 3}v6M${value},${bottom}v10`;
  return [element("path", { d, fill: "none", stroke: INK, "stroke-width": 1.25 })];
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
