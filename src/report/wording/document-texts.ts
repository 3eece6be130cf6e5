/**
 * Every text of a report as a reader meets it, for those who judge its words.
 */

import type { Block, Cell, DrawingNode, ReportDocument, Run } from "../document.js";

/**
 * Texts of a report.
 *
 * @param document - the report
 * @returns its texts in order, without titles of sources, which are others' words
 */
export function documentTexts(document: ReportDocument): readonly string[] {
  return [document.title, document.author, document.footer, ...document.blocks.flatMap(textsOf)];
}

function textsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case "heading":
      return [block.text];
    case "paragraph":
      return [textOf(block.runs)];
    case "list":
      return block.items.map(textOf);
    case "table":
      return block.id === "sources"
        ? [block.caption]
        : [block.caption, ...[...block.head, ...block.rows.flat()].map(cellText)];
    case "figure":
      return [
        block.title,
        block.description,
        block.missing ?? "",
        ...(block.drawing?.children ?? []).flatMap(drawnTexts),
      ];
    case "strip":
      return [block.words];
    case "box":
      return [block.title, ...block.blocks.flatMap(textsOf)];
    case "notes":
      return block.notes.map(({ runs }) => textOf(runs));
  }
}

function cellText({ runs }: Cell): string {
  return textOf(runs);
}

function textOf(runs: readonly Run[]): string {
  return runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");
}

function drawnTexts(node: DrawingNode): readonly string[] {
  return typeof node === "string" ? [node] : node.children.flatMap(drawnTexts);
}
