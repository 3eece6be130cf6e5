/**
 * What settings come to, beside what the machines can do.
 */

import { checksOf } from "../../account/checks.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { stepWords } from "./names.js";

/**
 * Table of checks, one row a route and step.
 *
 * @param desk - the report
 * @returns the table, or nothing where no step is checked
 */
export function machineChecks(desk: ReportDesk): readonly Block[] {
  const checks = checksOf(desk.input.account.program);
  if (checks.length === 0) return [];
  if (checks.every(({ most }) => most === undefined)) {
    const text =
      "The plant file does not say what fans can move, so settings are not held against it; `fan` of a machine does.";
    return [{ kind: "paragraph", tone: "small", runs: [{ kind: "text", text }] }];
  }
  return [
    {
      kind: "table",
      id: "machine-checks",
      caption:
        "What the settings come to, mean of all lots at the medians of the settings, beside what the machine can do. More than that means that a setting is wrong.",
      behind: true,
      head: ["Route, step and machine", "What", "By the settings", "The machine can do", ""].map(
        (text, i) => (i === 2 || i === 3 ? { ...textCell(text), align: "right" } : textCell(text)),
      ),
      rows: checks.map(({ route, step, machine, words, unit, value, most }): readonly Cell[] => [
        textCell(`${route}, ${stepWords(step)}, ${machine}`, true),
        textCell(`${words}, ${unit}`),
        numberCell(formatNumber(value, 0)),
        numberCell(most === undefined ? "not told" : formatNumber(most, 0)),
        textCell(most === undefined ? "" : value > most ? "more than it can do" : "within"),
      ]),
      widths: [3.4, 2.6, 1.3, 1.4, 1.4],
    },
  ];
}
