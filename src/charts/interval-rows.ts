import { InputError } from "../problems/input-error.js";
import { dotAxis } from "./dot-axis.js";
import { dotPlot, tenth } from "./dot-plot.js";
import type { Drawing, DrawingElement, DrawingNode } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { BAND, type Fill, INK, PALE, SOFT, WHITE } from "./palette.js";
import { acrossName, type Frame, TICK_ROOM } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn } from "./row-labels.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** Ways in which a thing may be run, in the order of the legend. */
const WAYS = ["poor", "usual", "well"] as const;

/** A published range beside ours. */
export interface IntervalRow {
  /** What is set beside the range. */
  readonly name: string;
  /** Said below the name; nothing when absent. */
  readonly note?: string;
  /** The published range; a ceiling begins at 0. */
  readonly published: { readonly low: number; readonly high: number };
  /** Poorly run. */
  readonly poor: number;
  /** Run as usual. */
  readonly usual: number;
  /** Well run. */
  readonly well: number;
  /** Lower end of the reach, such as that of a 95 % interval. */
  readonly low: number;
  /** Upper end of the reach. */
  readonly high: number;
  /** Said to the right of the row. */
  readonly verdict: string;
}

/** Published ranges of one quantity beside ours. */
export interface IntervalRowsData {
  /** Name of the quantity, such as `water withdrawn`. */
  readonly quantity: string;
  /** Unit as printed, such as `L/kg`. */
  readonly unit: string;
  /** What the thin line stands for, such as `95 % interval as usual`. */
  readonly reach: string;
  /** Rows from top to bottom, none below 0. */
  readonly rows: readonly IntervalRow[];
}

// Told from the ground by its edges as well, and from ours by being an area.
const PUBLISHED: Fill = { colour: PALE, pattern: "plain", line: SOFT, letters: INK };

const PITCH = 24;
const MARK = 4.5;
const REMARK_ROOM = 96;
const ROOM = { width: 190, lines: 2 };

/**
 * Draws published ranges as pale bands with edges and what is set beside them as lines: a thin one with ends for the reach,
 * a thick one from well to poorly run, with a mark for each way it is run. The axis starts at 0 where the
 * values lie within two powers of ten, and is logarithmic beyond that; its name says so.
 *
 * @param data - rows of one quantity
 * @param measure - measures text
 * @returns the picture
 * @throws InputError when a number is not finite or below 0, or ends are in the wrong order
 */
export function intervalRows(data: IntervalRowsData, measure: TextMeasure = interWidth): Drawing {
  data.rows.forEach(check);
  const key = legend(
    [
      fillItem("published range", PUBLISHED),
      ...WAYS.map((way) => ({ label: LABELS[way], sign: SIGNS[way] })),
      { label: data.reach, sign: thinSign },
    ],
    0,
    SHEET_WIDTH,
    measure,
  );
  const axis = dotAxis(
    data.rows.flatMap(({ published, poor, usual, well, low, high }) => [
      published.high,
      // A ceiling has no lower end of its own, so it asks for no place at 0.
      ...(published.low > 0 ? [published.low] : []),
      ...[poor, usual, well, low, high],
    ]),
  );
  const column = labelColumn(
    data.rows.map(({ name, note }) => ({ name, ...(note === undefined ? {} : { note }) })),
    measure,
    ROOM,
  );
  const remarks = data.rows.map(({ verdict }) =>
    cutText(verdict, REMARK_ROOM, 2, (text) => measure(text, SMALL_SIZE)),
  );
  const frame: Frame = {
    left: column.width + 6,
    right: SHEET_WIDTH - Math.ceil(Math.max(0, ...remarks.map(({ width }) => width))) - 12,
    top: key.height,
    bottom: key.height + 6 + column.heights.reduce((sum, high) => sum + pitchOf(high), 0),
  };
  const plot = dotPlot(frame, axis, 34);
  const at = (value: number): number => (value > 0 ? plot.x(axis.place(value)) : frame.left);
  const tops: number[] = [];
  let top = frame.top + 3;
  for (const high of column.heights) {
    tops.push(top);
    top += pitchOf(high);
  }
  const name = acrossName(`${data.quantity}, ${data.unit}${axis.note}`, frame, measure);
  return sheet(frame.bottom + TICK_ROOM + name.height, [
    ...key.nodes,
    ...data.rows.flatMap((row, index) => band(row, tops[index] ?? 0, at, column.heights[index])),
    plot.node,
    ...data.rows.flatMap((row, index) => {
      const y = (tops[index] ?? 0) + pitchOf(column.heights[index]) / 2;
      return [
        ...column.draw(index, y),
        ...ours(row, y, at),
        ...(remarks[index]?.lines ?? []).map((line, at, all) =>
          words(SHEET_WIDTH, y + (at - (all.length - 1) / 2) * 12, line, {
            anchor: "end",
            size: SMALL_SIZE,
            fill: SOFT,
          }),
        ),
      ];
    }),
    ...name.nodes,
  ]);
}

