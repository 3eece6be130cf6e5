import type { BlockOf, Desk } from "./desk.js";
import type { LaidTable } from "./grid.js";
import { layTable } from "./grid.js";
import type { KitElement } from "./kit.js";
import { WITHIN_TABLE } from "./partings.js";
import type { Colour, TextStyle } from "./sheet.js";
import { COLOURS, STYLES, WHITE } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { heightOf, tie } from "./slices.js";
import { captionSlices, cellElements, columnAligns } from "./table-parts.js";
import type { BrokenCell } from "./table-rows.js";
import { breakRow, drawRow, lineCount, setRow, sink } from "./table-rows.js";

const LOOKS = {
  main: { style: STYLES.cell, caption: STYLES.captionTable, gap: 14, pad: 2.6 },
  behind: { style: STYLES.cellBehind, caption: STYLES.captionBehind, gap: 12, pad: 1.6 },
} as const;

const HEAVY: Rule = { weight: 0.8, colour: COLOURS.ink };
const LIGHT: Rule = { weight: 0.4, colour: COLOURS.hair };

/** Tables up to this share of a page are not parted; the data behind a chart may well be. */
const KEPT_WHOLE = { main: 0.28, behind: 0.22 } as const;

/**
 * Sets a table: caption above, headings that come again on each further page, thin lines.
 *
 * @param block - the table
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @returns slices for the caption, the headings and the rows
 */
export function table(
  block: BlockOf<"table">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const role = block.behind === true ? "behind" : "main";
  const look = LOOKS[role];
  const whole = desk.tree.element("Table", parent);
  const caption = tie(captionSlices(block, look.caption, whole, desk, measure), true);

  const count = block.head.reduce((sum, { span }) => sum + (span ?? 1), 0);
  const aligns = columnAligns(block.rows, count);
  const strong = block.head.map((cell) => ({ ...cell, strong: true }));
  const head = setRow(strong, count, look.style, desk, aligns);
  const rows = block.rows.map((row) => setRow(row, count, look.style, desk, aligns));
  const laid = layTable(head, rows, block.widths, look.style, look.gap, measure);
  const set: RowSetting = { style: laid.style, pad: look.pad, measure, desk };

  const headings = headingSlices(laid, whole, set);
  const body = bodySlices(laid, whole, set).map((slice) => ({
    ...slice,
    parting: WITHIN_TABLE[role],
  }));
  const all = [...caption, ...tie(headings, body.length > 0), ...body];
  const kept = heightOf(all) <= desk.height * KEPT_WHOLE[role] ? tie(all) : all;
  return kept.map((slice, index) => ({
    ...slice,
    ...(index === 0 ? { before: WHITE.block } : {}),
    ...(index === kept.length - 1 ? { after: WHITE.block } : {}),
  }));
}

function headingSlices(laid: LaidTable, whole: KitElement, set: RowSetting): readonly Slice[] {
  const row = set.desk.tree.element("TR", set.desk.tree.element("THead", whole));
  const elements = cellElements(laid.head, row, true, set.desk);
  const slices = rowSlices(sink(breakRow(laid.head, laid.grid)), elements, set, HEAVY);
  return slices.map((slice, index) => ({
    ...slice,
    draw: (top) => {
      if (index === 0) rowRule(set, top, HEAVY);
      slice.draw(top);
    },
  }));
}

function bodySlices(laid: LaidTable, whole: KitElement, set: RowSetting): readonly Slice[] {
  const { desk, pad, style } = set;
  const body = desk.tree.element("TBody", whole);
  const headings = sink(breakRow(laid.head, laid.grid));
  const height = lineCount(headings) * style.leading + 2 * pad;
  const repeated = {
    height,
    draw: (top: number) => {
      rowRule(set, top, HEAVY);
      rowRule(set, top + height, HEAVY);
      desk.tree.artifact("Pagination", () => {
        drawRow(headings, undefined, style, top + pad, [0, Infinity], desk);
      });
    },
  };
  // A row that goes on stands off the headings as its first line does.
  const repeatedWithin = { ...repeated, height: height + pad };
  const last = laid.rows.length - 1;
  return laid.rows.flatMap((row, index) => {
    const elements = cellElements(row, desk.tree.element("TR", body), false, desk);
    const rule = index === last ? HEAVY : LIGHT;
    const slices = rowSlices(breakRow(row, laid.grid), elements, set, rule).map((slice, line) =>
      height > desk.height / 3 ? slice : { ...slice, head: line === 0 ? repeated : repeatedWithin },
    );
    // The first two rows stay together, and the last two.
    return index < last && (index === 0 || index === last - 1) ? tie(slices, true) : slices;
  });
}

interface RowSetting {
  readonly style: TextStyle;
  /** White above and below the text of a row. [pt] */
  readonly pad: number;
  readonly measure: Measure;
  readonly desk: Desk;
}

interface Rule {
  readonly weight: number;
  readonly colour: Colour;
}

// One slice for a row, or one for each of its lines when it takes more than half a page.
function rowSlices(
  row: readonly BrokenCell[],
  elements: readonly KitElement[],
  set: RowSetting,
  rule: Rule,
): readonly Slice[] {
  const { style, pad, desk } = set;
  const count = lineCount(row);
  const height = count * style.leading + 2 * pad;
  if (height <= desk.height / 2) {
    return [
      {
        height,
        draw: (top) => {
          drawRow(row, elements, style, top + pad, [0, count], desk);
          rowRule(set, top + height, rule);
        },
      },
    ];
  }
  return Array.from({ length: count }, (_, line): Slice => {
    const above = line === 0 ? pad : 0;
    const below = line === count - 1 ? pad : 0;
    const tall = style.leading + above + below;
    return {
      height: tall,
      tied: line === 0 || line === count - 2,
      draw: (top) => {
        drawRow(row, elements, style, top + above, [line, line + 1], desk);
        if (below > 0) rowRule(set, top + tall, rule);
      },
    };
  });
}

function rowRule({ measure, desk }: RowSetting, y: number, { weight, colour }: Rule): void {
  desk.pen.rule([measure.left, y], [measure.left + measure.width, y], weight, colour);
}
