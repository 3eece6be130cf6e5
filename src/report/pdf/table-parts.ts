import { captionParts } from "../caption.js";
import type { Cell, Run } from "../document.js";
import type { SetCell } from "./columns.js";
import type { BlockOf, Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import { breakLines } from "./lines.js";
import { textSlices } from "./set-line.js";
import type { TextStyle } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { spans } from "./spans.js";

const UNDER_CAPTION = 3;

/**
 * Sets the caption of a table, which links may lead to.
 *
 * @param block - the table
 * @param style - style of the caption
 * @param whole - element of the structure for the table
 * @param desk - pages
 * @param measure - place in the column
 * @returns one slice a line
 */
export function captionSlices(
  block: BlockOf<"table">,
  style: TextStyle,
  whole: KitElement,
  desk: Desk,
  measure: Measure,
): readonly Slice[] {
  const element = desk.tree.element("Caption", whole);
  const [name, rest] = captionParts(block.caption);
  const runs: readonly Run[] = [
    { kind: "text", text: name, style: "bold" },
    ...(rest === "" ? [] : [{ kind: "text", text: ` ${rest}` } as const]),
  ];
  const lines = breakLines(spans(runs, style, desk), measure.width);
  const place = desk.places.get(block.id);
  return textSlices(lines, style, measure.left, element, desk).map((slice, index, all) => ({
    ...slice,
    height: index === all.length - 1 ? slice.height + UNDER_CAPTION : slice.height,
    draw: (top) => {
      if (index === 0 && place !== undefined) desk.paper.place(place, top - 6);
      slice.draw(top);
    },
  }));
}

/**
 * Finds how the columns are aligned: as the first row that states an alignment.
 *
 * @param rows - rows below the headings
 * @param count - number of columns
 * @returns alignment by column
 */
export function columnAligns(
  rows: readonly (readonly Cell[])[],
  count: number,
): readonly Cell["align"][] {
  const aligns = new Array<Cell["align"]>(count).fill(undefined);
  for (const row of rows) {
    let column = 0;
    for (const { align, span } of row) {
      if ((span ?? 1) === 1) aligns[column] ??= align;
      column += span ?? 1;
    }
  }
  return aligns;
}

/**
 * Makes the elements of the structure for the cells of a row.
 *
 * @param row - cells
 * @param parent - element for the row
 * @param heading - the row holds the headings of the columns
 * @param desk - structure
 * @returns one element a cell
 */
export function cellElements(
  row: readonly SetCell[],
  parent: KitElement,
  heading: boolean,
  desk: Desk,
): readonly KitElement[] {
  return row.map(({ cell, span, column }) => {
    const names = heading || (cell.strong === true && column === 0);
    const attributes = {
      O: "Table",
      ...(names ? { Scope: heading ? "Column" : "Row" } : {}),
      ...(span > 1 ? { ColSpan: span } : {}),
    };
    const any = names || span > 1;
    return desk.tree.element(names ? "TH" : "TD", parent, any ? attributes : undefined);
  });
}
