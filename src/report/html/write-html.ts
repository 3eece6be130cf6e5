import type { Block, Drawing, ReportDocument } from "../document.js";
import { formatDate } from "../format.js";
import { blocksHtml } from "./blocks.js";
import type { Markup } from "./markup.js";
import { element, joined, trusted } from "./markup.js";
import type { BlockOf, DrawingNames, Page } from "./page.js";
import { findPlaces, PAGE_ANCHORS } from "./places.js";
import { policy } from "./policy.js";
import { SCRIPT } from "./script.js";
import { PATTERNS } from "./strip.js";
import type { HtmlFonts } from "./styles.js";
import { styleSheet } from "./styles.js";
import { tracesHtml } from "./traces.js";
import type { HtmlWords } from "./words.js";
import { ENGLISH } from "./words.js";

/** What a page needs beside the report. */
export interface HtmlAssets {
  /** The typeface, put into the page. */
  readonly fonts: HtmlFonts;
  /**
   * Writes a picture as an SVG element with `role="img"`, title and description. Its result goes into
   * the page as it is: texts in it must be escaped, and ids must begin with the given one.
   */
  readonly drawingSvg: (drawing: Drawing, names: DrawingNames) => string;
}

/**
 * Writes a report as one HTML page that needs nothing else: typeface, pictures, style and script are
 * inside, and its content security policy lets nothing in from outside. The same report gives the
 * same bytes.
 *
 * @param document - the report
 * @param assets - typeface and pictures
 * @param words - words of the page in the report's language
 * @returns the page
 * @throws Error when the report breaks its contract, such as a reference to a figure it does not hold
 */
export function writeHtml(
  document: ReportDocument,
  assets: HtmlAssets,
  words: HtmlWords = ENGLISH,
): string {
  const page: Page = {
    document,
    words,
    places: findPlaces(document),
    drawingSvg: assets.drawingSvg,
    marked: new Set(),
  };
  const { title, rest } = parted(document);
  const style = styleSheet(assets.fonts);
  // Notes lead back to the marks in the text, so the text is written before the traces.
  const text = blocksHtml(rest, page);
  const traces = tracesHtml(page);
  const html = element(
    "html",
    { lang: document.language },
    element(
      "head",
      {},
      element("meta", { charset: "utf-8" }),
      element("meta", {
        "http-equiv": "Content-Security-Policy",
        content: policy(style, SCRIPT),
      }),
      element("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      element("meta", { name: "author", content: document.author }),
      element("title", {}, document.title),
      trusted(`<style>${style}</style>`),
    ),
    element(
      "body",
      {},
      element("a", { class: "skip", href: `#${PAGE_ANCHORS.text}` }, words.skip),
      PATTERNS,
      element(
        "header",
        {},
        element(
          "p",
          { class: "imprint" },
          `${document.author} \u00b7 ${formatDate(document.date)}`,
        ),
        title === undefined
          ? element("h1", {}, document.title)
          : element("h1", { id: page.places.anchors.get(title) }, title.text),
      ),
      contentsHtml(rest, traces !== undefined, page),
      element("main", { id: PAGE_ANCHORS.text }, text, traces),
      element("footer", { class: "foot" }, document.footer),
      trusted(`<script>${SCRIPT}</script>`),
    ),
  );
  return `<!doctype html>\n${html.html}\n`;
}

// The title stands in the head of the page where the report begins with it.
function parted({ blocks }: ReportDocument): {
  readonly title: BlockOf<"heading"> | undefined;
  readonly rest: readonly Block[];
} {
  const [first, ...rest] = blocks;
  return first?.kind === "heading" && first.level === 1
    ? { title: first, rest }
    : { title: undefined, rest: blocks };
}

function contentsHtml(
  blocks: readonly Block[],
  traced: boolean,
  { places, words }: Page,
): Markup | undefined {
  const chapters = blocks.flatMap((block) =>
    block.kind === "heading" && block.level === 2
      ? [{ anchor: places.anchors.get(block) ?? "", text: block.text }]
      : [],
  );
  const listed = traced
    ? [...chapters, { anchor: PAGE_ANCHORS.numbers, text: words.traces }]
    : chapters;
  if (listed.length < 2) return undefined;
  return joined(
    element(
      "nav",
      { "aria-labelledby": PAGE_ANCHORS.contents },
      element("h2", { id: PAGE_ANCHORS.contents }, words.contents),
      element(
        "ol",
        {},
        listed.map(({ anchor, text }) =>
          element("li", {}, element("a", { href: `#${anchor}` }, text)),
        ),
      ),
    ),
  );
}
