import type { ReportDocument } from "../document.js";
import type { Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import type { Line } from "./lines.js";
import { breakLines } from "./lines.js";
import type { Link } from "./link.js";
import { drawLine, textSlices } from "./set-line.js";
import { baseline, STYLES, WHITE } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { tie } from "./slices.js";
import type { Span } from "./spans.js";
import { spans } from "./spans.js";

/** Fewer chapters are found without a list. */
const FEWEST = 6;

const STYLE = STYLES.cell;
const BETWEEN = 1.6;
const UNDER_TITLE = 4;
const GAP = 28;
const NUMBER_ROOM = 24;

/** A chapter that the contents name. */
export interface ListedChapter {
  /** Its heading. */
  readonly text: string;
  /** Name of the place of its heading. */
  readonly place: string;
  /** Index of its heading among the blocks of the report. */
  readonly at: number;
}

/**
 * Finds the chapters that the contents name.
 *
 * @param document - the report
 * @param desk - places
 * @returns chapters in order; none where there are too few to list
 */
export function listedChapters(document: ReportDocument, desk: Desk): readonly ListedChapter[] {
  const chapters = document.blocks.flatMap((block, at) => {
    if (block.kind !== "heading" || block.level !== 2) return [];
    const place = desk.places.get(block.id);
    return place === undefined ? [] : [{ text: block.text, place, at }];
  });
  return chapters.length < FEWEST ? [] : chapters;
}

/**
 * Sets the contents in two columns: chapters with the numbers of their pages.
 *
 * @param chapters - chapters in order
 * @param pages - number of the page by place; filled once all pages are dealt out
 * @param desk - pages
 * @param measure - place in the column
 * @param parent - element of the structure above
 * @returns slices that stay together; none without chapters
 */
export function contents(
  chapters: readonly ListedChapter[],
  pages: ReadonlyMap<string, number>,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  if (chapters.length === 0) return [];
  const heading = desk.tree.element("P", parent);
  const title = [{ kind: "text", text: desk.words.contents } as const];
  const lines = breakLines(spans(title, STYLES.section, desk), measure.width);
  const whole = desk.tree.element("TOC", parent);
  const width = (measure.width - GAP) / 2;
  const entries = chapters.map(({ text, place }): Entry => {
    const element = desk.tree.element("TOCI", whole);
    const link: Link = { to: { place }, says: text, reference: true };
    const name = breakLines(linked(text, link, desk), width - NUMBER_ROOM);
    return { name, link, place, element };
  });
  const count = Math.ceil(entries.length / 2);
  const rows = Array.from({ length: count }, (_, row): Slice => {
    const pair = [entries[row], entries[row + count]];
    const lines = Math.max(...pair.map((entry) => entry?.name.length ?? 0));
    return {
      height: lines * STYLE.leading + BETWEEN,
      draw: (top) => {
        pair.forEach((entry, side) => {
          if (!entry) return;
          const left = measure.left + side * (width + GAP);
          drawEntry(entry, pages.get(entry.place) ?? 0, [left, width], top, desk);
        });
      },
    };
  });
  const slices = tie([...textSlices(lines, STYLES.section, measure.left, heading, desk), ...rows]);
  return slices.map((slice, index) => ({
    ...slice,
    ...(index === 0 ? { before: WHITE.section } : {}),
    ...(index === lines.length - 1 ? { after: UNDER_TITLE } : {}),
    ...(index === slices.length - 1 ? { after: WHITE.block } : {}),
  }));
}

interface Entry {
  readonly name: readonly Line[];
  readonly link: Link;
  readonly place: string;
  readonly element: KitElement;
}

function linked(text: string, link: Link, desk: Desk): readonly Span[] {
  const set = spans([{ kind: "text", text }], STYLE, desk, { digits: true });
  return set.map((span) => ({ ...span, link }));
}

function drawEntry(
  { name, link, element }: Entry,
  page: number,
  [left, width]: readonly [number, number],
  top: number,
  desk: Desk,
): void {
  name.forEach((line, index) => {
    drawLine(line, left, top + index * STYLE.leading + baseline(STYLE), element, desk);
  });
  const number = breakLines(linked(String(page), link, desk), Infinity)[0];
  const y = top + (name.length - 1) * STYLE.leading + baseline(STYLE);
  if (number) drawLine(number, left + width - number.width, y, element, desk);
}
