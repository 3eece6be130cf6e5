/**
 * Words that are set before the report is there: what sets them has run once then, and knows their glyphs.
 */

import { glossary } from "../compose/glossary.js";
import type { Block, Cell, ReportDocument } from "../document.js";

/** Words in a cell of the page rehearsed. */
const IN_CELL = 12;

/**
 * A document to rehearse with. Nobody reads it.
 *
 * @param texts - texts that a report is likely to print
 * @returns the report's own words, and each word of the texts once as text and once as a heading
 */
export function rehearsal(texts: readonly string[]): ReportDocument {
  const words = [...new Set(texts.flatMap((text) => text.split(/\s+/)))].filter(
    (word) => word !== "",
  );
  return {
    title: "Words",
    author: "",
    language: "en",
    date: "2026-01-01",
    footer: "",
    blocks: [{ kind: "heading", level: 2, id: "words", text: "Words" }, glossary(), table(words)],
    figures: {},
  };
}

/**
 * Texts of a report's blocks.
 *
 * @param blocks - the blocks
 * @returns every text in them but data of charts
 */
export function textsOf(blocks: readonly Block[]): readonly string[] {
  const texts: string[] = [];
  const visit = (value: unknown): void => {
    if (typeof value === "string") texts.push(value);
    else if (Array.isArray(value)) value.forEach(visit);
    else if (typeof value === "object" && value !== null) {
      for (const [key, inner] of Object.entries(value)) if (key !== "chart") visit(inner);
    }
  };
  blocks.forEach(visit);
  return texts;
}

function table(words: readonly string[]): Block {
  const rows = Array.from({ length: Math.ceil(words.length / IN_CELL) }, (_, at) => {
    const text = words.slice(at * IN_CELL, (at + 1) * IN_CELL).join(" ");
    const runs = [{ kind: "text", text }] as const;
    return [{ runs, strong: true }, { runs }] satisfies readonly Cell[];
  });
  const head = ["Words", "Words"].map((text) => ({ runs: [{ kind: "text", text }] as const }));
  return { kind: "table", id: "rehearsed", caption: "Words.", head, rows };
}
