/** Coverage of intervals in known worlds, in the page. */

import type { Block, Cell } from "../../src/report/document.js";
import { numberCell, textCell } from "../../src/report/figure-desk.js";
import { formatPercent } from "../../src/report/format.js";
import type { CalibrationTable, Coverage } from "./calibration.js";
import { head, paragraph } from "./cells.js";

/**
 * One table for each nature of worlds.
 *
 * @param tables - coverage
 * @returns blocks of a chapter
 */
export function worldBlocks(tables: readonly CalibrationTable[]): readonly Block[] {
  return [
    paragraph(
      "In these worlds everything is made up, so the truth is known, and the share of worlds can be counted in which a 95 % interval held it. The second number is half the interval that counting leaves.",
    ),
    {
      kind: "table",
      id: "worlds",
      caption:
        "Coverage of 95 % intervals by nature of the worlds, over all indicators, both routes and the saving.",
      head: head(["Worlds"], ["Number", "Lowest", "Mean", "Highest"]),
      rows: tables.map(({ title, worlds, overall }): readonly Cell[] => [
        textCell(title, true),
        numberCell(String(worlds)),
        ...[overall.lowest, overall.mean, overall.highest].map((share) =>
          numberCell(formatPercent(share)),
        ),
      ]),
      widths: [4, 1, 1, 1, 1],
    },
    ...tables.flatMap(({ title, words, worlds, draws, rows }, index): readonly Block[] => [
      { kind: "heading", level: 3, id: `worlds-${index + 1}`, text: title },
      paragraph(words),
      {
        kind: "table",
        id: `worlds-${index + 1}-table`,
        caption: `Coverage by indicator, ${worlds} worlds, ${draws} draws a report.`,
        behind: true,
        head: head(["Indicator"], ["Pigment", "Dye", "Saving"]),
        rows: rows.map(({ indicator, pigment, dye, saving }): readonly Cell[] => [
          textCell(indicator.replaceAll("-", " "), true),
          ...[pigment, dye, saving].map((found) => numberCell(coverageText(found))),
        ]),
        widths: [2, 1, 1, 1],
      },
    ]),
  ];
}

function coverageText(found: Coverage | undefined): string {
  if (found === undefined) return "–";
  return `${formatPercent(found.share)} ± ${formatPercent(found.error)}`;
}
