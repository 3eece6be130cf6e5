import type { ProvenanceShares, ReportDocument } from "../document.js";
import { PROVENANCES } from "../shares.js";
import type { Desk } from "./desk.js";
import type { Line } from "./lines.js";
import { breakLines } from "./lines.js";
import { numbers, rgb } from "./operators.js";
import type { PageOfSlices } from "./pages.js";
import { drawLine } from "./set-line.js";
import { parts, patterned } from "./shares.js";
import { COLOURS, COLUMN, PAGE, STYLES, baseline } from "./sheet.js";
import { spans } from "./spans.js";
import { shareLabels } from "./strips.js";

/** What stands on every page beside the text. */
export interface Furniture {
  /** Lines of the footer. */
  readonly footer: readonly Line[];
  /** Title, over the left end of the column. */
  readonly title: Line;
  /** Print house, over the right end. */
  readonly author: Line;
}

const STYLE = STYLES.furniture;
const NUMBER_ROOM = 32;
const MOST_LINES = 4;
const RIBBON = { left: 36, width: 3.6 } as const;

/**
 * Sets the running lines once for all pages.
 *
 * @param document - title, print house and footer
 * @param desk - faces
 * @returns lines; of a very long text only the beginning, with an ellipsis
 */
export function setFurniture(document: ReportDocument, desk: Desk): Furniture {
  const room = COLUMN - NUMBER_ROOM;
  const footer = lines(document.footer, room, desk);
  return {
    footer:
      footer.length > MOST_LINES
        ? lines(shortened(document.footer), room, desk).slice(0, MOST_LINES)
        : footer,
    title: oneLine(document.title, COLUMN * 0.64, desk),
    author: oneLine(document.author, COLUMN * 0.32, desk),
  };
}

/**
 * Finds the height that the footer takes beyond its first line.
 *
 * @param furniture - running lines
 * @returns height [pt]
 */
export function footerGrowth(furniture: Furniture): number {
  return (furniture.footer.length - 1) * STYLE.leading;
}

/**
 * Chooses the provenance to show beside a page: of all that hold on it, the one that holds longest.
 *
 * @param page - slices at their places
 * @param before - provenance in force at the top of the page, if any
 * @param height - height of the column [pt]
 * @returns shares; none before the first strip of a report
 */
export function prevailing(
  page: PageOfSlices,
  before: ProvenanceShares | "none" | undefined,
  height: number,
): ProvenanceShares | undefined {
  const starts = page.flatMap(({ slice: { shares }, top }) => (shares ? [{ shares, top }] : []));
  const all = before === undefined ? starts : [{ shares: before, top: 0 }, ...starts];
  let best: ProvenanceShares | undefined;
  let longest = 0;
  all.forEach(({ shares, top }, index) => {
    if (shares === "none") return;
    const reach = (all[index + 1]?.top ?? height) - top;
    if (reach < longest) return;
    longest = reach;
    best = shares;
  });
  return best;
}

/**
 * Draws what stands beside the text, as pagination.
 *
 * @param furniture - running lines
 * @param page - number from 1
 * @param count - number of pages
 * @param shares - provenance of the quantities on the page, if any was given up to here
 * @param desk - pages
 */
export function drawFurniture(
  furniture: Furniture,
  page: number,
  count: number,
  shares: ProvenanceShares | undefined,
  desk: Desk,
): void {
  const right = PAGE.left + COLUMN;
  desk.tree.artifact("Pagination", () => {
    if (page > 1) {
      const y = PAGE.top - 26;
      drawLine(furniture.title, PAGE.left, y, undefined, desk);
      drawLine(furniture.author, right - furniture.author.width, y, undefined, desk);
    }
    const top = PAGE.height - PAGE.bottom - footerGrowth(furniture) + 20;
    const hair = `${rgb(COLOURS.hair)} RG 0.4 w`;
    desk.pen.op(`${hair} ${numbers(PAGE.left, top)} m ${numbers(right, top)} l S`);
    furniture.footer.forEach((line, index) => {
      const y = top + 4 + index * STYLE.leading + baseline(STYLE);
      drawLine(line, PAGE.left, y, undefined, desk);
    });
    const label = [{ kind: "text", text: `${page} / ${count}` } as const];
    const number = breakLines(spans(label, STYLE, desk, { digits: true }), Infinity)[0];
    if (number) drawLine(number, right - number.width, top + 4 + baseline(STYLE), undefined, desk);
    if (shares) drawRibbon(shares, furniture, desk);
  });
}

// The provenance in the margin, with each share's name where there is room for it.
function drawRibbon(shares: ProvenanceShares, furniture: Furniture, desk: Desk): void {
  const face = desk.pen.faces.regular;
  const size = STYLE.size;
  const labels = shareLabels(shares, desk);
  const height = PAGE.height - PAGE.top - PAGE.bottom - footerGrowth(furniture);
  const bar = { x: RIBBON.left, y: PAGE.top, width: RIBBON.width, height };
  if (PROVENANCES.every((name) => !(shares[name] > 0))) return;
  for (const { name, box } of parts(bar, shares)) {
    desk.pen.op(`q ${patterned(name, box, COLOURS.soft)} Q`);
    const setting = face.set(labels[name], true);
    if (setting.width * size + 6 > box.height) continue;
    // Read from below: the text runs upwards beside the ribbon.
    const matrix = `0 -1 -1 0 ${numbers(RIBBON.left - 3.2, box.y + setting.width * size + 2)}`;
    desk.pen.op(`BT ${rgb(COLOURS.ink)} rg ${desk.pen.glyphs(face, size, matrix, setting)} ET`);
  }
}

function lines(text: string, width: number, desk: Desk): readonly Line[] {
  return breakLines(spans([{ kind: "text", text }], STYLE, desk), width);
}

// Four lines hold less than this many letters.
function shortened(text: string): string {
  return `${Array.from(text).slice(0, 430).join("")}\u2026`;
}

function oneLine(text: string, width: number, desk: Desk): Line {
  const [whole] = lines(text, Infinity, desk);
  if (whole && whole.width <= width) return whole;
  const letters = Array.from(text);
  let [fits, fails] = [0, letters.length];
  const cut = (count: number): Line | undefined =>
    lines(`${letters.slice(0, count).join("").trimEnd()}\u2026`, Infinity, desk)[0];
  while (fails - fits > 1) {
    const middle = Math.floor((fits + fails) / 2);
    if ((cut(middle)?.width ?? Infinity) <= width) fits = middle;
    else fails = middle;
  }
  return cut(fits) ?? { pieces: [], width: 0 };
}
