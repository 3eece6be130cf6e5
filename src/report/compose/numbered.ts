/**
 * Numbers the figures of a report.
 */

import type { Block } from "../document.js";

/**
 * Gives figures their numbers in the order in which they are read, whatever the order in which they
 * were made and wherever the template puts them.
 *
 * @param blocks - blocks of the report
 * @returns the same blocks, the titles of figures with "Figure N." before them
 */
export function numbered(blocks: readonly Block[]): readonly Block[] {
  let count = 0;
  const one = (block: Block): Block => {
    if (block.kind === "box") return { ...block, blocks: block.blocks.map(one) };
    if (block.kind !== "figure") return block;
    count += 1;
    return { ...block, title: `Figure ${count}. ${block.title}` };
  };
  return blocks.map(one);
}
