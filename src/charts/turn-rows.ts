import { roundAxis } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { INK, SOFT, WHITE } from "./palette.js";
import { acrossAxis, acrossName, plotted, TICK_ROOM, tickCount, ZERO_LINE } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** How far a driver is from turning a sign. */
export interface TurnRow {
  /** The driver. */
  readonly name: string;
  /** Where it turns, in percent of today's value; absent where it does not within the range. */
  readonly at?: number;
  /** Said at the end of the row: both values. */
  readonly label: string;
}

/** How far drivers are from turning a sign. */
export interface TurnRowsData {
  /** What is turned, such as `NPV`. */
  readonly worth: string;
  /** Drivers from top to bottom. */
  readonly rows: readonly TurnRow[];
}

const PITCH = 24;
const LABEL = 150;

/** Beyond it a driver is drawn at the edge, with its number beside it. [percent of today] */
const FARTHEST = 300;

/**
 * Draws for each driver a line from today's value, 100, to the one that turns the sign.
 *
 * @param data - drivers
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function turnRows(
  data: TurnRowsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const key = legend([TODAY_ITEM, TURN_ITEM], 0, width, measure);
  const column = labelColumn(
    data.rows.map(({ name }) => ({ name })),
    measure,
    labelRoom(width),
  );
  const room = Math.min(LABEL, 0.3 * width);
  const labels = data.rows.map(({ label }) =>
    cutText(label, room, 2, (text) => measure(text, SMALL_SIZE)),
  );
  const heights = column.heights.map((height, i) =>
    Math.max(PITCH, height + 8, 12 * (labels[i]?.lines.length ?? 1) + 10),
  );
  const frame = {
    left: column.width + 10,
    right: width - room - 16,
    top: key.height + 2,
    bottom: key.height + 6 + heights.reduce((sum, height) => sum + height, 0),
  };
  const places = data.rows.map(({ name, at }) =>
    at === undefined
      ? undefined
      : Math.max(-FARTHEST, Math.min(FARTHEST, drawable(`picture of turning points, ${name}`, at))),
  );
  const known = places.filter((place) => place !== undefined);
  const axis = roundAxis(Math.min(0, ...known), Math.max(150, ...known), tickCount(frame));
  const plot = plotted(frame, { domain: axis.domain }, undefined, acrossAxis(axis.ticks));
  const today = plot.x(100);
  const nodes: DrawingNode[] = [];
  let y = frame.top + 2;
  data.rows.forEach((_, i) => {
    const height = heights[i] ?? PITCH;
    const middle = y + height / 2;
    const at = places[i];
    nodes.push(...column.draw(i, middle));
    if (at !== undefined) {
      const x = plot.x(at);
      nodes.push(
        element("line", {
          x1: today,
          x2: x,
          y1: middle,
          y2: middle,
          stroke: INK,
          "stroke-width": 2,
        }),
        ...turnSign(x, middle),
      );
    }
    nodes.push(
      ...todaySign(today, middle),
      ...(labels[i]?.lines ?? []).map((line, at, all) =>
        words(width - room, middle + (at - (all.length - 1) / 2) * 12, line, { size: SMALL_SIZE }),
      ),
    );
    y += height;
  });
  const name = acrossName(
    `percent of the value in the file at which the ${data.worth} is 0`,
    frame,
    measure,
  );
  return sheet(
    frame.bottom + TICK_ROOM + name.height,
    [
      ...key.nodes,
      plot.node,
      element("line", { x1: today, x2: today, y1: frame.top, y2: frame.bottom, ...ZERO_LINE }),
      ...nodes,
      ...name.nodes,
    ],
    width,
  );
}

type Sign = LegendItem["sign"];

const todaySign: Sign = (x, y) => [
  element("circle", { cx: x, cy: y, r: 4, fill: WHITE, stroke: SOFT, "stroke-width": 1.5 }),
];

const turnSign: Sign = (x, y) => [
  element("rect", { x: x - 4, y: y - 4, width: 8, height: 8, fill: INK }),
];

const TODAY_ITEM: LegendItem = { label: "value in the file, 100", sign: todaySign };

const TURN_ITEM: LegendItem = {
  label: "where the sign turns; nothing where it never does",
  sign: turnSign,
};
