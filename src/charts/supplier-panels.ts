import { InputError } from "../problems/input-error.js";
import { tenth } from "./dot-plot.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { fillItem, legend, type LegendItem } from "./legend.js";
import {
  element,
  LETTER_SIZE,
  LINE_HEIGHT,
  sheet,
  SHEET_WIDTH,
  SMALL_SIZE,
  words,
} from "./nodes.js";
import { BAND, fill, INK, SOFT, WHITE } from "./palette.js";
import { filled } from "./pattern.js";
import { drawable } from "./ranged.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";
import { dot, far } from "./supplier-rows.js";
import { type UpwardScale, upwardScale } from "./upward-scale.js";

/** A supplier in a panel of its own. */
export interface SupplierPanel {
  /** Name. */
  readonly name: string;
  /** Said below the panel. */
  readonly note?: string;
  /** Value at the mix with its 95 % interval; absent where it has none. */
  readonly value?: {
    /** Median. */
    readonly median: number;
    /** Lower end. */
    readonly low: number;
    /** Upper end. */
    readonly high: number;
    /** Median in print. */
    readonly printed: string;
  };
  /** Value as it stands, in its own mix; absent where it would be of another thing. */
  readonly crude?: number;
  /** Drawn hollow: little of it rests on the supplier's own numbers. */
  readonly isHollow: boolean;
}

/** Suppliers that stand in one part. */
export interface PanelPart {
  /** What they have in common. */
  readonly words: string;
  /** Set where the part began in a picture before. */
  readonly isContinued?: boolean;
  /** Suppliers in order. */
  readonly panels: readonly SupplierPanel[];
}

/** Many suppliers, a small panel each. */
export interface SupplierPanelsData {
  /** Quantity. */
  readonly quantity: string;
  /** Unit as printed. */
  readonly unit: string;
  /** Values that the scale holds, the same in all pictures that stand together. Only upper ends may lie beyond. */
  readonly held: readonly number[];
  /** Suppliers by part. */
  readonly parts: readonly PanelPart[];
}

/** Least width of a panel. */
const LEAST_WIDTH = 72;

/** Height of the values in a panel. */
const HEIGHT = 84;

/** Half of the room between marks in a panel. */
const ASIDE = 9;

// An empty panel could be read as 0.
const EMPTY = fill(WHITE, "falling", BAND);

interface Cell {
  readonly panel: SupplierPanel;
  readonly part: PanelPart;
  readonly names: readonly string[];
  readonly below: readonly string[];
}

/**
 * Draws a small panel for each supplier, all on one scale that is printed once a row: the value at the mix as a dot
 * with its 95 % interval, and left of it what the supplier takes as it stands. A rule above holds the panels of one part.
 *
 * @param data - suppliers by part
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite, or is no upper end and lies off the scale
 */
export function supplierPanels(
  data: SupplierPanelsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  for (const value of data.held) drawable("picture of suppliers, its scale", value);
  const scale = upwardScale(data.held, HEIGHT, measure);
  const all = data.parts.flatMap(({ panels }) => panels);
  for (const panel of all) refuseUnfit(panel, scale);
  const across = Math.max(1, Math.floor((width - scale.room) / LEAST_WIDTH));
  const cell = (width - scale.room) / across;
  const cells = data.parts.flatMap((part) =>
    part.panels.map((panel): Cell => {
      const room = cell - 6;
      const below = [
        ...(isFar(panel, scale) ? [`up to ${far(panel.value?.high ?? 0)}`] : []),
        ...(panel.note === undefined ? [] : [panel.note]),
      ].flatMap((text) => cutText(text, room, 2, (line) => measure(line, SMALL_SIZE)).lines);
      const names = cutText(panel.name, room, 2, (line) => measure(line, LETTER_SIZE, "semibold"));
      return { panel, part, names: names.lines, below };
    }),
  );
  const key = legend(signsOf(all, scale), 0, width, measure);
  const title = cutText(`${data.quantity}, ${data.unit}${scale.note}`, width, 3, (line) =>
    measure(line, LETTER_SIZE),
  ).lines;
  const nodes: DrawingNode[] = [...key.nodes];
  let top = key.height;
  for (const line of title) {
    nodes.push(words(0, top + 6, line, { fill: SOFT }));
    top += LINE_HEIGHT;
  }
  top += 6;
  for (let from = 0; from < cells.length; from += across) {
    const row = cells.slice(from, from + across);
    const heads = rulesOf(
      row,
      cells[from - 1]?.part,
      (text, count) =>
        cutText(text, cell * count - 8, 3, (line) => measure(line, SMALL_SIZE)).lines,
    );
    const named = top + 6 + LINE_HEIGHT * Math.max(...heads.map(({ lines }) => lines.length));
    const start = named + LINE_HEIGHT * Math.max(...row.map(({ names }) => names.length)) + 8;
    const bottom = start + HEIGHT;
    nodes.push(...scale.draw(scale.room, scale.room + cell * row.length, bottom));
    for (const { at, count, lines } of heads) {
      const left = scale.room + at * cell + 3;
      nodes.push(
        element("line", {
          x1: left,
          x2: left + count * cell - 6,
          y1: top,
          y2: top,
          stroke: INK,
          "stroke-width": 1.5,
        }),
        ...stacked(left, top + 10, lines, { size: SMALL_SIZE, fill: SOFT }),
      );
    }
    row.forEach(({ panel, names, below }, i) => {
      const x = scale.room + (i + 0.5) * cell;
      nodes.push(
        ...stacked(x, named + 8, names, { strong: true, anchor: "middle" }),
        ...(isEmpty(panel)
          ? filled({ x: x - cell / 2 + 6, y: start, width: cell - 12, height: HEIGHT }, EMPTY)
          : marks(panel, x, bottom, scale)),
        ...stacked(x, bottom + 14, panel.value === undefined ? [] : [panel.value.printed], {
          anchor: "middle",
        }),
        ...stacked(x, bottom + (panel.value === undefined ? 14 : 27), below, {
          size: SMALL_SIZE,
          fill: SOFT,
          anchor: "middle",
        }),
      );
    });
    const said = row.map(({ panel, below }) => below.length + (panel.value === undefined ? 0 : 1));
    top = bottom + 8 + LINE_HEIGHT * Math.max(...said) + 12;
  }
  return sheet(top, nodes, width);
}

