import type { Block } from "../document.js";
import type { Markup } from "./markup.js";
import { element, joined, trusted } from "./markup.js";
import type { BlockOf, Page } from "./page.js";
import { runsHtml } from "./runs.js";
import { sharesHtml } from "./strip.js";
import { tableHtml } from "./tables.js";

/** Widest picture that is not stretched to the column. */
const SMALL_DRAWING = 420;

/**
 * Writes blocks.
 *
 * @param blocks - pieces of the report
 * @param page - anchors, notes and figures
 * @returns markup in the same order
 */
export function blocksHtml(blocks: readonly Block[], page: Page): Markup {
  return joined(...blocks.map((block) => blockHtml(block, page)));
}

function blockHtml(block: Block, page: Page): Markup {
  switch (block.kind) {
    case "heading":
      return element(
        `h${block.level}`,
        { id: page.places.anchors.get(block), class: block.newPage ? "page" : undefined },
        block.text,
      );
    case "paragraph":
      return element("p", { class: block.tone }, runsHtml(block.runs, page));
    case "list":
      return element(
        block.ordered ? "ol" : "ul",
        {},
        block.items.map((item) => element("li", {}, runsHtml(item, page))),
      );
    case "table":
      return tableHtml(block, page);
    case "figure":
      return pictureHtml(block, page);
    case "strip":
      return element(
        "div",
        { class: "strip" },
        element("p", {}, block.words),
        sharesHtml(block.shares, page),
      );
    case "box":
      return boxHtml(block, page);
    case "notes":
      return notesHtml(block, page);
  }
}

function pictureHtml(figure: BlockOf<"figure">, page: Page): Markup {
  const anchor = page.places.anchors.get(figure) ?? "";
  const caption = `${anchor}-caption`;
  const { drawing, narrow, title, description, missing } = figure;
  const id = page.places.pictures.get(figure) ?? "";
  const small = drawing !== undefined && drawing.width <= SMALL_DRAWING;
  return element(
    "figure",
    { class: small ? "drawn small" : "drawn", id: anchor },
    element("figcaption", { id: caption }, title),
    drawing === undefined
      ? element("p", { class: "missing" }, missing ?? description)
      : element(
          "div",
          {
            class: narrow === undefined ? "scroll" : "scroll wide",
            role: "group",
            tabindex: 0,
            "aria-labelledby": caption,
          },
          trusted(page.drawingSvg(drawing, { id, title, description })),
        ),
    narrow === undefined
      ? undefined
      : element(
          "div",
          { class: "narrow" },
          trusted(page.drawingSvg(narrow, { id: `${id}-narrow`, title, description })),
        ),
  );
}

function boxHtml(box: BlockOf<"box">, page: Page): Markup {
  return element(
    "div",
    { class: `box ${box.tone}`, role: "group", "aria-label": box.title },
    element("p", { class: "title" }, box.title),
    blocksHtml(box.blocks, page),
  );
}

function notesHtml({ notes }: BlockOf<"notes">, page: Page): Markup {
  const items = notes.map(({ id, runs }) => {
    const note = page.places.notes.get(id);
    const back =
      note !== undefined && page.marked.has(id)
        ? element(
            "a",
            {
              class: "back",
              href: `#${note.back}`,
              role: "doc-backlink",
              "aria-label": page.words.back(note.number),
            },
            "\u2191",
          )
        : undefined;
    return element("li", { id: note?.anchor }, runsHtml(runs, page), " ", back);
  });
  const start = page.places.notes.get(notes[0]?.id ?? "")?.number;
  return element("ol", { class: "notes", start: start === 1 ? undefined : start }, items);
}
