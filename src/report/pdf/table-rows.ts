import type { Cell } from "../document.js";
import type { SetCell } from "./columns.js";
import type { Desk } from "./desk.js";
import type { Grid } from "./grid.js";
import type { KitElement } from "./kit.js";
import type { Line } from "./lines.js";
import { breakLines } from "./lines.js";
import { drawLine } from "./set-line.js";
import type { TextStyle } from "./sheet.js";
import { baseline } from "./sheet.js";
import { spans } from "./spans.js";

/** A cell broken into lines. */
export interface BrokenCell {
  /** The cell. */
  readonly set: SetCell;
  /** Its lines. */
  readonly lines: readonly Line[];
  /** Left edge. [pt] */
  readonly left: number;
  /** Width. [pt] */
  readonly width: number;
}

/**
 * Puts the cells of a row into their columns.
 *
 * @param row - cells from left to right
 * @param count - number of columns; cells beyond it are refused
 * @param style - style of the text
 * @param desk - faces
 * @param aligns - alignment by column for cells that state none
 * @returns cells with their texts
 * @throws Error when a row is longer than the table is wide
 */
export function setRow(
  row: readonly Cell[],
  count: number,
  style: TextStyle,
  desk: Desk,
  aligns: readonly Cell["align"][] = [],
): readonly SetCell[] {
  let column = 0;
  return row.map((cell) => {
    const span = Math.max(1, Math.floor(cell.span ?? 1));
    const align = cell.align ?? aligns[column] ?? "left";
    const look = { strong: cell.strong === true, digits: align === "right" };
    const set: SetCell = {
      cell: { ...cell, align },
      spans: spans(cell.runs, style, desk, look),
      column,
      span,
    };
    column += span;
    if (column > count) {
      throw new Error(
        `a table row has ${column} columns; expected at most the ${count} of its headings; shorten the row or add headings`,
      );
    }
    return set;
  });
}

/**
 * Breaks the texts of a row into lines.
 *
 * @param row - cells with their texts
 * @param grid - columns
 * @returns cells with their lines
 */
export function breakRow(row: readonly SetCell[], grid: Grid): readonly BrokenCell[] {
  return row.map((set) => {
    const left = grid.lefts[set.column] ?? 0;
    const last = set.column + set.span - 1;
    const width = (grid.lefts[last] ?? 0) + (grid.widths[last] ?? 0) - left;
    return { set, left, width, lines: breakLines(set.spans, width) };
  });
}

/**
 * Lets the texts of a row end on the same line, as headings of columns do.
 *
 * @param row - cells with their lines
 * @returns the cells, with empty lines above the shorter texts
 */
export function sink(row: readonly BrokenCell[]): readonly BrokenCell[] {
  const count = lineCount(row);
  return row.map((cell) => ({
    ...cell,
    lines: [...Array.from({ length: count - cell.lines.length }, () => EMPTY), ...cell.lines],
  }));
}

/**
 * Counts the lines of a row.
 *
 * @param row - cells with their lines
 * @returns lines of the longest cell, at least 1
 */
export function lineCount(row: readonly BrokenCell[]): number {
  return Math.max(1, ...row.map(({ lines }) => lines.length));
}

const EMPTY: Line = { pieces: [], width: 0 };

/**
 * Draws lines of a row.
 *
 * @param row - cells with their lines
 * @param elements - element of the structure for each cell; none inside an artifact
 * @param style - style of the text
 * @param top - upper edge of the first line drawn [pt]
 * @param part - first line to draw and the one after the last
 * @param desk - pages
 */
export function drawRow(
  row: readonly BrokenCell[],
  elements: readonly KitElement[] | undefined,
  style: TextStyle,
  top: number,
  part: readonly [number, number],
  desk: Desk,
): void {
  row.forEach((cell, index) => {
    const element = elements?.[index];
    cell.lines.slice(...part).forEach((line, number) => {
      if (line.pieces.length === 0) return;
      drawLine(
        line,
        cell.set.cell.align === "right" ? cell.left + cell.width - line.width : cell.left,
        top + number * style.leading + baseline(style),
        element,
        desk,
      );
    });
  });
}
