import * as Plot from "@observablehq/plot";
import { InputError } from "../problems/input-error.js";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, LETTER_SIZE, plate, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { BAND, type Fill, INK, SOFT, WHITE } from "./palette.js";
import { acrossAxis, type Frame, plotted, TICK_ROOM, tickCount } from "./plot-frame.js";
import { drawable, printedInterval, type Ranged, whiskerOf } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { type Bin, binned, type Stretch, stretchOf, within } from "./bins.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** The saving of one indicator over all draws. */
export interface SavingDraws {
  /** Name of the indicator, such as `water withdrawn`. */
  readonly indicator: string;
  /** Unit of the saving as printed, such as `%` or `L/m²`. Panels of one unit share their axis. */
  readonly unit: string;
  /** Decimals of median and interval. */
  readonly digits: number;
  /** The saving in each draw; below 0 the pigment route takes more. */
  readonly draws: Float64Array;
  /** Median, as printed elsewhere. */
  readonly median: number;
  /** Lower end of the 95 % interval. */
  readonly low: number;
  /** Upper end of the 95 % interval. */
  readonly high: number;
}

/** Savings of several indicators, each with its spread. */
export interface SavingDistributionData {
  /** Panels from top to bottom. */
  readonly panels: readonly SavingDraws[];
}

const PANEL = 62;
const HEAP = 40;
const BETWEEN = 8;

const INSIDE: Fill = { colour: "#9aa5b3", pattern: "plain", line: WHITE, letters: INK };
const OUTSIDE: Fill = { colour: BAND, pattern: "plain", line: WHITE, letters: INK };

/**
 * Draws how the saving of each indicator is spread over the draws, one panel for each, with its
 * median, its 95 % interval and the line at which nothing is saved.
 *
 * Panels that follow each other and share a unit share their axis too. An axis takes in the draws
 * between the thousandth parts at both ends, the interval and zero.
 *
 * @param data - panels
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a panel has no draws or a number is not finite
 */
export function savingDistribution(
  data: SavingDistributionData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const right = width - 24;
  data.panels.forEach(check);
  const key = legend(
    [
      fillItem("draws within the 95\u00a0% interval", INSIDE),
      fillItem("draws outside it", OUTSIDE),
      MEDIAN_ITEM,
    ],
    0,
    width,
    measure,
  );
  const column = labelColumn(
    data.panels.map(({ indicator, unit }) => ({ name: indicator, note: `saving, ${unit}` })),
    measure,
    labelRoom(width),
  );
  const nodes: DrawingNode[] = [...key.nodes];
  let y = key.height;
  let row = 0;
  for (const group of groups(data.panels)) {
    const stretch = stretchOf(group);
    nodes.push(...signWords(stretch, [column.width, right], y, measure));
    y += 16;
    group.forEach((panel, index) => {
      const isLast = index === group.length - 1;
      nodes.push(
        ...drawPanel(
          panel,
          stretch,
          { left: column.width, right, top: y, bottom: y + PANEL },
          isLast,
          measure,
        ),
      );
      nodes.push(...column.draw(row, y + PANEL - HEAP / 2));
      y += PANEL + (isLast ? TICK_ROOM : 0) + BETWEEN;
      row += 1;
    });
  }
  return sheet(y, nodes, width);
}

const MEDIAN_ITEM = {
  label: "median, printed above it with the interval",
  sign: (x: number, y: number): readonly DrawingNode[] => [
    element("line", { x1: x, x2: x, y1: y - 6, y2: y + 6, stroke: INK, "stroke-width": 2 }),
  ],
};

function check(panel: SavingDraws): void {
  const where = `picture of savings, ${panel.indicator}`;
  if (panel.draws.length === 0) throw new InputError(where, 0, "expected at least one draw");
  for (const value of [panel.median, panel.low, panel.high]) drawable(where, value);
  for (const value of panel.draws) drawable(where, value);
}

function groups(panels: readonly SavingDraws[]): readonly (readonly SavingDraws[])[] {
  const found: SavingDraws[][] = [];
  for (const panel of panels) {
    const open = found.at(-1);
    if (open?.[0]?.unit === panel.unit) open.push(panel);
    else found.push([panel]);
  }
  return found;
}

function signWords(
  { low, high }: Stretch,
  [left, right]: readonly [number, number],
  y: number,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const zero = left + ((0 - low) / (high - low)) * (right - left);
  const look = { size: SMALL_SIZE, fill: SOFT } as const;
  const [more, less] = ["more used", "saved"];
  const fits = zero + 6 + measure(less, SMALL_SIZE) <= right + 24;
  return [
    ...(low < 0 ? [words(zero - 6, y + 8, more, { ...look, anchor: "end" as const })] : []),
    ...(high > 0 && fits ? [words(zero + 6, y + 8, less, look)] : []),
  ];
}

function drawPanel(
  panel: SavingDraws,
  stretch: Stretch,
  frame: Frame,
  isLast: boolean,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const bins = binned(panel.draws, stretch);
  const highest = Math.max(...bins.map(({ height }) => height), 1e-12);
  const { low, high } = whiskerOf(rangedOf(panel)) ?? { low: panel.median, high: panel.median };
  const heap = (from: number, to: number, fill: string): Plot.Markish =>
    Plot.areaY(within(bins, from, to), {
      x: "x",
      y1: frame.bottom,
      y2: ({ height }: Bin) => frame.bottom - (height / highest) * HEAP,
      curve: "step-after",
      fill,
    });
  const ticks = axisTicks(stretch.low, stretch.high, tickCount(frame));
  const plot = plotted(frame, { domain: [stretch.low, stretch.high] }, undefined, [
    ...(isLast ? acrossAxis(ticks) : acrossAxis(ticks).slice(0, 1)),
    heap(stretch.low, low, OUTSIDE.colour),
    heap(low, high, INSIDE.colour),
    heap(high, stretch.high, OUTSIDE.colour),
    Plot.ruleY([frame.bottom], { stroke: SOFT, strokeWidth: 0.75 }),
  ]);
  const [zero, middle] = [plot.x(0), plot.x(panel.median)];
  const value = `${formatNumber(panel.median, panel.digits)} ${panel.unit}`;
  const interval = printedInterval(rangedOf(panel), panel.digits);
  return [
    plot.node,
    element("line", {
      x1: zero,
      x2: zero,
      y1: frame.top - 8,
      y2: frame.bottom,
      stroke: INK,
      "stroke-width": 1,
    }),
    element("line", {
      x1: middle,
      x2: middle,
      y1: frame.bottom - HEAP - 4,
      y2: frame.bottom,
      stroke: INK,
      "stroke-width": 2,
    }),
    ...medianWords(middle, frame, value, interval, measure),
  ];
}

function rangedOf({ median, low, high }: SavingDraws): Ranged {
  return { value: median, low, high };
}

function medianWords(
  x: number,
  frame: Frame,
  value: string,
  interval: string | undefined,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const note = interval === undefined ? "" : `95\u00a0%: ${interval}`;
  const own = measure(value, LETTER_SIZE, "semibold");
  const whole = own + (note === "" ? 0 : 8 + measure(note, SMALL_SIZE));
  const start = Math.min(Math.max(x - own / 2, frame.left), frame.right - whole);
  const y = frame.bottom - HEAP - 12;
  return [
    plate(start, y, whole, WHITE),
    words(start, y, value, { strong: true }),
    ...(note === "" ? [] : [words(start + own + 8, y, note, { size: SMALL_SIZE, fill: SOFT })]),
  ];
}
