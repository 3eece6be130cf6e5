/**
 * Three published ways to ask which route takes less, side by side.
 */

import { type Finding, LEAST_DIFFERENCE, methodsOf } from "../../compare/methods.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatShareOfDraws } from "../format.js";
import { TABLE } from "./answer.js";
import type { ReportDesk } from "./desk.js";

const FINDINGS: Readonly<Record<Finding, string>> = {
  pigment: "pigment less",
  dye: "dye less",
  open: "open",
};

/**
 * The answers of the three methods to the indicators of page one.
 *
 * @param desk - the report
 * @returns a table
 */
export function methodBlocks(desk: ReportDesk): readonly Block[] {
  const { account, yields, comparisons, claims } = desk.input;
  const least = claims?.least ?? LEAST_DIFFERENCE;
  const rows = TABLE.flatMap(([id, words]): (readonly Cell[])[] => {
    const over = (arm: "pigment" | "dye"): Float64Array => {
      const all = account.indicators[arm].get(id) ?? new Float64Array(0);
      const areas = yields?.accepted[arm];
      return areas === undefined ? all : all.map((value, i) => value / (areas[i] ?? NaN));
    };
    if (!comparisons.has(id)) return [];
    const { share, paired, modified } = methodsOf(over("pigment"), over("dye"), least);
    return [
      [
        textCell(words, true),
        numberCell(formatShareOfDraws(share.less, share.count)),
        textCell(FINDINGS[share.finding]),
        numberCell(statistic(paired.t)),
        textCell(FINDINGS[paired.finding]),
        numberCell(statistic(modified.t)),
        textCell(FINDINGS[modified.finding]),
      ],
    ];
  });
  if (rows.length === 0) return [];
  return [
    {
      kind: "table",
      id: "comparison-methods",
      caption: `Which route takes less, by three published methods. Share of draws in which pigment takes less: from 95 % on an order counts as discernible, however small the difference (Heijungs and Kleijn 2001). Paired difference: mean over its standard error; it grows with the number of draws, so it settles next to nothing (Henriksson et al. 2015). Modified test: whether the difference exceeds ${formatNumber(least, least * 10 === Math.round(least * 10) ? 1 : 2)} of its standard deviation, one-sided at 5 %; the one to lean on (Heijungs, Henriksson and Guinée 2016). Never and always are not said: none of N draws leaves room for 3/N.`,
      head: [
        textCell("Indicator"),
        { ...textCell("Draws with less"), align: "right" },
        textCell("finding"),
        { ...textCell("Paired t"), align: "right" },
        textCell("finding"),
        { ...textCell("Modified t"), align: "right" },
        textCell("finding"),
      ],
      rows,
      widths: [1.9, 1.3, 1.4, 0.9, 1.4, 1.1, 1.4],
    },
  ];
}

function statistic(t: number): string {
  return Number.isFinite(t) ? formatNumber(t, Math.abs(t) < 10 ? 1 : 0) : "–";
}
