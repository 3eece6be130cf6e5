import type { Drawing } from "./drawing.js";
import { element, LINE_HEIGHT, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { GRID, INK, SOFT, WHITE } from "./palette.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** Chances of one supplier. */
export interface ChanceRow {
  /** Name. */
  readonly name: string;
  /** Chance in each column, from 0 to 1. */
  readonly chances: readonly number[];
  /** As printed. */
  readonly printed: readonly string[];
}

/** Chances by row and column. */
export interface ChanceCellsData {
  /** Heads of the columns. */
  readonly columns: readonly string[];
  /** Rows in order. */
  readonly rows: readonly ChanceRow[];
  /** Said above the heads. */
  readonly across: string;
}

const PITCH = 24;

/** Tones from none to certain; letters turn white on the dark ones. */
const TONES = ["#ffffff", "#e4e9ef", "#cdd5df", "#a9b5c4", "#75849a", "#46556b"] as const;

/**
 * Draws chances as cells, the darker the greater, with the percentage in each.
 *
 * @param data - rows and columns
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a chance is not finite
 */
export function chanceCells(
  data: ChanceCellsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const column = labelColumn(
    data.rows.map(({ name }) => ({ name })),
    measure,
    { ...labelRoom(width), lines: 2 },
  );
  const left = column.width + 6;
  const cell = Math.min(72, (width - left) / Math.max(1, data.columns.length));
  const top = 2 * LINE_HEIGHT + 6;
  const pitches = column.heights.map((height) => Math.max(PITCH, height + 4));
  let y = top;
  const rows = data.rows.flatMap(({ name, chances, printed }, row) => {
    const [at, high] = [y, pitches[row] ?? PITCH];
    y += high;
    return [
      ...column.draw(row, at + high / 2),
      ...chances.flatMap((chance, i) => {
        const tone = Math.min(
          TONES.length - 1,
          Math.ceil(drawable(`picture of chances, ${name}`, chance) * 5 - 1e-9),
        );
        const isDark = tone >= 4;
        return [
          element("rect", {
            x: left + i * cell,
            y: at,
            width: cell,
            height: high,
            fill: TONES[tone],
            stroke: GRID,
          }),
          words(left + (i + 0.5) * cell, at + high / 2, printed[i] ?? "", {
            anchor: "middle",
            size: SMALL_SIZE,
            fill: isDark ? WHITE : INK,
          }),
        ];
      }),
    ];
  });
  return sheet(
    y + 4,
    [
      words(left, 7, data.across, { size: SMALL_SIZE, fill: SOFT }),
      ...data.columns.map((head, i) =>
        words(left + (i + 0.5) * cell, 7 + LINE_HEIGHT, head, {
          anchor: "middle",
          size: SMALL_SIZE,
          fill: SOFT,
        }),
      ),
      ...rows,
    ],
    width,
  );
}
