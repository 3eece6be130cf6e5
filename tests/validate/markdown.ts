/** A document as plain Markdown. Pictures are told in words; their numbers stand in the tables behind them. */

import type { Block, Cell, ReportDocument, Run } from "../../src/report/document.js";
import { formatDate } from "../../src/report/format.js";

/**
 * Writes a document as Markdown.
 *
 * @param document - the document
 * @returns Markdown with one blank line between blocks
 */
export function markdownOf(document: ReportDocument): string {
  const [first, ...rest] = document.blocks;
  const title = first?.kind === "heading" && first.level === 1 ? first.text : document.title;
  const body = first?.kind === "heading" && first.level === 1 ? rest : document.blocks;
  return (
    [
      `# ${plain(title)}`,
      `${plain(document.author)} · ${formatDate(document.date)}`,
      ...body.flatMap(written),
      `---`,
      plain(document.footer),
    ].join("\n\n") + "\n"
  );
}

function written(block: Block): readonly string[] {
  switch (block.kind) {
    case "heading":
      return [`${"#".repeat(block.level)} ${plain(block.text)}`];
    case "paragraph":
      return [runs(block.runs)];
    case "list":
      return [
        block.items
          .map((item, index) => `${block.ordered ? `${index + 1}.` : "-"} ${runs(item)}`)
          .join("\n"),
      ];
    case "table":
      return [plain(block.caption), table(block.head, block.rows)];
    case "figure":
      return [`**${plain(block.title)}.** ${plain(block.missing ?? block.description)}`];
    case "strip":
      return [plain(block.words)];
    case "box":
      return [`**${plain(block.title)}**`, ...block.blocks.flatMap(written)];
    case "notes":
      return [block.notes.map(({ id, runs: text }) => `- ${plain(id)}: ${runs(text)}`).join("\n")];
  }
}

function table(head: readonly Cell[], rows: readonly (readonly Cell[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  const right = head.map((_, column) => rows.some((row) => row[column]?.align === "right"));
  return [
    line(head.map((cell) => runs(cell.runs))),
    line(right.map((flush) => (flush ? "---:" : "---"))),
    ...rows.map((row) => line(row.map((cell) => runs(cell.runs)))),
  ].join("\n");
}

function runs(list: readonly Run[]): string {
  return list
    .map((run) => {
      if (run.kind === "note-ref") return "";
      const text = plain(run.text);
      if (run.kind === "link") return `[${text}](${run.href})`;
      if (run.kind !== "text") return text;
      if (run.style === "bold") return `**${text}**`;
      if (run.style === "italic") return `_${text}_`;
      return run.style === "code" ? `\`${text}\`` : text;
    })
    .join("");
}

// Signs that Markdown would read as its own; a line end would break a table.
function plain(text: string): string {
  return text.replace(/[\\`*_[\]<>|#]/g, (sign) => `\\${sign}`).replace(/\s*\n\s*/g, " ");
}
