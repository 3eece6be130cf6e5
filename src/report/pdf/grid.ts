import type { SetCell } from "./columns.js";
import { columnNeeds, columnWidths } from "./columns.js";
import type { TextStyle } from "./sheet.js";
import { SMALLEST } from "./sheet.js";
import type { Measure } from "./slices.js";

/** Where the columns of a table stand. */
export interface Grid {
  /** Left edges. [pt] */
  readonly lefts: readonly number[];
  /** Widths. [pt] */
  readonly widths: readonly number[];
}

/** A table whose columns have their places. */
export interface LaidTable {
  /** Columns. */
  readonly grid: Grid;
  /** Headings. */
  readonly head: readonly SetCell[];
  /** Rows below them. */
  readonly rows: readonly (readonly SetCell[])[];
  /** Style of the text, smaller where there are many columns. */
  readonly style: TextStyle;
}

/** White between two columns at least. [pt] */
const CLOSEST = 5;

/**
 * Finds room for the columns. Where the longest words would not fit, the columns first move closer
 * together, then the letters get smaller; only then are words parted.
 *
 * @param head - headings
 * @param rows - rows below them
 * @param shares - relative widths, if given
 * @param style - style of the text
 * @param gap - white between two columns [pt]
 * @param measure - place of the table
 * @returns columns, and the cells in their final size
 */
export function layTable(
  head: readonly SetCell[],
  rows: readonly (readonly SetCell[])[],
  shares: readonly number[] | undefined,
  style: TextStyle,
  gap: number,
  measure: Measure,
): LaidTable {
  const count = head.reduce((sum, { span }) => sum + span, 0);
  const gaps = Math.max(1, count - 1);
  const needs = columnNeeds(head, rows, count);
  const total = needs.least.reduce((sum, width) => sum + width, 0);
  const between = Math.max(CLOSEST, Math.min(gap, (measure.width - total) / gaps));
  const room = Math.max(count, measure.width - between * (count - 1));
  const scale = Math.max(Math.min(1, SMALLEST / style.size), Math.min(1, room / total));
  const shrink = (width: number): number => width * scale;
  const shrunk = { least: needs.least.map(shrink), wish: needs.wish.map(shrink) };
  const widths = columnWidths(shrunk, shares, room);
  let left = measure.left;
  const lefts = widths.map((width) => {
    const own = left;
    left += width + between;
    return own;
  });
  return {
    grid: { lefts, widths },
    head: scaled(head, scale),
    rows: rows.map((row) => scaled(row, scale)),
    style: { ...style, size: style.size * scale, leading: style.leading * scale },
  };
}

function scaled(row: readonly SetCell[], scale: number): readonly SetCell[] {
  if (scale === 1) return row;
  return row.map((cell) => ({
    ...cell,
    spans: cell.spans.map((span) => ({
      ...span,
      size: span.size * scale,
      rise: span.rise * scale,
    })),
  }));
}
