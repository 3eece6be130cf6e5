import type { Figure, FigureTerm } from "../document.js";
import { digitsFor, formatInterval, formatNumber, formatPercent } from "../format.js";
import { intervalWords, valueWords } from "./figure-words.js";
import type { Markup } from "./markup.js";
import { element, joined } from "./markup.js";
import type { Page } from "./page.js";
import { PAGE_ANCHORS, type Mention } from "./places.js";
import { figureOf } from "./runs.js";
import { sharesHtml } from "./strip.js";

/** Most terms of a figure that are written out. */
const MOST_TERMS = 12;

const NO_BREAK = "\u00a0";

/**
 * Writes where the numbers of the text come from: an entry for each figure that the text shows.
 *
 * @param page - shown figures
 * @returns a section; nothing where the text shows no figure
 * @throws Error when a figure is shown that the report does not hold
 */
export function tracesHtml(page: Page): Markup | undefined {
  const { words } = page;
  const groups = new Map<string, { readonly part: string; readonly entries: Markup[] }>();
  for (const [id, { anchor, mentions }] of page.places.shown) {
    const [first] = mentions;
    if (!first) continue;
    const group = groups.get(first.anchor) ?? { part: first.part, entries: [] };
    groups.set(first.anchor, group);
    group.entries.push(entryHtml(id, anchor, mentions, page));
  }
  if (groups.size === 0) return undefined;
  const hasTerms = [...page.places.shown.keys()].some(
    (id) => figureOf(id, page).terms !== undefined,
  );
  return element(
    "section",
    { class: "traces", "aria-labelledby": PAGE_ANCHORS.numbers },
    element("h2", { id: PAGE_ANCHORS.numbers }, words.traces),
    element("p", { class: "screen" }, hasTerms ? words.tracesLead : words.tracesPlain),
    hasTerms ? element("p", { class: "printed" }, words.tracesPrinted) : undefined,
    [...groups.values()].map(({ part, entries }) =>
      element(
        "details",
        { class: "group" },
        element(
          "summary",
          {},
          part,
          " ",
          element("span", { class: "many" }, words.many(entries.length)),
        ),
        entries,
      ),
    ),
  );
}

function entryHtml(id: string, anchor: string, mentions: readonly Mention[], page: Page): Markup {
  const { words } = page;
  const figure = figureOf(id, page);
  const interval = intervalWords(figure);
  const [first] = mentions;
  return element(
    "details",
    { class: "trace", id: anchor },
    element(
      "summary",
      {},
      element("span", { class: "value" }, valueWords(figure)),
      " ",
      element("span", { class: "where" }, first?.spot),
    ),
    element(
      "dl",
      {},
      element("dt", {}, sentenceCase(words.of[figure.of])),
      element("dd", {}, valueWords(figure)),
      interval === undefined
        ? undefined
        : joined(
            element("dt", {}, words.interval),
            element("dd", {}, `${interval}${figure.unit === "" ? "" : NO_BREAK + figure.unit}`),
          ),
      element("dt", {}, words.standsIn),
      element(
        "dd",
        {},
        mentions.map((mention, index) =>
          joined(
            index === 0 ? "" : "; ",
            element("a", { href: `#${mention.anchor}` }, placeWords(mention)),
          ),
        ),
      ),
      figure.provenance === undefined
        ? undefined
        : joined(
            element("dt", {}, words.comesFrom),
            element("dd", {}, sharesHtml(figure.provenance, page)),
          ),
    ),
    figure.terms === undefined || figure.terms.length === 0
      ? undefined
      : termsHtml(figure, figure.terms, anchor, page),
  );
}

function termsHtml(
  figure: Figure,
  terms: readonly FigureTerm[],
  anchor: string,
  page: Page,
): Markup {
  const words = page.words.terms;
  const { over } = figure;
  const rows = terms
    .slice(0, MOST_TERMS)
    .map((term) => termHtml(term, over === undefined ? figure.unit : over.unit));
  const left = terms.slice(MOST_TERMS);
  const share = left.reduce((sum, term) => sum + term.share, 0);
  const caption = `${anchor}-terms`;
  return element(
    "div",
    { class: "scroll", role: "group", tabindex: 0, "aria-labelledby": caption },
    element(
      "table",
      {},
      element(
        "caption",
        { id: caption },
        words.caption,
        over === undefined ? undefined : ` \u00f7 ${formatNumber(over.units, 0)} ${over.words}`,
      ),
      element(
        "thead",
        {},
        element(
          "tr",
          {},
          element("th", { scope: "col" }, words.step),
          element("th", { scope: "col" }, words.flow),
          element("th", { scope: "col" }, words.product),
          element("th", { scope: "col", class: "number" }, words.share),
          element("th", { scope: "col" }, words.reads),
        ),
      ),
      element(
        "tbody",
        {},
        rows,
        left.length === 0
          ? undefined
          : element(
              "tr",
              { class: "rest" },
              element("th", { scope: "row", colspan: 3 }, page.words.rest(left.length)),
              element("td", { class: "number" }, shareWords(share)),
              element("td"),
            ),
      ),
    ),
  );
}

function termHtml(term: FigureTerm, unit: string): Markup {
  const sum = formatNumber(term.sum, digitsFor(term.sum));
  // A rate is a factor of a product, so it keeps three digits whatever its interval.
  const digits = Math.max(digitsFor(term.median), digitsFor(term.median, term.low, term.high));
  const rate = formatNumber(term.median, digits);
  const per = `${unit === "" ? "1" : unit} per ${term.unit}`;
  return element(
    "tr",
    {},
    element("th", { scope: "row" }, term.step, element("small", {}, term.route)),
    element("td", {}, term.flow),
    element(
      "td",
      {},
      `${sum}${NO_BREAK}${term.unit} × ${rate} ${per}`,
      element(
        "small",
        {},
        `${term.amount} × ${term.rate} (${formatInterval(term.low, term.high, digits)})`,
      ),
    ),
    element("td", { class: "number" }, shareWords(term.share)),
    element(
      "td",
      { class: "reads" },
      term.reads.map((read, index) => joined(index === 0 ? "" : ", ", element("code", {}, read))),
    ),
  );
}

// `Table 1. Water by step` is enough as `Table 1`, with row and column.
function placeWords({ part, spot }: Mention): string {
  const name = /^[^.:]{1,24}(?=[.:] )/.exec(part)?.[0];
  return name === undefined ? part : `${name} \u00b7 ${spot}`;
}

// A share that rounds to nothing is still there.
function shareWords(share: number): string {
  return share !== 0 && Math.abs(share) < 0.0005
    ? `<${NO_BREAK}${formatPercent(0.001, 1)}`
    : formatPercent(share, 1);
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
