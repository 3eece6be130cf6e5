import type { Run } from "../document.js";
import type { BlockOf, Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import { breakLines } from "./lines.js";
import type { Link } from "./link.js";
import { drawLine, textSlices } from "./set-line.js";
import type { TextStyle } from "./sheet.js";
import { LONGEST_LINE, STYLES, WHITE, baseline } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import type { Span } from "./spans.js";
import { spans } from "./spans.js";

const GAP = 5;

/**
 * Sets a list.
 *
 * @param block - items
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @returns one slice a line
 */
export function list(
  block: BlockOf<"list">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const whole = desk.tree.element("L", parent, {
    O: "List",
    ListNumbering: block.ordered ? "Decimal" : "Disc",
  });
  const labels = block.items.map((_, index) => (block.ordered ? `${index + 1}.` : "\u2022"));
  return block.items.flatMap((runs, index) => {
    const item = desk.tree.element("LI", whole);
    const text = labels[index] ?? "";
    return labelled(
      {
        label: spans([{ kind: "text", text }], STYLES.body, desk, { digits: true }),
        mark: desk.tree.element("Lbl", item),
        body: desk.tree.element("LBody", item),
        runs,
        style: STYLES.body,
        indent: block.ordered ? 14 + 5.6 * String(labels.length).length : 14,
        before: index === 0 ? WHITE.paragraph : WHITE.item,
      },
      desk,
      measure,
    );
  });
}

/**
 * Sets notes, each with its number, which leads back to the place it was called from.
 *
 * @param block - notes
 * @param desk - pages
 * @param measure - their place in the column
 * @param parent - element of the structure above
 * @returns one slice a line
 */
export function notes(
  block: BlockOf<"notes">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const { paper } = desk;
  const style = STYLES.small;
  return block.notes.flatMap(({ id, runs }, index) => {
    const note = desk.notes.get(id);
    if (!note) return [];
    const element = desk.tree.element("Note", parent);
    desk.tree.nameNote(element, note.place);
    const text = String(note.number);
    const plain = spans([{ kind: "text", text }], style, desk, { digits: true });
    const back: Link = { to: { place: note.back }, says: text };
    const slices = labelled(
      {
        label: desk.marked.has(id) ? plain.map((span) => ({ ...span, link: back })) : plain,
        mark: desk.tree.element("Lbl", element),
        body: desk.tree.element("P", element),
        runs,
        style,
        indent: 18,
        before: index === 0 ? WHITE.paragraph : WHITE.item,
      },
      desk,
      measure,
    );
    return slices.map((slice, line) => ({
      ...slice,
      draw: (top) => {
        if (line === 0) paper.place(note.place, top - 4);
        slice.draw(top);
      },
    }));
  });
}

interface Labelled {
  /** Number or bullet. */
  readonly label: readonly Span[];
  /** Element of the structure for it. */
  readonly mark: KitElement;
  /** Element of the structure for the text. */
  readonly body: KitElement;
  /** The text. */
  readonly runs: readonly Run[];
  /** Style of both. */
  readonly style: TextStyle;
  /** From the left edge to the text. [pt] */
  readonly indent: number;
  /** White above. [pt] */
  readonly before: number;
}

function labelled(item: Labelled, desk: Desk, measure: Measure): readonly Slice[] {
  const { style, indent, before } = item;
  const label = breakLines(item.label, Infinity)[0];
  const width = Math.min(measure.width, LONGEST_LINE) - indent;
  const lines = breakLines(spans(item.runs, style, desk), width);
  const slices = textSlices(lines, style, measure.left + indent, item.body, desk);
  return slices.map((slice, index) =>
    index > 0
      ? slice
      : {
          ...slice,
          before,
          draw: (top) => {
            // Set against the text, so that numbers of one and two digits end at the same place.
            const x = measure.left + indent - GAP - (label?.width ?? 0);
            if (label) drawLine(label, x, top + baseline(style), item.mark, desk);
            slice.draw(top);
          },
        },
  );
}
