/**
 * Tables of quality scores and of vintages.
 */

import type { Factor, FactorValue } from "../../factors/factor.js";
import { interval95 } from "../../numbers/distributions.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatDate } from "../format.js";
import { full, short, unitOf } from "./printed.js";
import type { Scores } from "./scores.js";

/**
 * Writes the scores, what each means, and what it alone does to the span of a 95 % interval.
 *
 * @param name - name of the factor's page
 * @param id - id of the factor
 * @param scores - its scores
 * @returns a table
 */
export function scoreTable(name: string, id: string, scores: Scores): Block {
  const { lines, span, alone, inForce } = scores;
  const [low, high] = alone === undefined ? [] : interval95(alone);
  const range =
    low === undefined || high === undefined ? "" : `, here ${short(low)} to ${short(high)}`;
  const does = inForce
    ? `they make the spread in force${range}.`
    : `shown only, since the spread is stated; alone they would make × / ÷ ${span.toFixed(2)}${range}.`;
  return {
    kind: "table",
    id: `scores-${name}`,
    caption: `${id}: quality scores, ${does}`,
    head: [
      textCell("Score of"),
      numberCell("1 (best) to 5"),
      textCell("Meaning"),
      numberCell("alone, × / ÷"),
    ],
    rows: [
      ...lines.map(({ name: of, score, means, factor }): readonly Cell[] => [
        textCell(of, true),
        numberCell(String(score)),
        textCell(means),
        numberCell(factor.toFixed(2)),
      ]),
      [
        textCell("together", true),
        numberCell(""),
        textCell("with 1.05 that no score removes; logarithms add in squares"),
        numberCell(span.toFixed(2)),
      ],
    ],
    widths: [2, 1, 5, 2],
  };
}

/**
 * Writes the vintages known on a day.
 *
 * @param name - name of the factor's page
 * @param factor - the factor
 * @param inForce - the value in force
 * @param date - the day, ISO 8601
 * @returns a table, newest first
 */
export function vintageTable(
  name: string,
  factor: Factor,
  inForce: FactorValue,
  date: string,
): Block {
  const known = factor.values.filter(({ entered }) => entered <= date);
  return {
    kind: "table",
    id: `vintages-${name}`,
    caption: `${factor.id}: vintages.`,
    head: [
      textCell("Holds from"),
      textCell("Entered"),
      numberCell(`Value${unitOf(factor) === "" ? "" : `, ${unitOf(factor)}`}`),
      numberCell("95 % interval"),
      textCell("Serves"),
    ],
    rows: known.map((value): readonly Cell[] => {
      const [low, high] = interval95(value.spread);
      return [
        textCell(formatDate(value.from), true),
        textCell(formatDate(value.entered)),
        numberCell(full(value.spread.value)),
        numberCell(low < high ? `${short(low)} to ${short(high)}` : "none"),
        textCell(servesWords(value, inForce, known)),
      ];
    }),
    widths: [3, 3, 3, 3, 2],
  };
}

function servesWords(
  value: FactorValue,
  inForce: FactorValue,
  known: readonly FactorValue[],
): string {
  if (value === inForce) return "in force now";
  const corrected = known.some((one) => one.from === value.from && one.entered > value.entered);
  return corrected ? "reports before its correction" : "earlier months";
}
