import * as Plot from "@observablehq/plot";
import { InputError } from "../problems/input-error.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { BAND, type Fill, INK, PALE, SOFT, WHITE } from "./palette.js";
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
  {
    key: "accepted",
    name: "accepted",
    fill: { colour: SOFT, pattern: "plain", line: WHITE, letters: WHITE },
  },
  {
    key: "corrected",
    name: "corrected",
    fill: { colour: BAND, pattern: "rising", line: SOFT, letters: INK },
  },
  {
    key: "setAside",
    name: "set aside",
    fill: { colour: WHITE, pattern: "crossed", line: SOFT, letters: INK },
  },
  {
    key: "outside",
    name: "outside",
    fill: { colour: PALE, pattern: "dots", line: SOFT, letters: INK },
  },
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
 * @returns the picture
 * @throws InputError when a count is not a whole number from 0 on
 */
export function importBars(data: ImportBarsData, measure: TextMeasure = interWidth): Drawing {
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
    SHEET_WIDTH,
    measure,
  );
  const frame = { left: 0, right: SHEET_WIDTH, top: key.height, bottom: key.height + HEIGHT };
  const bars = widths(data, total);
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
  return sheet(frame.bottom + 4, [...key.nodes, plot.node, ...dress, ...empty]);
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

function widths(data: ImportBarsData, total: number): readonly Bar[] {
  const shown = PARTS.filter(({ key }) => data[key] > 0);
  const free = SHEET_WIDTH - 2 - shown.length * NARROWEST - (shown.length - 1) * 2;
  let x = 1;
  return shown.map(({ key, fill }) => {
    const from = x;
    const to = from + NARROWEST + (free * data[key]) / total;
    x = to + 2;
    return { fill, from, to };
  });
}
