import type { Block, ProvenanceShares, ReportDocument } from "../document.js";
import { box } from "./boxes.js";
import { contents, listedChapters } from "./contents.js";
import type { Desk, PdfWords } from "./desk.js";
import { ENGLISH, findPlaces } from "./desk.js";
import { figure } from "./figures.js";
import { frames } from "./frames.js";
import { drawFurniture, footerGrowth, prevailing, setFurniture } from "./furniture.js";
import type { KitElement } from "./kit.js";
import { list, notes } from "./lists.js";
import type { PageOfSlices } from "./pages.js";
import { paginate } from "./pages.js";
import { partingBetween } from "./partings.js";
import type { PdfFonts } from "./pen.js";
import { Paper } from "./paper.js";
import { moment } from "./properties.js";
import { COLUMN, PAGE } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { strip } from "./strips.js";
import { table } from "./tables.js";
import type { Bookmarks } from "./text-blocks.js";
import { heading, imprint, paragraph } from "./text-blocks.js";

/** A file put into the PDF. */
export interface PdfAttachment {
  /** File name. */
  readonly name: string;
  /** Content. */
  readonly bytes: Uint8Array;
  /** Media type, such as `application/json`. */
  readonly mediaType: string;
}

/** What may be asked for beyond the report itself. */
export interface PdfOptions {
  /** The data the report was made from. */
  readonly attachment?: PdfAttachment;
  /** Words of the page in the report's language; English when absent. */
  readonly words?: PdfWords;
}

/** A report as PDF, and what could not be shown in it. */
export interface PdfReport {
  /** The file. */
  readonly bytes: Uint8Array;
  /** Number of pages. */
  readonly pages: number;
  /** Characters shown as a square, by code point, with how often. */
  readonly replaced: ReadonlyMap<string, number>;
  /** Links and references shown as plain text because they lead nowhere or may not be followed. */
  readonly dead: readonly string[];
}

/**
 * Writes a report as a tagged PDF 1.7, made to PDF/UA-1 and PDF/A-3a. The same report and fonts give
 * the same bytes under the same build of the runtime.
 *
 * @param document - the report
 * @param fonts - the typeface, as TrueType
 * @param options - attachment, words
 * @returns the bytes of the file
 * @throws Error when the report breaks its contract, such as a drawing that cannot be drawn
 */
export async function writePdf(
  document: ReportDocument,
  fonts: PdfFonts,
  options: PdfOptions = {},
): Promise<Uint8Array> {
  return (await setPdf(document, fonts, options)).bytes;
}

/**
 * Writes a report as {@link writePdf} does and tells what could not be shown.
 *
 * @param document - the report
 * @param fonts - the typeface, as TrueType
 * @param options - attachment, words
 * @returns the file with its pages and losses
 * @throws Error when the report breaks its contract
 */
export async function setPdf(
  document: ReportDocument,
  fonts: PdfFonts,
  options: PdfOptions = {},
): Promise<PdfReport> {
  const paper = new Paper(document, fonts);
  const base: Desk = {
    paper,
    pen: paper.pen,
    tree: paper.tree,
    words: options.words ?? ENGLISH,
    height: 0,
    replaced: new Map(),
    dead: new Set(),
    marked: new Set(),
    ...findPlaces(document),
  };
  const furniture = setFurniture(document, base);
  const height = PAGE.height - PAGE.top - PAGE.bottom - footerGrowth(furniture);
  const desk: Desk = { ...base, height };
  const column: Measure = { left: PAGE.left, width: COLUMN };
  const bookmarks: Bookmarks = {};
  const set = (blocks: readonly Block[]): readonly Slice[] =>
    setBlocks(blocks, desk, column, paper.tree.root, bookmarks);
  const pageNumbers = new Map<string, number>();
  const chapters = listedChapters(document, desk);
  const [first, rest] = partedAt(document.blocks, chapters[1]?.at);
  const slices = [
    ...imprint(document, desk, column, paper.tree.root),
    ...set(first),
    ...contents(chapters, pageNumbers, desk, column, paper.tree.root),
    ...set(rest),
  ];
  const pages = paginate(slices, height);
  pages.forEach((page, index) => {
    for (const { slice } of page) {
      if (slice.place !== undefined) pageNumbers.set(slice.place, index + 1);
    }
  });
  const drawFrames = frames(pages, desk);
  let shares: ProvenanceShares | "none" | undefined;
  pages.forEach((page, index) => {
    paper.turn();
    drawFrames[index]?.();
    drawPage(page);
    drawFurniture(furniture, index + 1, pages.length, prevailing(page, shares, height), desk);
    paper.finishPage();
    shares = page.findLast(({ slice }) => slice.shares)?.slice.shares ?? shares;
  });
  const { attachment } = options;
  if (attachment) {
    paper.attach(attachment.name, attachment.bytes, attachment.mediaType, moment(document.date));
  }
  return {
    bytes: await paper.close(),
    pages: pages.length,
    replaced: desk.replaced,
    dead: [...desk.dead],
  };
}

function drawPage(page: PageOfSlices): void {
  for (const { slice, top, headed } of page) {
    if (headed && slice.head) slice.head.draw(PAGE.top + top - slice.head.height);
    slice.draw(PAGE.top + top);
  }
}

function setBlocks(
  blocks: readonly Block[],
  desk: Desk,
  measure: Measure,
  parent: KitElement,
  bookmarks: Bookmarks,
): readonly Slice[] {
  return blocks.flatMap((block, index) => {
    const slices = setBlock(block, desk, measure, parent, bookmarks);
    const parting = partingBetween(block, blocks[index + 1]);
    // A text that should stay with what follows is not parted more cheaply within.
    const isText = block.kind === "paragraph" || block.kind === "strip";
    return parting === 0
      ? slices
      : slices.map((slice, at) =>
          isText || at === slices.length - 1 ? { ...slice, parting } : slice,
        );
  });
}

function setBlock(
  block: Block,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
  bookmarks: Bookmarks,
): readonly Slice[] {
  switch (block.kind) {
    case "heading":
      return heading(block, desk, measure, parent, bookmarks);
    case "paragraph":
      return paragraph(block, desk, measure, parent);
    case "list":
      return list(block, desk, measure, parent);
    case "table":
      return table(block, desk, measure, parent);
    case "figure":
      return figure(block, desk, measure, parent);
    case "strip":
      return strip(block, desk, measure, parent);
    case "notes":
      return notes(block, desk, measure, parent);
    case "box":
      return box(block, desk, measure, parent, (inner, place, element) =>
        setBlocks(inner, desk, place, element, bookmarks),
      );
  }
}

function partedAt(
  blocks: readonly Block[],
  at: number | undefined,
): readonly [readonly Block[], readonly Block[]] {
  return at === undefined ? [blocks, []] : [blocks.slice(0, at), blocks.slice(at)];
}
