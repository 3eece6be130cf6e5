/**
 * Cost: what is priced, at which tariff, what it comes to on both routes, and what is not priced.
 */

import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatDate, formatNumber } from "../format.js";
import { costParts } from "./cost-split.js";
import type { NotedComparison, ReportDesk } from "./desk.js";
import { inventory } from "./tables.js";

const NOT_PRICED =
  "Not priced: protecting paper, chemicals and auxiliaries of pad, wash and finish, waste, treatment and surcharges by load, upkeep, rent, capital and the machines themselves. A route that needs more of these looks cheaper here than it is. This is no appraisal of a purchase.";

/**
 * Cost of both routes with what it counts.
 *
 * @param desk - the report
 * @returns a sentence, tables and what is left out; a sentence alone where nothing is priced
 */
export function costBlocks(desk: ReportDesk): readonly Block[] {
  const { plant, reference } = desk.input;
  const noted = desk.compared("cost");
  if (noted === undefined) {
    return [said("No prices stand in the plant file, so no cost is worked out.")];
  }
  const sites = Object.entries(plant.sites).flatMap(([name, { tariffs }]) =>
    tariffs === undefined
      ? []
      : [
          `Tariffs of ${name} are in ${tariffs.currency} of ${formatDate(tariffs.date)}, as given in the plant file.`,
        ],
  );
  return [
    finding(noted),
    inventory(
      desk,
      "cost-inventory",
      `Cost of the priced flows per ${reference.words}, medians with 95 % intervals.`,
      [["cost", "Cost"]],
    ),
    ...split(desk, noted),
    said(`${sites.join(" ")} ${NOT_PRICED}`),
  ];
}

function finding(noted: NotedComparison): Block {
  const { comparison, pigment, dye, difference, unit } = noted;
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "Priced flows cost ", style: "bold" },
      pigment.run,
      { kind: "text", text: ` ${unit} on the pigment route and ` },
      dye.run,
      { kind: "text", text: ` ${unit} on the dye route; dye minus pigment ` },
      difference.run,
      {
        kind: "text",
        text: ` (95 % interval ${difference.interval})${comparison.resolved ? "" : ", so which costs less is open"}.`,
      },
    ],
  };
}

function split(desk: ReportDesk, noted: NotedComparison): readonly Block[] {
  const parts = costParts(desk);
  if (parts === undefined)
    return [said("Tariffs differ by site or by date, so the cost is not split by flow here.")];
  const total = (arm: "pigment" | "dye"): number =>
    parts.reduce((sum, { cost }) => sum + cost[arm], 0);
  const largest = Math.max(total("pigment"), total("dye"));
  const digits = Math.max(0, digitsFor(largest, 0.97 * largest, 1.03 * largest));
  const money = (value: number): Cell => numberCell(formatNumber(value, digits));
  const amount = (value: number): Cell =>
    numberCell(
      value === 0 ? "0" : formatNumber(value, digitsFor(value, 0.95 * value, 1.05 * value)),
    );
  return [
    {
      kind: "table",
      id: "cost-split",
      caption: `What is priced: amount × tariff per ${desk.input.reference.words}, cost in ${noted.unit}. Means of draws, which add up; tariffs as given, drawn with their doubt. Ink is what the other flows leave of the total.`,
      head: ["Flow", "Tariff", "Amount P", "Amount D", "Cost P", "Cost D"].map((text, i) =>
        i < 2 ? textCell(text) : { ...textCell(text), align: "right" as const },
      ),
      rows: [
        ...parts.map((part): readonly Cell[] => [
          textCell(`${part.words}, ${part.amountUnit}`, true),
          textCell(part.price),
          amount(part.amount.pigment),
          amount(part.amount.dye),
          money(part.cost.pigment),
          money(part.cost.dye),
        ]),
        [
          textCell("Total of means", true),
          textCell(""),
          numberCell(""),
          numberCell(""),
          money(total("pigment")),
          money(total("dye")),
        ],
      ],
      widths: [2.6, 2.8, 1, 1, 0.9, 0.9],
    },
  ];
}

function said(text: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text }] };
}
