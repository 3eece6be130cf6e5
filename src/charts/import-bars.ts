import * as Plot from "@observablehq/plot";
import { InputError } from "../problems/input-error.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { type Fill, SOFT, WHITE } from "./palette.js";
import { ROW_FILLS } from "./part-fills.js";
import { patterned } from "./pattern.js";
import { plotted } from "./plot-frame.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** What became of the rows of a log. */
export interface ImportBarsData {
  /** Rows taken as they are. */
  readonly accepted: number;
  /** Rows taken after a correction that is named. */
  readonly corrected: number;
  /** Rows set aside, each with its reason. */
  readonly setAside: number;
  /** Rows outside the period, site or routes asked for. */
  readonly outside: number;
}

const PARTS: readonly {
  readonly key: keyof ImportBarsData;
  readonly name: string;
  readonly fill: Fill;
}[] = [
  { key: "accepted", name: "accepted", fill: ROW_FILLS.accepted },
  { key: "corrected", name: "corrected", fill: ROW_FILLS.corrected },
  { key: "setAside", name: "set aside", fill: ROW_FILLS.setAside },
  { key: "outside", name: "outside", fill: ROW_FILLS.outside },
];

/** No part that has rows is drawn narrower than this. */
const NARROWEST = 3;
const HEIGHT = 18;

/**
 * Draws what became of the rows of a log as one bar; the counts stand in the legend, so that the
 * smallest part can be read too. A part with rows is never drawn narrower than 3 units.
 *
 * @param data - counts of rows
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a count is not a whole number from 0 on
 */
export function importBars(
  data: ImportBarsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  for (const { key, name } of PARTS) {
    if (!(Number.isInteger(data[key]) && data[key] >= 0)) {
      throw new InputError(`picture of the import, ${name}`, data[key], "expected a count of rows");
    }
  }
  const total = PARTS.reduce((sum, { key }) => sum + data[key], 0);
  const key = legend(
    PARTS.map(({ key: part, name, fill }) =>
      fillItem(`${name}: ${counted(data[part], total)}`, fill),
    ),
    0,
    width,
    measure,
  );
  const frame = { left: 0, right: width, top: key.height, bottom: key.height + HEIGHT };
  const bars = widths(data, total, width);
  const plot = plotted(frame, { type: "identity" }, undefined, [
    Plot.rect(bars, {
      x1: "from",
      x2: "to",
      y1: frame.top,
      y2: frame.bottom,
      fill: ({ fill }: Bar) => fill.colour,
    }),
  ]);
  const dress = bars.flatMap(({ from, to, fill }) => {
    const box = { x: from, y: frame.top, width: to - from, height: HEIGHT };
    const edge = element("rect", { ...box, fill: "none", stroke: SOFT });
    return fill.colour === WHITE ? [...patterned(box, fill), edge] : patterned(box, fill);
  });
  const empty =
    total === 0 ? [words(0, frame.top + HEIGHT / 2, "no rows read", { fill: SOFT })] : [];
  return sheet(frame.bottom + 4, [...key.nodes, plot.node, ...dress, ...empty], width);
}

interface Bar {
  readonly fill: Fill;
  readonly from: number;
  readonly to: number;
}

function counted(rows: number, total: number): string {
  const count = formatNumber(rows, 0);
  return total === 0 ? count : `${count} (${shareOf(rows, total)}\u00a0%)`;
}

// Neither nothing nor all is printed where it is not so.
function shareOf(rows: number, total: number): string {
  if (rows === 0 || rows === total) return formatNumber((rows / total) * 100, 0);
  const percent = (rows / total) * 100;
  if (percent < 0.05) return "<\u00a00.1";
  return percent >= 99.95 ? ">\u00a099.9" : formatNumber(percent, 1);
}

function widths(data: ImportBarsData, total: number, width: number): readonly Bar[] {
  const shown = PARTS.filter(({ key }) => data[key] > 0);
  const free = width - 2 - shown.length * NARROWEST - (shown.length - 1) * 2;
  let x = 1;
  return shown.map(({ key, fill }) => {
    const from = x;
    const to = from + NARROWEST + (free * data[key]) / total;
    x = to + 2;
    return { fill, from, to };
  });
}
