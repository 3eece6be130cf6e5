import { outsideAddress } from "../address.js";
import type { Figure, Run } from "../document.js";
import { figureWords } from "./figure-words.js";
import type { Markup } from "./markup.js";
import { element, joined } from "./markup.js";
import type { Page } from "./page.js";

/**
 * Writes runs.
 *
 * @param runs - text as the report holds it
 * @param page - anchors, notes and figures
 * @returns markup for the inside of a paragraph, item or cell
 * @throws Error when a figure is referred to that the report does not hold
 */
export function runsHtml(runs: readonly Run[], page: Page): Markup {
  return joined(...runs.map((run) => runHtml(run, page)));
}

function runHtml(run: Run, page: Page): Markup {
  switch (run.kind) {
    case "text":
      if (run.style === "bold") return element("strong", {}, run.text);
      if (run.style === "italic") return element("em", {}, run.text);
      return run.style === "code" ? element("code", {}, run.text) : joined(run.text);
    case "link": {
      const href = leadsTo(run.href, page);
      return href === undefined ? joined(run.text) : element("a", { href }, run.text);
    }
    case "figure-ref": {
      const anchor = page.places.shown.get(run.figure)?.anchor ?? "";
      const title = figureWords(figureOf(run.figure, page), page.words);
      return element("a", { class: "fig", href: `#${anchor}`, title }, run.text);
    }
    case "note-ref":
      return noteMark(run.note, page);
  }
}

function noteMark(id: string, page: Page): Markup {
  const note = page.places.notes.get(id);
  if (!note) return element("sup", {}, `[${id}]`);
  const first = !page.marked.has(id);
  page.marked.add(id);
  const attributes = {
    href: `#${note.anchor}`,
    id: first ? note.back : undefined,
    role: "doc-noteref",
    "aria-label": page.words.note(note.number),
  };
  return element("sup", {}, element("a", attributes, String(note.number)));
}

/**
 * Finds a figure.
 *
 * @param id - its id
 * @param page - the report
 * @returns the figure
 * @throws Error when the report does not hold it
 */
export function figureOf(id: string, page: Page): Figure {
  const { figures } = page.document;
  const figure = Object.hasOwn(figures, id) ? figures[id] : undefined;
  if (figure) return figure;
  throw new Error(`The report refers to the figure "${id}", which is not among its figures.`);
}

// Links lead out, or to a place in this page; others stay plain text.
function leadsTo(href: string, page: Page): string | undefined {
  if (href.startsWith("#")) {
    const id = href.slice(1);
    const anchor = page.places.byId.get(id) ?? page.places.notes.get(id)?.anchor;
    return anchor === undefined ? undefined : `#${anchor}`;
  }
  return outsideAddress(href);
}
