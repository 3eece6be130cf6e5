import * as Plot from "@observablehq/plot";
import { roundAxis, ZERO_ONLY } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { calendar, monthFoot } from "./months.js";
import {
  element,
  LETTER_SIZE,
  LINE_HEIGHT,
  sheet,
  SHEET_WIDTH,
  SMALL_SIZE,
  words,
} from "./nodes.js";
import { formatChange, formatNumber } from "./number-format.js";
import { BAND, fill, type Fill, INK, SOFT, WHITE } from "./palette.js";
import { machineFills } from "./part-fills.js";
import { filled } from "./pattern.js";
import { type Frame, type Plotted, plotted, upwardAxis, ZERO_LINE } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** A month on a meter. */
export interface MeterMonth {
  /** Month as ISO 8601 has it, such as `2025-07`. */
  readonly month: string;
  /** What the meter read; absent where there is no reading. */
  readonly metered?: number;
  /** What the lots of the month add up to; absent where there is no lot. */
  readonly modelled?: number;
  /** Parts of that sum, from the axis up, 0 or more; the same names in every month. Absent for a plain bar. */
  readonly parts?: readonly MeterPart[];
}

/** A part of what lots add up to. */
export interface MeterPart {
  /** Name. */
  readonly name: string;
  /** Amount. */
  readonly value: number;
}

/** A meter against the sum of the lots. */
export interface MeterMonthsData {
  /** Name of the quantity, such as `town water`. */
  readonly quantity: string;
  /** Unit as printed, such as `m³`. */
  readonly unit: string;
  /** Months in any order; those left out in between stay empty. */
  readonly months: readonly MeterMonth[];
}

const HEIGHT = 170;

/** No bar is drawn more than twice as broad. */
const BROADEST = 20;

/** Printed where a reading or the lots are missing, or the reading is 0. */
const NO_GAP = "–";
const SUM_FILL = fill(BAND);

interface Placed extends MeterMonth {
  readonly index: number;
}

/**
 * Draws what a meter read, month by month, against what the lots add up to, with the gap between the
 * two printed below each month.
 *
 *     gap = (reading − sum of the lots) / reading
 *
 * @param data - months
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite, or the months span more than ten years
 */
export function meterMonths(
  data: MeterMonthsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const months = calendar(data.months.map(({ month }) => month));
  const byMonth = new Map(data.months.map((month) => [month.month, month]));
  const placed = months.map((month, index): Placed => ({
    ...(byMonth.get(month) ?? { month }),
    index,
  }));
  const reach = placed.flatMap(({ month, metered, modelled }) =>
    [metered, modelled].flatMap((value) =>
      value === undefined ? [] : [drawable(`picture of the meter, ${month}`, value)],
    ),
  );
  const low = Math.min(0, ...reach);
  const high = Math.max(0, ...reach) > low ? Math.max(0, ...reach) : low + 1;
  const { ticks, domain } = reach.every((value) => value === 0)
    ? { ticks: ZERO_ONLY, domain: [low, high] as const }
    : roundAxis(low, high, 5);
  const fills = machineFills(
    placed.flatMap(({ parts = [] }) =>
      parts.flatMap(({ name, value }) => (value > 0 ? [name] : [])),
    ),
  );
  const signs = [...fills].map(([name, own]) => fillItem(name, own));
  const key = legend(
    [
      ...(signs.length > 0 ? signs : [fillItem("sum of the lots, modelled", SUM_FILL)]),
      READING_ITEM,
    ],
    0,
    width,
    measure,
  );
  const gaps = placed.map(gap);
  const rows = [{ name: "gap, % of reading", figures: gaps }];
  const numbers = ticks.values.map((tick) =>
    measure(formatNumber(tick, ticks.digits), LETTER_SIZE),
  );
  const left =
    Math.ceil(Math.max(...numbers, ...rows.map(({ name }) => measure(name, SMALL_SIZE)))) + 14;
  const top = key.height + 24;
  const frame: Frame = { left, right: width - 8, top, bottom: top + HEIGHT };
  const half = Math.min(0.32, (BROADEST * months.length) / (frame.right - frame.left));
  const bars = placed.filter(
    ({ modelled, parts }) => modelled !== undefined && parts === undefined,
  );
  const plot = plotted(frame, { domain: [-0.5, Math.max(1, months.length) - 0.5] }, { domain }, [
    ...upwardAxis(ticks),
    Plot.rect(bars, {
      x1: ({ index }: Placed) => index - half,
      x2: ({ index }: Placed) => index + half,
      y1: 0,
      y2: "modelled",
      fill: SUM_FILL.colour,
    }),
  ]);
  const foot = monthFoot({ months, rows }, plot.x, frame.bottom, frame.left - 8, measure);
  const zero = plot.y(0);
  const notes = [
    "gap: + where the meter read more than the lots add up to, − where it read less",
    ...(gaps.includes(NO_GAP) ? ["–: no reading, a reading of 0, or no lots"] : []),
  ].flatMap((note) => cutText(note, width, 3, (text) => measure(text, SMALL_SIZE)).lines);
  const end = frame.bottom + foot.height;
  const nodes = [
    ...key.nodes,
    words(0, key.height + 6, `${data.quantity}, ${data.unit}`, { fill: SOFT }),
    plot.node,
    element("line", { x1: frame.left, x2: frame.right, y1: zero, y2: zero, ...ZERO_LINE }),
    ...placed.flatMap((month) => stacked(month, fills, plot, half)),
    ...placed.flatMap((month) => reading(month, plot, half)),
    ...foot.nodes,
    ...notes.map((note, index) =>
      words(0, end + 4 + index * LINE_HEIGHT, note, { size: SMALL_SIZE, fill: SOFT }),
    ),
  ];
  return sheet(end + notes.length * LINE_HEIGHT + 2, nodes, width);
}

const READING_ITEM = {
  label: "meter reading",
  sign: (x: number, y: number): readonly DrawingNode[] => level(x - 8, x + 8, y),
};

function stacked(
  { index, parts = [] }: Placed,
  fills: ReadonlyMap<string, Fill>,
  plot: Plotted,
  half: number,
): readonly DrawingNode[] {
  let below = 0;
  return parts.flatMap(({ name, value }) => {
    const own = fills.get(name);
    if (own === undefined || !(value > 0)) return [];
    const [bottom, top] = [plot.y(below), plot.y(below + value)];
    below += value;
    const [left, right] = [plot.x(index - half), plot.x(index + half)];
    return filled({ x: left, y: top, width: right - left, height: bottom - top }, own);
  });
}

function reading(month: Placed, plot: Plotted, half: number): readonly DrawingNode[] {
  if (month.metered === undefined) return [];
  const { index, metered } = month;
  return level(plot.x(index - 1.3 * half), plot.x(index + 1.3 * half), plot.y(metered));
}

function level(x1: number, x2: number, y: number): readonly DrawingNode[] {
  const at = { x1, x2, y1: y, y2: y };
  return [
    element("line", { ...at, stroke: WHITE, "stroke-width": 5 }),
    element("line", { ...at, stroke: INK, "stroke-width": 2.5 }),
  ];
}

function gap({ metered, modelled }: Placed): string {
  if (metered === undefined || modelled === undefined || metered === 0) return NO_GAP;
  return formatChange(((metered - modelled) / metered) * 100, 0);
}