function stacked(
  x: number,
  top: number,
  lines: readonly string[],
  lettering: Parameters<typeof words>[3],
): readonly DrawingNode[] {
  return lines.map((line, index) => words(x, top + index * LINE_HEIGHT, line, lettering));
}

function refuseUnfit({ name, value, crude }: SupplierPanel, { above }: UpwardScale): void {
  const where = `picture of suppliers, ${name}`;
  if (value !== undefined) drawable(where, value.high);
  const held = [...(value === undefined ? [] : [value.median, value.low]), crude ?? []].flat();
  for (const number of held) {
    const up = above(drawable(where, number));
    if (!(up >= 0 && up <= HEIGHT))
      throw new InputError(where, number, "expected a value within those that the scale holds");
  }
}

// Runs of one part within a row; one that began in a row before says so.
function rulesOf(
  row: readonly Cell[],
  before: PanelPart | undefined,
  cut: (text: string, count: number) => readonly string[],
): readonly { readonly at: number; readonly count: number; readonly lines: readonly string[] }[] {
  const parts = [...new Set(row.map(({ part }) => part))];
  return parts.map((part) => {
    const at = row.findIndex((one) => one.part === part);
    const count = row.filter((one) => one.part === part).length;
    const text =
      part === before || part.isContinued === true ? `${part.words}, continued` : part.words;
    return { at, count, lines: cut(text, count) };
  });
}

function isFar({ value }: SupplierPanel, { above }: UpwardScale): boolean {
  return value !== undefined && above(value.high) > HEIGHT;
}

function isEmpty({ value, crude }: SupplierPanel): boolean {
  return value === undefined && crude === undefined;
}

function signsOf(panels: readonly SupplierPanel[], scale: UpwardScale): readonly LegendItem[] {
  const valued = panels.filter(({ value }) => value !== undefined);
  return [
    ...(valued.some(({ isHollow }) => !isHollow)
      ? [{ label: "at the mix, mostly on own numbers", sign: dot(false) }]
      : []),
    ...(valued.some(({ isHollow }) => isHollow)
      ? [{ label: "at the mix, mostly on defaults", sign: dot(true) }]
      : []),
    ...(panels.some(({ crude }) => crude !== undefined)
      ? [{ label: "as it stands, in its own mix", sign: corner }]
      : []),
    ...(panels.some(isEmpty) ? [fillItem("no value", EMPTY)] : []),
    ...(panels.some((panel) => isFar(panel, scale))
      ? [{ label: "beyond the scale", sign: (x: number, y: number) => arrow(x, y - 5) }]
      : []),
  ];
}

function marks(
  panel: SupplierPanel,
  x: number,
  bottom: number,
  scale: UpwardScale,
): readonly DrawingNode[] {
  const { value, crude, isHollow } = panel;
  const y = (number: number): number => bottom - scale.above(number);
  const line = (x1: number, y1: number, x2: number, y2: number, stroke: string): DrawingNode =>
    element("line", { x1, x2, y1, y2, stroke, "stroke-width": stroke === INK ? 1.5 : 1 });
  const [left, right] = [x - ASIDE, x + ASIDE];
  const top = bottom - HEIGHT;
  return [
    ...(value === undefined || crude === undefined
      ? []
      : [line(left, y(crude), right, y(value.median), SOFT)]),
    ...(value === undefined
      ? []
      : [
          line(right, y(value.low), right, isFar(panel, scale) ? top : y(value.high), INK),
          ...(isFar(panel, scale) ? arrow(right, top - 2) : []),
          ...dot(isHollow)(right, y(value.median)),
        ]),
    ...(crude === undefined ? [] : corner(left, y(crude))),
  ];
}

type Sign = LegendItem["sign"];

const corner: Sign = (x, y) => [
  element("path", {
    d: `M${tenth(x)},${tenth(y - 5)}l5,5l-5,5l-5,-5z`,
    fill: WHITE,
    stroke: SOFT,
    "stroke-width": 1.5,
  }),
];

// From its tip downwards.
function arrow(x: number, y: number): readonly DrawingNode[] {
  return [
    element("path", {
      d: `M${tenth(x - 5)},${tenth(y + 8)}l5,-8l5,8`,
      fill: "none",
      stroke: SOFT,
      "stroke-width": 2,
    }),
  ];
}
