import { parseHTML } from "linkedom";
import { svgText } from "../../../src/charts/svg.js";
import type { Block, ReportDocument } from "../../../src/report/document.js";
import type { Markup } from "../../../src/report/html/markup.js";
import type { Page } from "../../../src/report/html/page.js";
import { findPlaces } from "../../../src/report/html/places.js";
import { ENGLISH } from "../../../src/report/html/words.js";
import { writeHtml } from "../../../src/report/html/write-html.js";
import { page as report } from "./sample-page.js";

/** What a writer of blocks is given for a report of these blocks. */
export function pageOf(blocks: readonly Block[], rest: Partial<ReportDocument> = {}): Page {
  const document = report(blocks, rest);
  return {
    document,
    words: ENGLISH,
    places: findPlaces(document),
    drawingSvg: svgText,
    marked: new Set(),
  };
}

/** Reads markup as a browser would. */
export function read({ html }: Markup): HTMLElement {
  const { document } = parseHTML(`<!doctype html><html><body>${html}</body></html>`);
  return document.body;
}

/** Writes a whole report with letters in place of the typeface. */
export function written(document: ReportDocument): string {
  const fonts = { regular: "AAAA", semibold: "BBBB", italic: "CCCC" };
  return writeHtml(document, { fonts, drawingSvg: svgText });
}
