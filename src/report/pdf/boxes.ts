import type { BlockOf, Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import { breakLines } from "./lines.js";
import { WITHIN_BOX } from "./partings.js";
import { textSlices } from "./set-line.js";
import { COLOURS, STYLES, WHITE } from "./sheet.js";
import type { Frame, Measure, Slice } from "./slices.js";
import { heightOf, tie } from "./slices.js";
import { spans } from "./spans.js";
import type { Block } from "../document.js";

const INSET = 11;
const PAD = 8;

/** Boxes up to this share of a page are not parted. */
const KEPT_WHOLE = 0.35;

/**
 * Sets a box: a frame with a title, around other blocks. A box that warns has a heavy frame and
 * says so in its title.
 *
 * @param block - title, tone and content
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @param setInner - sets the blocks within
 * @returns slices that carry the frame
 */
export function box(
  block: BlockOf<"box">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
  setInner: (blocks: readonly Block[], measure: Measure, parent: KitElement) => readonly Slice[],
): readonly Slice[] {
  const caution = block.tone === "caution";
  const frame: Frame = {
    left: measure.left,
    width: measure.width,
    weight: caution ? 1.8 : 0.6,
    colour: caution ? COLOURS.ink : COLOURS.soft,
  };
  const within: Measure = { left: measure.left + INSET, width: measure.width - 2 * INSET };
  const element = desk.tree.element("Div", parent);
  const style = STYLES.section;
  const said = block.title.toLowerCase().startsWith(desk.words.caution.toLowerCase());
  const text = caution && !said ? `${desk.words.caution}: ${block.title}` : block.title;
  const heading = desk.tree.element("P", element);
  const lines = breakLines(spans([{ kind: "text", text }], style, desk), within.width);
  const title = textSlices(lines, style, within.left, heading, desk);
  const inner = setInner(block.blocks, within, element);
  const blank = { height: PAD, draw: () => undefined };
  const slices = [
    ...tie([blank, ...title], true),
    ...(inner.length > 0 ? tie(inner.slice(0, 1), inner[0]?.tied === true) : []),
    ...inner.slice(1, -1),
    // The lower edge stays with the last line.
    ...(inner.length > 1
      ? tie(inner.slice(-1), true).map((slice) => ({ ...slice, after: 0 }))
      : []),
    blank,
  ].map((slice: Slice) => ({
    ...slice,
    frames: [frame, ...(slice.frames ?? [])],
    parting: (slice.parting ?? 0) + WITHIN_BOX,
  }));
  const kept = heightOf(slices) <= desk.height * KEPT_WHOLE ? tie(slices) : slices;
  return kept.map((slice, index) => ({
    ...slice,
    ...(index === 0 ? { before: WHITE.block } : {}),
    ...(index === kept.length - 1 ? { after: WHITE.block, parting: 0 } : {}),
  }));
}
