/**
 * The finding at the head of a chapter.
 */

import type { BrokenDown } from "../../account/account.js";
import { byStep } from "../../account/breakdown.js";
import type { Block, Run } from "../document.js";
import { formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { stepWords } from "./names.js";

/**
 * One quantity on both routes with the step that takes most of it, and where its numbers come from.
 *
 * @param desk - the report
 * @param id - the indicator
 * @param words - what it is
 * @returns a sentence and a strip
 */
export function findingBlocks(desk: ReportDesk, id: BrokenDown, words: string): readonly Block[] {
  const noted = desk.compared(id);
  if (noted === undefined) return [];
  const steps = byStep(desk.input.account, id);
  // A load leaves with the wash water, and is charged to the step that put the substance on the cloth.
  const at = id === "cod" ? "added at" : "at";
  const most = (arm: "pigment" | "dye"): string => {
    const total = steps.reduce((sum, step) => sum + step[arm], 0);
    const largest = steps.reduce((found, step) => (step[arm] > found[arm] ? step : found), {
      role: "",
      pigment: 0,
      dye: 0,
    });
    if (largest.role === "" || !(total > 0)) return "";
    const share = largest[arm] / total;
    const what = share > 0.5 ? "most of it" : "the largest part";
    return ` (${what} ${at} ${stepWords(largest.role)}: ${formatPercent(share)})`;
  };
  const { comparison } = noted;
  const runs: Run[] = [
    { kind: "text", text: `${words}: `, style: "bold" },
    noted.pigment.run,
    { kind: "text", text: ` ${noted.unit} on the pigment route${most("pigment")}, ` },
    noted.dye.run,
    { kind: "text", text: ` ${noted.unit} on the dye route${most("dye")}; dye minus pigment ` },
    noted.difference.run,
    {
      kind: "text",
      text: ` (95 % interval ${noted.difference.interval})${comparison.resolved ? "" : ", which holds zero: which route takes less is open"}.`,
    },
  ];
  return [
    { kind: "paragraph", runs },
    {
      kind: "strip",
      words: `${words} on both routes: where the numbers come from`,
      shares: desk.provenance(id),
    },
  ];
}