const LABELS = { poor: "poorly run", usual: "as usual", well: "well run" } as const;

function check({ name, published, poor, usual, well, low, high }: IntervalRow): void {
  const where = `picture of published ranges, ${name}`;
  for (const value of [published.low, published.high, poor, usual, well, low, high]) {
    if (!(drawable(where, value) >= 0)) throw new InputError(where, value, "expected 0 or more");
  }
  for (const [lower, upper] of [
    [published.low, published.high],
    [low, high],
  ] as const) {
    if (!(lower <= upper)) throw new InputError(where, lower, `expected at most ${upper}`);
  }
}

function pitchOf(height = 0): number {
  return Math.max(PITCH, height + 6);
}

function band(
  { published }: IntervalRow,
  top: number,
  at: (value: number) => number,
  height: number | undefined,
): readonly DrawingNode[] {
  const [left, right] = [at(published.low), at(published.high)];
  // A single published value is a line; a band of no width would not be seen.
  const width = Math.max(2, right - left);
  const box = { x: left, y: top + 1.5, width, height: pitchOf(height) - 3 };
  const edge = (x: number): DrawingElement =>
    element("line", { x1: x, x2: x, y1: box.y, y2: box.y + box.height, stroke: SOFT });
  return [
    element("rect", { ...box, fill: PUBLISHED.colour }),
    ...(published.low > 0 ? [edge(left)] : []),
    edge(left + width),
  ];
}

function ours(row: IntervalRow, y: number, at: (value: number) => number): readonly DrawingNode[] {
  const line = (from: number, to: number, width: number): DrawingElement =>
    element("line", { x1: at(from), x2: at(to), y1: y, y2: y, stroke: INK, "stroke-width": width });
  return [
    line(row.low, row.high, 1),
    ...cap(at(row.low), y),
    ...cap(at(row.high), y),
    line(Math.min(row.poor, row.usual, row.well), Math.max(row.poor, row.usual, row.well), 3),
    ...WAYS.flatMap((way) => SIGNS[way](at(row[way]), y)),
  ];
}

type Sign = LegendItem["sign"];

// Ends of the reach, to be seen where the thick line covers it.
const cap: Sign = (x, y) => [element("line", { x1: x, x2: x, y1: y - 4, y2: y + 4, stroke: INK })];

// The three marks differ in shape and in lightness.
const SIGNS: Readonly<Record<(typeof WAYS)[number], Sign>> = {
  poor: (x, y) => [
    element("rect", {
      x: x - MARK + 0.5,
      y: y - MARK + 0.5,
      width: 2 * MARK - 1,
      height: 2 * MARK - 1,
      fill: WHITE,
      stroke: INK,
      "stroke-width": 1.5,
    }),
  ],
  usual: (x, y) => [
    element("circle", { cx: x, cy: y, r: MARK, fill: INK, stroke: WHITE, "stroke-width": 1 }),
  ],
  well: (x, y) => [
    element("path", {
      d: `M${tenth(x)},${tenth(y - MARK - 1)}l${MARK + 1},${MARK + 1},${-MARK - 1},${MARK + 1},${-MARK - 1},${-MARK - 1}z`,
      fill: BAND,
      stroke: INK,
      "stroke-width": 1.5,
    }),
  ],
};

const thinSign: Sign = (x, y) => [
  element("line", { x1: x - 8, x2: x + 8, y1: y, y2: y, stroke: INK, "stroke-width": 1 }),
  ...cap(x - 8, y),
  ...cap(x + 8, y),
];
