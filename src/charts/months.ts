/**
 * The months along the lower edge of a picture, with rows of figures below them.
 */

import { InputError } from "../problems/input-error.js";
import type { DrawingNode } from "./drawing.js";
import { element, SMALL_SIZE, words } from "./nodes.js";
import { SOFT } from "./palette.js";
import type { TextMeasure } from "./text-width.js";

const NAMES = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");

/** From this many months on a picture can no longer be read. */
const MOST_MONTHS = 120;

/**
 * Lists the months of the calendar from the first to the last of those given.
 *
 * @param months - months as ISO 8601 has them, such as `2025-07`, in any order
 * @returns every month between, both ends included
 * @throws InputError when one is no month, or they span more than ten years
 */
export function calendar(months: readonly string[]): readonly string[] {
  const counts = months.map((month) => {
    const [, year, number] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month) ?? [];
    if (year === undefined) throw new Error(`month "${month}": expected one such as 2025-07`);
    return Number(year) * 12 + Number(number) - 1;
  });
  if (counts.length === 0) return [];
  const first = Math.min(...counts);
  const length = Math.max(...counts) - first + 1;
  if (!(length <= MOST_MONTHS)) {
    throw new InputError("months of a picture", length, `expected at most ${MOST_MONTHS}`);
  }
  return Array.from({ length }, (_, index) => {
    const year = String(Math.floor((first + index) / 12)).padStart(4, "0");
    return `${year}-${String(((first + index) % 12) + 1).padStart(2, "0")}`;
  });
}

/** A row of figures below the months. */
export interface MonthRow {
  /** Said to its left. */
  readonly name: string;
  /** One figure for each month, in order. */
  readonly figures: readonly string[];
}

/** What stands below the plot. */
export interface MonthFoot {
  /** Months of the calendar in order. */
  readonly months: readonly string[];
  /** Rows of figures. */
  readonly rows: readonly MonthRow[];
}

const ROW = 15;
const BELOW = 8;

/**
 * Draws the months and the rows below them. Figures too long for their month are turned upright.
 *
 * @param foot - months and rows
 * @param at - position of each month across
 * @param top - lower edge of the plot
 * @param left - right end of the names of the rows
 * @param measure - measures text
 * @returns elements and the height they take
 */
export function monthFoot(
  foot: MonthFoot,
  at: (index: number) => number,
  top: number,
  left: number,
  measure: TextMeasure,
): { readonly nodes: readonly DrawingNode[]; readonly height: number } {
  const nodes: DrawingNode[] = [];
  const pitch = foot.months.length > 1 ? at(1) - at(0) : Infinity;
  const every = pitch >= 25 ? 1 : pitch >= 9 ? 3 : 12;
  foot.months.forEach((month, index) => {
    const number = Number(month.slice(5)) - 1;
    const isNamed = every === 1 || number % every === 0;
    if (isNamed && every < 12) {
      nodes.push(words(at(index), top + 13, NAMES[number] ?? "", { anchor: "middle", fill: SOFT }));
    }
    const firstOfYear = number === 0 || (index === 0 && 12 - number > (every === 1 ? 1 : 3));
    if (firstOfYear) {
      const y = every === 12 ? top + 13 : top + 26;
      nodes.push(words(at(index), y, month.slice(0, 4), { anchor: "middle", fill: SOFT }));
    }
  });
  let y = top + (every === 12 ? 22 : 35);
  for (const { name, figures } of foot.rows) {
    const longest = Math.max(0, ...figures.map((figure) => measure(figure, SMALL_SIZE)));
    const isUpright = longest > pitch - 3;
    const height = isUpright ? longest + 6 : ROW;
    nodes.push(
      words(left, y + height / 2, name, { anchor: "end", size: SMALL_SIZE, fill: SOFT }),
      ...figures.map((figure, index) =>
        isUpright
          ? upright(at(index), y + height - 3, figure)
          : words(at(index), y + height / 2, figure, { anchor: "middle", size: SMALL_SIZE }),
      ),
    );
    y += height;
  }
  return { nodes, height: y - top + BELOW };
}

function upright(x: number, y: number, figure: string): DrawingNode {
  const turned = `translate(${Math.round(x * 100) / 100},${Math.round(y * 100) / 100}) rotate(-90)`;
  return element("g", { transform: turned }, words(0, 0, figure, { size: SMALL_SIZE }));
}
