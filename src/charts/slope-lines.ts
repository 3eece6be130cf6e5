import type { Drawing, DrawingNode } from "./drawing.js";
import { element, LINE_HEIGHT, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { GRID, INK, SOFT, WHITE } from "./palette.js";
import { drawable } from "./ranged.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** A line from column to column. */
export interface SlopeLine {
  /** Name. */
  readonly name: string;
  /** Value in each column; null where there is none. */
  readonly values: readonly (number | null)[];
  /** Both ends of the interval in each column; drawn as whiskers. */
  readonly whiskers?: readonly (readonly [number, number] | null)[];
  /** As printed, in each column. */
  readonly printed: readonly string[];
}

/** Values of several things under several heads. */
export interface SlopeLinesData {
  /** Heads of the columns. */
  readonly columns: readonly string[];
  /** Lines. */
  readonly lines: readonly SlopeLine[];
  /** Whether small values stand on top, as places do. */
  readonly isPlaces: boolean;
  /** Said below: quantity and unit. */
  readonly note: string;
}

const HEIGHT = 210;
const MOST_NAMED = 12;

/**
 * Draws lines from column to column: how values, or places, move from one head to the next. Names stand at both
 * ends, kept clear of each other; of more than twelve lines those that move least go unnamed.
 *
 * @param data - columns and lines
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a value is not finite
 */
export function slopeLines(
  data: SlopeLinesData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const numbers = data.lines.flatMap(({ name, values }) =>
    values.flatMap((value) =>
      value === null ? [] : [drawable(`picture of changes, ${name}`, value)],
    ),
  );
  const [least, most] = boundsOf(data.lines, numbers);
  const named = namedLines(data.lines);
  const room = Math.min(
    0.24 * width,
    Math.max(
      40,
      ...named.map(
        ({ name, printed }) =>
          Math.max(...printed.map((text) => measure(`${name} ${text}`, SMALL_SIZE))) + 18,
      ),
    ),
  );
  const gap = (width - 2 * room) / Math.max(1, data.columns.length - 1);
  const heads = data.columns.map((head) =>
    cutText(head, Math.max(50, gap - 8), 4, (text) => measure(text, SMALL_SIZE)),
  );
  const headRoom = Math.max(...heads.map(({ lines }) => lines.length)) * LINE_HEIGHT + 10;
  const tall = Math.max(HEIGHT, named.length * (LINE_HEIGHT + 3));
  const x = (column: number): number => room + column * gap;
  const y = (value: number): number => {
    const share = most > least ? Math.min(1, Math.max(0, (value - least) / (most - least))) : 0.5;
    return headRoom + 8 + (data.isPlaces ? share : 1 - share) * (tall - 16);
  };
  const note = cutText(data.note, width, 3, (text) => measure(text, SMALL_SIZE));
  const bottom = headRoom + tall;
  const last = data.columns.length - 1;
  const ends = { room: room - 12, bottom: bottom - 7 };
  const isNamed = new Set(named.map(({ name }) => name));
  return sheet(
    bottom + 8 + note.lines.length * LINE_HEIGHT,
    [
      ...heads.flatMap(({ lines }, column) =>
        lines.map((line, i) =>
          words(x(column), 7 + i * LINE_HEIGHT, line, {
            anchor: "middle",
            size: SMALL_SIZE,
            fill: SOFT,
          }),
        ),
      ),
      ...data.columns.map((_, column) =>
        element("line", { x1: x(column), x2: x(column), y1: headRoom, y2: bottom, stroke: GRID }),
      ),
      ...data.lines.flatMap((line) => drawn(line, x, y, isNamed.has(line.name))),
      ...endNames(named, y, { column: 0, x: x(0) - 9, anchor: "end", ...ends }, measure),
      ...endNames(named, y, { column: last, x: x(last) + 9, ...ends }, measure),
      ...note.lines.map((line, i) =>
        words(width, bottom + 12 + i * LINE_HEIGHT, line, {
          anchor: "end",
          size: SMALL_SIZE,
          fill: SOFT,
        }),
      ),
    ],
    width,
  );
}

/** Part of the span of values that whiskers may reach beyond it; longer ones end at the edge. [-] */
const BEYOND = 0.3;

function boundsOf(
  lines: readonly SlopeLine[],
  numbers: readonly number[],
): readonly [number, number] {
  const ends = lines.flatMap(({ name, whiskers = [] }) =>
    whiskers.flatMap((one) =>
      (one ?? []).map((end) => drawable(`picture of changes, ${name}`, end)),
    ),
  );
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  const span = BEYOND * (most - least);
  return [
    Math.max(Math.min(least, ...ends), least - span),
    Math.min(Math.max(most, ...ends), most + span),
  ];
}

function namedLines(lines: readonly SlopeLine[]): readonly SlopeLine[] {
  if (lines.length <= MOST_NAMED) return lines;
  const reach = ({ values }: SlopeLine): number => {
    const there = values.filter((value) => value !== null);
    return Math.max(...there) - Math.min(...there);
  };
  return [...lines].sort((a, b) => reach(b) - reach(a)).slice(0, MOST_NAMED);
}

function drawn(
  { values, whiskers = [] }: SlopeLine,
  x: (column: number) => number,
  y: (value: number) => number,
  isNamed: boolean,
): readonly DrawingNode[] {
  const places = values.flatMap((value, column) =>
    value === null ? [] : [{ x: x(column), y: y(value) }],
  );
  const colour = isNamed ? INK : SOFT;
  return [
    ...whiskers.flatMap((ends, column) =>
      ends === null
        ? []
        : [
            element("line", {
              x1: x(column),
              x2: x(column),
              y1: y(ends[0]),
              y2: y(ends[1]),
              stroke: colour,
              "stroke-width": isNamed ? 1.5 : 0.75,
            }),
          ],
    ),
    ...places.slice(1).map((to, i) =>
      element("line", {
        x1: places[i]?.x ?? 0,
        y1: places[i]?.y ?? 0,
        x2: to.x,
        y2: to.y,
        stroke: colour,
        "stroke-width": isNamed ? 1.5 : 0.75,
      }),
    ),
    ...places.map((place) =>
      element("circle", {
        cx: place.x,
        cy: place.y,
        r: isNamed ? 4 : 2.5,
        fill: isNamed ? INK : WHITE,
        stroke: colour,
      }),
    ),
  ];
}

interface NameColumn {
  readonly column: number;
  readonly x: number;
  readonly anchor?: "end";
  readonly room: number;
  readonly bottom: number;
}

// Names that would lie on each other are pushed apart, from the top down and back up from the lower edge.
function endNames(
  lines: readonly SlopeLine[],
  y: (value: number) => number,
  { column, x, anchor, room, bottom }: NameColumn,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const placed = lines
    .flatMap((line) => {
      const value = line.values[column];
      return value === null || value === undefined ? [] : [{ line, at: y(value) }];
    })
    .sort((a, b) => a.at - b.at);
  for (let i = 1; i < placed.length; i++)
    placed[i]!.at = Math.max(placed[i]!.at, placed[i - 1]!.at + LINE_HEIGHT);
  let limit = bottom;
  for (const one of [...placed].reverse()) {
    one.at = Math.min(one.at, limit);
    limit = one.at - LINE_HEIGHT;
  }
  return placed.flatMap(({ line, at }) =>
    cutText(`${line.name} ${line.printed[column] ?? ""}`.trim(), room, 1, (text) =>
      measure(text, SMALL_SIZE),
    ).lines.map((text) =>
      words(x, at, text, { size: SMALL_SIZE, ...(anchor === undefined ? {} : { anchor }) }),
    ),
  );
}
