import type { ProvenanceShares } from "../document.js";
import type { Provenance } from "../shares.js";
import { checkShares, percents, PROVENANCES } from "../shares.js";
import type { BlockOf, Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import type { Line } from "./lines.js";
import { breakLines } from "./lines.js";
import { drawLine, textSlices } from "./set-line.js";
import { parts, patterned } from "./shares.js";
import { COLOURS, STYLES, WHITE, baseline } from "./sheet.js";
import type { Measure, Slice } from "./slices.js";
import { tie } from "./slices.js";
import { spans } from "./spans.js";

const BAR = 6.5;
const SWATCH = { width: 9, height: 5.2, gap: 4, next: 16 } as const;

/**
 * Sets the provenance of what follows: words, a thin bar in four patterns, and their key.
 *
 * @param block - words and shares
 * @param desk - pages
 * @param measure - its place in the column
 * @param parent - element of the structure above
 * @returns slices that stay together; the first carries the shares to the margin
 */
export function strip(
  block: BlockOf<"strip">,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const { shares } = block;
  checkShares(shares);
  const style = STYLES.key;
  const runs = [{ kind: "text", text: block.words } as const];
  const element = desk.tree.element("P", parent);
  const words = textSlices(
    breakLines(spans(runs, style, desk), measure.width),
    style,
    measure.left,
    element,
    desk,
  );
  const bar: Slice = {
    height: BAR + 5,
    draw: (top) => {
      const box = { x: measure.left, y: top + 2, width: measure.width, height: BAR };
      for (const part of parts(box, shares))
        desk.pen.ornament(patterned(part.name, part.box, COLOURS.ink));
    },
  };
  // Where there is no quantity there is nothing to show but the words.
  const empty = PROVENANCES.every((name) => shares[name] === 0);
  const shown = empty ? [] : [bar, ...keySlices(shares, desk, measure, parent)];
  const all = tie([...words, ...shown]);
  return all.map((slice, index) => ({
    ...slice,
    ...(index === 0 ? { before: WHITE.block - 2, shares } : {}),
    ...(index === all.length - 1 ? { after: WHITE.block - 4 } : {}),
  }));
}

/**
 * Words each share.
 *
 * @param shares - four shares
 * @param desk - names of the provenances
 * @returns for instance `measured 42 %`, by provenance
 */
export function shareLabels(
  shares: ProvenanceShares,
  desk: Desk,
): Readonly<Record<Provenance, string>> {
  const printed = percents(shares);
  const names = desk.words.provenance;
  return {
    measured: `${names.measured} ${printed.measured}`,
    allocated: `${names.allocated} ${printed.allocated}`,
    modelled: `${names.modelled} ${printed.modelled}`,
    default: `${names.default} ${printed.default}`,
  };
}

interface Entry {
  readonly name: Provenance;
  readonly element: KitElement;
  readonly x: number;
  readonly line: Line;
}

function keySlices(
  shares: ProvenanceShares,
  desk: Desk,
  measure: Measure,
  parent: KitElement,
): readonly Slice[] {
  const key = desk.tree.element("L", parent, { O: "List", ListNumbering: "None" });
  const style = STYLES.key;
  const labels = shareLabels(shares, desk);
  const rows: Entry[][] = [[]];
  let x = 0;
  for (const name of PROVENANCES) {
    const text = labels[name];
    const line = breakLines(spans([{ kind: "text", text }], style, desk), Infinity)[0];
    if (!line) continue;
    const width = SWATCH.width + SWATCH.gap + line.width;
    if (x > 0 && x + width > measure.width) {
      rows.push([]);
      x = 0;
    }
    const element = desk.tree.element("LBody", desk.tree.element("LI", key));
    rows.at(-1)?.push({ name, x, line, element });
    x += width + SWATCH.next;
  }
  return rows.map((row) => ({
    height: style.leading,
    draw: (top) => {
      const y = top + baseline(style);
      for (const { name, x: offset, line, element } of row) {
        const left = measure.left + offset;
        const { width, height } = SWATCH;
        desk.pen.ornament(patterned(name, { x: left, y: y - height, width, height }, COLOURS.ink));
        drawLine(line, left + width + SWATCH.gap, y, element, desk);
      }
    },
  }));
}
