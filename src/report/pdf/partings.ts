/**
 * What it costs to end a page between two pieces of a report, measured by white at the foot of a
 * page: 1 is a tenth of the page, 4 a fifth, 9 three tenths.
 */

import type { Block } from "../document.js";

/** Between two lines of a paragraph or a note. */
export const WITHIN_TEXT = 2;

/** Between two rows of a table. */
export const WITHIN_TABLE = { main: 1.5, behind: 1 } as const;

/** Within a box, beside what it costs to part what the box holds. */
export const WITHIN_BOX = 5;

/**
 * Finds what it costs to part two blocks.
 *
 * @param block - the upper one
 * @param next - the one after it, if any
 * @returns the cost; 0 where a page may well end
 */
export function partingBetween(block: Block, next: Block | undefined): number {
  if (next === undefined || next.kind === "heading" || block.kind === "heading") return 0;
  if (next.kind === "table" && next.behind === true) return 14;
  if (next.kind === "paragraph" && next.tone === "small") return 7;
  if (next.kind === "strip") return 5;
  if (next.kind === "figure" && block.kind !== "table") return 3;
  return block.kind === "strip" ? 2 : 0;
}
