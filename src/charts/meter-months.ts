import * as Plot from "@observablehq/plot";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { calendar, monthFoot } from "./months.js";
import { element, LETTER_SIZE, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatChange, formatNumber } from "./number-format.js";
import { BAND, type Fill, INK, SOFT, WHITE } from "./palette.js";
import { patterned } from "./pattern.js";
import { type Frame, type Plotted, plotted, upwardAxis, ZERO_LINE } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A month on a meter. */
export interface MeterMonth {
  /** Month as ISO 8601 has it, such as `2025-07`. */
  readonly month: string;
  /** What the meter read; absent where there is no reading. */
  readonly metered?: number;
  /** What the lots of the month add up to; absent where there is no lot. */
  readonly modelled?: number;
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
const MODELLED: Fill = { colour: BAND, pattern: "rising", line: "#8d99a8", letters: INK };

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
 * @returns the picture
 * @throws InputError when a number is not finite, or the months span more than ten years
 */
export function meterMonths(data: MeterMonthsData, measure: TextMeasure = interWidth): Drawing {
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
  const high = Math.max(0, ...reach) > low ? Math.max(0, ...reach) * 1.04 : low + 1;
  const ticks = axisTicks(low, high, 5);
  const key = legend(
    [fillItem("sum of the lots, modelled", MODELLED), READING_ITEM],
    0,
    SHEET_WIDTH,
    measure,
  );
  const rows = [{ name: "gap, % of reading", figures: placed.map(gap) }];
  const numbers = ticks.values.map((tick) =>
    measure(formatNumber(tick, ticks.digits), LETTER_SIZE),
  );
  const left =
    Math.ceil(Math.max(...numbers, ...rows.map(({ name }) => measure(name, SMALL_SIZE)))) + 14;
  const top = key.height + 24;
  const frame: Frame = { left, right: SHEET_WIDTH - 8, top, bottom: top + HEIGHT };
  const bars = placed.filter(({ modelled }) => modelled !== undefined);
  const plot = plotted(
    frame,
    { domain: [-0.5, Math.max(1, months.length) - 0.5] },
    { domain: [low, high] },
    [
      ...upwardAxis(ticks),
      Plot.rect(bars, {
        x1: ({ index }: Placed) => index - 0.32,
        x2: ({ index }: Placed) => index + 0.32,
        y1: 0,
        y2: "modelled",
        fill: MODELLED.colour,
      }),
    ],
  );
  const foot = monthFoot({ months, rows }, plot.x, frame.bottom, frame.left - 8, measure);
  const zero = plot.y(0);
  return sheet(frame.bottom + foot.height, [
    ...key.nodes,
    words(0, key.height + 6, `${data.quantity}, ${data.unit}`, { fill: SOFT }),
    plot.node,
    ...bars.flatMap((bar) => patterned(boxOf(bar, plot), MODELLED)),
    element("line", { x1: frame.left, x2: frame.right, y1: zero, y2: zero, ...ZERO_LINE }),
    ...placed.flatMap((month) => reading(month, plot)),
    ...foot.nodes,
  ]);
}

const READING_ITEM = {
  label: "meter reading",
  sign: (x: number, y: number): readonly DrawingNode[] => level(x - 8, x + 8, y),
};

function boxOf({ index, modelled = 0 }: Placed, plot: Plotted) {
  const [zero, end] = [plot.y(0), plot.y(modelled)];
  const x = plot.x(index - 0.32);
  return {
    x,
    y: Math.min(zero, end),
    width: plot.x(index + 0.32) - x,
    height: Math.abs(end - zero),
  };
}

function reading({ index, metered }: Placed, plot: Plotted): readonly DrawingNode[] {
  if (metered === undefined) return [];
  return level(plot.x(index - 0.42), plot.x(index + 0.42), plot.y(metered));
}

function level(x1: number, x2: number, y: number): readonly DrawingNode[] {
  const at = { x1, x2, y1: y, y2: y };
  return [
    element("line", { ...at, stroke: WHITE, "stroke-width": 5 }),
    element("line", { ...at, stroke: INK, "stroke-width": 2.5 }),
  ];
}

function gap({ metered, modelled }: Placed): string {
  if (metered === undefined) return "–";
  if (modelled === undefined) return "–";
  if (metered === 0) return modelled === 0 ? "0" : "–";
  return formatChange(((metered - modelled) / metered) * 100, 0);
}
