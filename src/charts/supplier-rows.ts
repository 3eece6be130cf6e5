import { dotAxis } from "./dot-axis.js";
import { dotPlot, tenth } from "./dot-plot.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { legend, type LegendItem } from "./legend.js";
import { element, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { INK, SOFT, WHITE } from "./palette.js";
import { acrossName, type Frame, TICK_ROOM } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A supplier with its value. */
export interface SupplierRow {
  /** Name. */
  readonly name: string;
  /** Said below the name. */
  readonly note?: string;
  /** Median. */
  readonly value: number;
  /** Lower end of the 95 % interval. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** What counts for its place; nothing for those without a place. */
  readonly counted?: number;
  /** Drawn hollow: little of it rests on the supplier's own numbers. */
  readonly isHollow: boolean;
  /** Group of those that cannot be told apart; nothing for those without a place. */
  readonly group?: number;
}

/** Suppliers at one mix. */
export interface SupplierRowsData {
  /** Quantity. */
  readonly quantity: string;
  /** Unit as printed. */
  readonly unit: string;
  /** Suppliers in order. */
  readonly rows: readonly SupplierRow[];
}

const PITCH = 26;
const DOT = 4.5;

/** Times the middle upper end beyond which an end lies far out, and an arrow with its number stands for it. [-] */
const FAR = 2.5;

/** Room for the brackets of groups. */
const BRACKET = 88;

/**
 * Draws each supplier's value at the mix as a dot with its 95 % interval, and the value used for the order as an
 * upright stroke, or as an arrow where it lies far out. A bracket holds suppliers that cannot be told apart. Hollow dots rest mostly on defaults.
 *
 * @param data - suppliers in order
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function supplierRows(
  data: SupplierRowsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  for (const { name, value, low, high, counted = value } of data.rows)
    for (const number of [value, low, high, counted])
      drawable(`picture of suppliers, ${name}`, number);
  // A value far out would leave no room for the rest; an arrow says that it is there.
  const reach = reachOf(data.rows);
  const isFar = data.rows.some(({ high, counted = 0 }) => Math.max(high, counted) > reach);
  const key = legend(
    [
      { label: "value, mostly on own numbers", sign: dot(false) },
      { label: "value, mostly on defaults", sign: dot(true) },
      { label: "value used for order", sign: stroke },
      ...(isFar ? [{ label: "beyond the axis", sign: arrow }] : []),
      ...(isGrouped(data.rows)
        ? [{ label: "not told apart", sign: (x, y) => bracket(x - 2, y - 6, y + 6) } as LegendItem]
        : []),
    ],
    0,
    width,
    measure,
  );
  const column = labelColumn(
    data.rows.map(({ name, note }) => ({ name, ...(note === undefined ? {} : { note }) })),
    measure,
    { ...labelRoom(width), lines: 2 },
  );
  const pitches = column.heights.map((height) => Math.max(PITCH, height + 6));
  const axis = dotAxis(
    data.rows.flatMap(({ value, low, high, counted = value }) => [
      value,
      low,
      ...(high > reach ? [] : [high]),
      ...(counted > reach ? [] : [counted]),
    ]),
  );
  const room = isGrouped(data.rows) ? BRACKET : 14;
  const frame: Frame = {
    left: column.width + 6,
    right: width - room,
    top: key.height,
    bottom: key.height + 6 + pitches.reduce((sum, pitch) => sum + pitch, 0),
  };
  const plot = dotPlot(frame, axis, 40);
  const at = (value: number): number => plot.x(axis.place(value));
  const middles: number[] = [];
  let top = frame.top + 3;
  for (const pitch of pitches) {
    middles.push(top + pitch / 2);
    top += pitch;
  }
  const name = acrossName(`${data.quantity}, ${data.unit}${axis.note}`, frame, measure);
  return sheet(
    frame.bottom + TICK_ROOM + name.height,
    [
      ...key.nodes,
      plot.node,
      ...data.rows.flatMap((row, i) => {
        const y = middles[i] ?? 0;
        return [
          ...column.draw(i, y),
          element("line", {
            x1: at(row.low),
            x2: row.high > reach ? frame.right : at(row.high),
            y1: y,
            y2: y,
            stroke: INK,
            "stroke-width": 1.5,
          }),
          ...dot(row.isHollow)(at(row.value), y),
          ...(row.counted === undefined || row.counted > reach ? [] : stroke(at(row.counted), y)),
          ...beyond(row, reach, frame.right - 5, y),
        ];
      }),
      ...brackets(data.rows, middles, frame.right + 10),
      ...name.nodes,
    ],
    width,
  );
}

function isGrouped(rows: readonly SupplierRow[]): boolean {
  const groups = rows.flatMap(({ group }) => (group === undefined ? [] : [group]));
  return new Set(groups).size < groups.length;
}

// Most rows set the axis; what lies far beyond them would leave no room for the rest.
function reachOf(rows: readonly SupplierRow[]): number {
  const highs = rows.map(({ high }) => high).sort((a, b) => a - b);
  const middle = highs[Math.floor((highs.length - 1) / 2)] ?? 0;
  return Math.max(FAR * middle, ...rows.map(({ value }) => value));
}

function beyond(
  { high, counted = 0 }: SupplierRow,
  reach: number,
  x: number,
  y: number,
): readonly DrawingNode[] {
  const said = [
    ...(high > reach ? [`up to ${far(high)}`] : []),
    ...(counted > reach ? [`for order ${far(counted)}`] : []),
  ];
  if (said.length === 0) return [];
  return [
    ...arrow(x, y),
    words(x - 8, y - 9, said.join(", "), { anchor: "end", size: SMALL_SIZE, fill: SOFT }),
  ];
}

/**
 * Prints an end that lies beyond an axis.
 *
 * @param value - the end
 * @returns two digits at least
 */
export function far(value: number): string {
  return value >= 10 ? value.toFixed(0) : value.toPrecision(2);
}

type Sign = LegendItem["sign"];

/**
 * Makes the mark of a value at the mix.
 *
 * @param isHollow - whether it rests mostly on defaults
 * @returns draws it around its middle
 */
export function dot(isHollow: boolean): Sign {
  return (x, y) => [
    element("circle", {
      cx: x,
      cy: y,
      r: DOT,
      fill: isHollow ? WHITE : INK,
      stroke: INK,
      "stroke-width": 1.5,
    }),
  ];
}

const stroke: Sign = (x, y) => [
  element("line", { x1: x, x2: x, y1: y - 7, y2: y + 7, stroke: WHITE, "stroke-width": 5 }),
  element("line", { x1: x, x2: x, y1: y - 7, y2: y + 7, stroke: SOFT, "stroke-width": 3 }),
];

const arrow: Sign = (x, y) => [
  element("path", {
    d: `M${tenth(x - 4)},${tenth(y - 5)}l8,5l-8,5`,
    fill: "none",
    stroke: SOFT,
    "stroke-width": 2,
  }),
];

function bracket(x: number, from: number, to: number): readonly DrawingNode[] {
  return [
    element("path", {
      d: `M${tenth(x)},${tenth(from)}h5V${tenth(to)}h-5`,
      fill: "none",
      stroke: INK,
      "stroke-width": 1.5,
    }),
  ];
}

function brackets(
  rows: readonly SupplierRow[],
  middles: readonly number[],
  x: number,
): readonly DrawingNode[] {
  const groups = [...new Set(rows.flatMap(({ group }) => (group === undefined ? [] : [group])))];
  return groups.flatMap((group) => {
    const places = rows.flatMap((row, i) => (row.group === group ? [middles[i] ?? 0] : []));
    const [from = 0, to = from] = [places[0], places.at(-1)];
    if (places.length < 2) return [];
    return [
      ...bracket(x, from - 8, to + 8),
      words(x + 9, (from + to) / 2, "not told apart", { size: SMALL_SIZE, fill: SOFT }),
    ];
  });
}
