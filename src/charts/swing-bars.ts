import * as Plot from "@observablehq/plot";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, LETTER_SIZE, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { formatChange } from "./number-format.js";
import { BAND, type Fill, INK, SOFT, WHITE } from "./palette.js";
import { patterned } from "./pattern.js";
import {
  acrossAxis,
  acrossName,
  type Frame,
  type Plotted,
  plotted,
  TICK_ROOM,
} from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

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
}

const LOW: Fill = { colour: SOFT, pattern: "plain", line: WHITE, letters: WHITE };
const HIGH: Fill = { colour: BAND, pattern: "rising", line: SOFT, letters: INK };
const HALF = 9;
const PITCH = 30;

interface Placed {
  readonly end: SwingEnd;
  readonly fill: Fill;
  readonly top: number;
  readonly bottom: number;
}

/**
 * Draws how far the saving moves when each factor alone goes to its low or its high value, the factor
 * that moves it most on top. Where both ends move it the same way they are drawn below each other.
 *
 * @param data - factors and the changes they bring
 * @param measure - measures text
 * @returns the picture
 * @throws InputError when a change is not finite
 */
export function swingBars(data: SwingBarsData, measure: TextMeasure = interWidth): Drawing {
  const swings = [...data.factors].sort((a, b) => reachOf(b) - reachOf(a));
  for (const { factor, low, high } of swings) {
    for (const { change } of [low, high]) drawable(`picture of swings, ${factor}`, change);
  }
  const key = legend(
    [fillItem("low value of the factor", LOW), fillItem("high value of the factor", HIGH)],
    0,
    SHEET_WIDTH,
    measure,
  );
  const column = labelColumn(
    swings.map(({ factor }) => ({ name: factor })),
    measure,
  );
  const top = key.height + 20;
  const placed = swings.flatMap((swing, row) => place(swing, top + 4 + (row + 0.5) * PITCH));
  const room = (side: -1 | 1): number =>
    Math.max(
      0,
      ...placed
        .filter(({ end }) => sideOf(end) === side)
        .map(({ end }) => endWidth(end, data.digits, measure)),
    ) + 8;
  const frame: Frame = {
    left: column.width + Math.ceil(room(-1)),
    right: SHEET_WIDTH - Math.ceil(room(1)),
    top,
    bottom: top + swings.length * PITCH + 8,
  };
  const reach = placed.map(({ end }) => end.change);
  let [low, high] = [Math.min(0, ...reach), Math.max(0, ...reach)];
  if (low === high) [low, high] = [-1, 1];
  const plot = plotted(frame, { domain: [low, high] }, undefined, [
    ...acrossAxis(axisTicks(low, high, 6)),
    Plot.rect(placed, {
      x1: 0,
      x2: ({ end }: Placed) => end.change,
      y1: "top",
      y2: "bottom",
      fill: ({ fill }: Placed) => fill.colour,
    }),
  ]);
  const name = acrossName(`change of the ${data.saving}, percentage points`, frame, measure);
  const zero = plot.x(0);
  return sheet(frame.bottom + TICK_ROOM + name.height, [
    ...key.nodes,
    words(zero - 8, top - 6, "saving falls", { anchor: "end", fill: SOFT }),
    words(zero + 8, top - 6, "saving rises", { fill: SOFT }),
    plot.node,
    ...placed.flatMap((bar) => dressed(bar, plot, data.digits, measure)),
    element("line", { x1: zero, x2: zero, y1: top - 12, y2: frame.bottom, stroke: INK }),
    ...swings.flatMap((_, row) => column.draw(row, top + 4 + (row + 0.5) * PITCH)),
    ...name.nodes,
  ]);
}

function reachOf({ low, high }: Swing): number {
  return Math.max(low.change, high.change, 0) - Math.min(low.change, high.change, 0);
}

function place({ low, high }: Swing, y: number): readonly Placed[] {
  const sameSide = sideOf(low) === sideOf(high);
  const bar = (end: SwingEnd, fill: Fill, from: number, to: number): Placed => ({
    end,
    fill,
    top: y + from,
    bottom: y + to,
  });
  return sameSide
    ? [bar(low, LOW, -13, -1), bar(high, HIGH, 1, 13)]
    : [bar(low, LOW, -HALF, HALF), bar(high, HIGH, -HALF, HALF)];
}

function sideOf({ change }: SwingEnd): -1 | 1 {
  return change < 0 ? -1 : 1;
}

function endWidth(end: SwingEnd, digits: number, measure: TextMeasure): number {
  return measure(`${end.label}: ${formatChange(end.change, digits)}`, LETTER_SIZE) + 4;
}

function dressed(
  bar: Placed,
  plot: Plotted,
  digits: number,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const { end, fill, top, bottom } = bar;
  const [zero, tip] = [plot.x(0), plot.x(end.change)];
  const box = { x: Math.min(zero, tip), y: top, width: Math.abs(tip - zero), height: bottom - top };
  const text = `${end.label}: ${formatChange(end.change, digits)}`;
  const x = sideOf(end) < 0 ? tip - 5 - measure(text, LETTER_SIZE) : tip + 5;
  return [...patterned(box, fill), words(x, (top + bottom) / 2, text, { halo: WHITE })];
}
