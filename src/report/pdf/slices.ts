import type { ProvenanceShares } from "../document.js";
import type { Colour } from "./sheet.js";

/** A frame around what it holds, drawn on each page it reaches. */
export interface Frame {
  /** Left edge. [pt] */
  readonly left: number;
  /** Length of the upper and lower edge. [pt] */
  readonly width: number;
  /** Weight of the line. [pt] */
  readonly weight: number;
  /** Colour of the line. */
  readonly colour: Colour;
}

/** A piece of the column from edge to edge that is never cut. */
export interface Slice {
  /** Height. [pt] */
  readonly height: number;
  /** White above it, unless it opens a page. [pt] */
  readonly before?: number;
  /** White below it, unless it closes a page; the greater of two whites counts. [pt] */
  readonly after?: number;
  /** Stands on the same page as the next slice. */
  readonly tied?: boolean;
  /** What it costs to end a page below it; nothing when absent. */
  readonly parting?: number;
  /** Place that stands at its top, whose page the contents print. */
  readonly place?: string;
  /** Opens a page. */
  readonly newPage?: boolean;
  /** Put on top again when this slice opens a page. */
  readonly head?: { readonly height: number; readonly draw: (top: number) => void };
  /** Provenance shown beside the column from here on; "none" ends it, as a new chapter does. */
  readonly shares?: ProvenanceShares | "none";
  /** Frames it stands in, from the outermost. */
  readonly frames?: readonly Frame[];
  /** Draws it, given its upper edge. */
  readonly draw: (top: number) => void;
}

/** Where in the column a block is set. */
export interface Measure {
  /** Left edge. [pt] */
  readonly left: number;
  /** Length of a full line. [pt] */
  readonly width: number;
}

/**
 * Ties slices so that all of them stand on one page if a page can hold them.
 *
 * @param slices - slices in order
 * @param next - tie the last one to what follows as well
 * @returns the slices, tied
 */
export function tie(slices: readonly Slice[], next = false): readonly Slice[] {
  return slices.map((slice, index) =>
    next || index < slices.length - 1 ? { ...slice, tied: true } : slice,
  );
}

/**
 * Adds up slices and the white between them.
 *
 * @param slices - slices in order
 * @returns their height on one page, without the white above the first [pt]
 */
export function heightOf(slices: readonly Slice[]): number {
  return slices.reduce(
    (sum, slice, index) => sum + whiteAbove(slices[index - 1], slice) + slice.height,
    0,
  );
}

/**
 * Finds the white between two slices.
 *
 * @param above - slice above; none at the top of a page
 * @param below - slice below
 * @returns the greater of the two whites they ask for [pt]
 */
export function whiteAbove(above: Slice | undefined, below: Slice): number {
  return above ? Math.max(above.after ?? 0, below.before ?? 0) : 0;
}
