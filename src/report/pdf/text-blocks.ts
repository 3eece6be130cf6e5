import type { ReportDocument, Run } from "../document.js";
import { formatDate } from "../format.js";
import type { BlockOf, Desk } from "./desk.js";
import type { KitElement, KitOutline } from "./kit.js";
import { breakLines } from "./lines.js";
import { textSlices } from "./set-line.js";
import type { TextStyle } from "./sheet.js";
import { LONGEST_LINE, STYLES, WHITE } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { tie } from "./slices.js";
import { spans } from "./spans.js";

/** The bookmarks open at each level while headings are set. */
export interface Bookmarks {
  /** Bookmark of the chapter being set. */
  chapter?: KitOutline;
}

const HEADINGS = {
  1: { type: "H1", style: STYLES.title, before: 4, after: 8 },
  2: { type: "H2", style: STYLES.chapter, before: WHITE.chapter, after: 5 },
  3: { type: "H3", style: STYLES.section, before: WHITE.section, after: 3 },
} as const;

/**
 * Sets a heading; it stays with what follows, has a bookmark and can be led to.
 *
 * @param block - the heading
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @param bookmarks - bookmarks open so far
 * @returns one slice a line
 */
export function heading(
  block: BlockOf<"heading">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
  bookmarks: Bookmarks,
): readonly Slice[] {
  const { type, style, before, after } = HEADINGS[block.level];
  const element = desk.tree.element(type, parent);
  const lines = breakLines(spans([{ kind: "text", text: block.text }], style, desk), measure.width);
  const place = desk.places.get(block.id);
  const slices = tie(textSlices(lines, style, measure.left, element, desk), true);
  return slices.map((slice, index) => ({
    ...slice,
    ...(index === 0
      ? {
          before,
          newPage: block.newPage === true,
          ...(block.level < 3 ? { shares: "none" as const } : {}),
          ...(place === undefined ? {} : { place }),
        }
      : {}),
    ...(index === slices.length - 1 ? { after } : {}),
    draw: (top) => {
      if (index === 0) {
        const { paper } = desk;
        if (place !== undefined) paper.place(place, top - 8);
        if (block.level === 3) paper.bookmark(block.text, top - 8, bookmarks.chapter);
        else bookmarks.chapter = paper.bookmark(block.text, top - 8);
      }
      slice.draw(top);
    },
  }));
}

/**
 * Sets a paragraph.
 *
 * @param block - runs and tone
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @returns one slice a line
 */
export function paragraph(
  block: BlockOf<"paragraph">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const style = STYLES[block.tone ?? "body"];
  const element = desk.tree.element("P", parent);
  const lines = runLines(block.runs, style, desk, measure.width);
  return spaced(textSlices(lines, style, measure.left, element, desk), WHITE.paragraph);
}

/**
 * Sets the print house and the date above the title.
 *
 * @param document - print house and date
 * @param desk - pages
 * @param measure - place in the column
 * @param parent - element of the structure above
 * @returns one slice a line
 */
export function imprint(
  document: ReportDocument,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const style = STYLES.small;
  const text = `${document.author} \u00b7 ${formatDate(document.date.slice(0, 10))}`;
  const element = desk.tree.element("P", parent);
  const lines = runLines([{ kind: "text", text }], style, desk, measure.width);
  return tie(textSlices(lines, style, measure.left, element, desk), true);
}

function runLines(
  runs: readonly Run[],
  style: TextStyle,
  desk: Desk,
  width: number,
): ReturnType<typeof breakLines> {
  // Small print is looked up, not read through: it may fill the column.
  const longest = style === STYLES.small || style === STYLES.dense ? width : LONGEST_LINE;
  return breakLines(spans(runs, style, desk), Math.min(width, longest));
}

function spaced(slices: readonly Slice[], before: number): readonly Slice[] {
  return slices.map((slice, index) => (index === 0 ? { ...slice, before } : slice));
}
