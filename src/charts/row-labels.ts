import type { DrawingNode } from "./drawing.js";
import { swatch } from "./legend.js";
import { LETTER_SIZE, LINE_HEIGHT, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { ROUTE_FILLS, type Route, SOFT } from "./palette.js";
import { cutText, type TextMeasure } from "./text-width.js";

/** What stands to the left of a row. */
export interface RowLabel {
  /** Name of the row. */
  readonly name: string;
  /** Said below it in small letters; nothing when absent. */
  readonly note?: string;
  /** Route whose sample stands before the name. */
  readonly route?: Route;
}

/** How much room labels may take. */
export interface LabelRoom {
  /** Longest line. */
  readonly width: number;
  /** Most lines of a name. */
  readonly lines: number;
}

const ROOM: LabelRoom = { width: 150, lines: 3 };

/**
 * Finds how much room labels may take on a sheet.
 *
 * @param width - width of the sheet
 * @returns room for each label
 */
export function labelRoom(width: number): LabelRoom {
  return { ...ROOM, width: width >= SHEET_WIDTH ? ROOM.width : 0.25 * width };
}
const SAMPLE = 10;
const AFTER_SAMPLE = 6;

/** Labels laid out in a column. */
export interface LabelColumn {
  /** Width of the column, with room to its right. */
  readonly width: number;
  /** Height of each label. */
  readonly heights: readonly number[];
  /** Draws the label of one row around a height. */
  readonly draw: (row: number, y: number) => readonly DrawingNode[];
}

/**
 * Lays out the labels of rows, from the left edge of the sheet.
 *
 * @param labels - one for each row
 * @param measure - measures text
 * @param room - room for each label
 * @returns the column
 */
export function labelColumn(
  labels: readonly RowLabel[],
  measure: TextMeasure,
  room: LabelRoom = ROOM,
): LabelColumn {
  const laid = labels.map(({ name, note, route }) => {
    const names = cutText(name, room.width, room.lines, (text) =>
      measure(text, LETTER_SIZE, "semibold"),
    );
    const notes =
      note === undefined
        ? { lines: [], width: 0 }
        : cutText(note, room.width, 2, (text) => measure(text, SMALL_SIZE));
    const indent = route === undefined ? 0 : SAMPLE + AFTER_SAMPLE;
    return { names, notes, route, indent, width: indent + Math.max(names.width, notes.width) };
  });
  const draw = (row: number, y: number): readonly DrawingNode[] => {
    const label = laid[row];
    if (label === undefined) return [];
    const { names, notes, route, indent } = label;
    const count = names.lines.length + notes.lines.length;
    let at = y - ((count - 1) * LINE_HEIGHT) / 2;
    const nodes: DrawingNode[] = [];
    if (route !== undefined) {
      nodes.push(...swatch(SAMPLE / 2, at, SAMPLE, SAMPLE, ROUTE_FILLS[route]));
    }
    for (const line of names.lines) {
      nodes.push(words(indent, at, line, { strong: true }));
      at += LINE_HEIGHT;
    }
    for (const line of notes.lines) {
      nodes.push(words(indent, at, line, { size: SMALL_SIZE, fill: SOFT }));
      at += LINE_HEIGHT;
    }
    return nodes;
  };
  return {
    width: Math.ceil(Math.max(0, ...laid.map(({ width }) => width))) + 12,
    heights: laid.map(
      ({ names, notes }) => (names.lines.length + notes.lines.length) * LINE_HEIGHT,
    ),
    draw,
  };
}
