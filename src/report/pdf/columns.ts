import type { Cell } from "../document.js";
import { extent } from "./lines.js";
import type { Span } from "./spans.js";

/** A cell ready to be broken into lines. */
export interface SetCell {
  /** The cell. */
  readonly cell: Cell;
  /** Its text. */
  readonly spans: readonly Span[];
  /** First column it stands in, from 0. */
  readonly column: number;
  /** Columns it spans. */
  readonly span: number;
}

// An empty column still shows that it is there. [pt]
const NARROWEST = 6;

/** What the texts of the columns ask for. [pt] */
export interface Needs {
  /** Longest word of each column. */
  readonly least: readonly number[];
  /** Width at which each column would not have to wrap, headings apart. */
  readonly wish: readonly number[];
}

/**
 * Measures the texts of a table.
 *
 * @param head - headings of the columns
 * @param rows - rows below them
 * @param count - number of columns
 * @returns what each column asks for; cells over several columns ask for nothing
 */
export function columnNeeds(
  head: readonly SetCell[],
  rows: readonly (readonly SetCell[])[],
  count: number,
): Needs {
  const least = new Array<number>(count).fill(NARROWEST);
  const wish = new Array<number>(count).fill(NARROWEST);
  const ask = ({ spans, column, span }: SetCell, lines: number): void => {
    if (span > 1) return;
    const needs = extent(spans);
    least[column] = Math.max(least[column] ?? 0, needs.least);
    wish[column] = Math.max(wish[column] ?? 0, needs.least, needs.full / lines);
  };
  // Headings may well take two lines; what stands below them would rather have one.
  for (const cell of head) ask(cell, 2);
  for (const row of rows) for (const cell of row) ask(cell, 1);
  return { least, wish };
}

/**
 * Finds the widths of a table's columns: the given shares, or else as the texts ask for. No column
 * gets narrower than its longest word as long as the others can give way.
 *
 * @param needs - what the texts ask for
 * @param shares - relative widths, if given; ignored unless there is one above 0 for each column
 * @param width - width of the table without the gaps between columns [pt]
 * @returns widths that add up to `width` [pt]
 */
export function columnWidths(
  needs: Needs,
  shares: readonly number[] | undefined,
  width: number,
): readonly number[] {
  const { least, wish } = needs;
  const given =
    shares?.length === least.length && shares.every((share) => share > 0 && share < Infinity);
  return giveWay(given ? stretched(shares, width) : levelled(wish, width), fitting(least, width));
}

function stretched(wish: readonly number[], width: number): readonly number[] {
  const scale = width / sum(wish);
  return wish.map((wanted) => wanted * scale);
}

// Where there is too little room the longest texts wrap first, and down to the same width.
function levelled(wish: readonly number[], width: number): readonly number[] {
  if (sum(wish) <= width) return stretched(wish, width);
  let [low, high] = [0, Math.max(...wish)];
  for (let step = 0; step < 50; step += 1) {
    const level = (low + high) / 2;
    if (sum(wish.map((wanted) => Math.min(wanted, level))) <= width) low = level;
    else high = level;
  }
  return wish.map((wanted) => Math.min(wanted, low));
}

// Words that cannot all have their length get a share of the table each; they will be parted.
function fitting(least: readonly number[], width: number): readonly number[] {
  if (sum(least) <= width) return least;
  const even = width / least.length;
  const modest = sum(least.map((needed) => Math.min(needed, even)));
  const rest = sum(least.map((needed) => Math.max(0, needed - even)));
  return least.map(
    (needed) =>
      Math.min(needed, even) + (Math.max(0, needed - even) / rest) * Math.max(0, width - modest),
  );
}

function giveWay(widths: readonly number[], least: readonly number[]): readonly number[] {
  const lack = sum(widths.map((width, index) => Math.max(0, (least[index] ?? 0) - width)));
  const spare = sum(widths.map((width, index) => Math.max(0, width - (least[index] ?? 0))));
  if (lack === 0 || spare === 0) return widths;
  const share = Math.min(1, lack / spare);
  return widths.map((width, index) => {
    const needed = least[index] ?? 0;
    return width < needed ? needed : width - (width - needed) * share;
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
