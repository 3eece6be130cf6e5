/**
 * Cost: what is priced, what is not, and since when.
 */

import type { Block } from "../document.js";
import { formatDate } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { inventory } from "./tables.js";

/**
 * Cost of both routes with what it counts.
 *
 * @param desk - the report
 * @returns a table and a paragraph; a sentence where nothing is priced
 */
export function costBlocks(desk: ReportDesk): readonly Block[] {
  const { plant, reference } = desk.input;
  if (desk.compared("cost") === undefined) {
    return [said("No prices stand in the plant file, so no cost is worked out.")];
  }
  const sites = Object.entries(plant.sites).flatMap(([name, { tariffs }]) => {
    if (tariffs === undefined) return [];
    const priced = [
      tariffs.electricity === undefined ? "" : "electricity",
      ...Object.keys(tariffs.fuel ?? {}).map((fuel) => fuel.replaceAll("-", " ")),
      tariffs.steam === undefined ? "" : "bought steam",
      tariffs.water === undefined ? "" : "water",
      tariffs.effluent === undefined ? "" : "effluent",
      tariffs.labour === undefined ? "" : "machine hours",
      ...Object.keys(tariffs.ink ?? {}).map((ink) => `${ink} ink`),
    ].filter((flow) => flow !== "");
    return [
      `Priced at ${name}, in ${tariffs.currency} of ${formatDate(tariffs.date)}: ${priced.join(", ")}.`,
    ];
  });
  return [
    inventory(
      desk,
      "cost-inventory",
      `Cost of the priced flows per ${reference.words}, medians with 95 % intervals.`,
      [["cost", "Cost"]],
    ),
    said(
      `${sites.join(" ")} Not priced: protecting paper, chemicals of pad and finish, waste, upkeep, rent and the machines themselves. A route that needs more of these looks cheaper here than it is. This is no appraisal of a purchase.`,
    ),
  ];
}

function said(text: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text }] };
}
