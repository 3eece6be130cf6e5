/**
 * Which settings of the plant file the lots were worked out with.
 */

import { formatDate, formatNumber } from "../format.js";
import type { ReportInput } from "./input.js";

/**
 * Says how many lots fall under each change of the plant file.
 *
 * @param input - the print house and its groups of lots
 * @returns a sentence; empty when the plant file states no changes
 */
export function settingsSentence(input: Pick<ReportInput, "plant" | "groups">): string {
  const parts = (input.plant.versions ?? []).flatMap(({ from, note }) => {
    const lots = input.groups
      .filter(({ key }) => key.settings === from)
      .reduce((sum, group) => sum + group.lots, 0);
    if (lots === 0) return [];
    const words = note === "" ? "" : ` (${note})`;
    return [
      `${formatNumber(lots, 0)} ${lots === 1 ? "lot" : "lots"} under ${from === "" ? "the plant file without its changes" : `its changes up to ${formatDate(from)}${words}`}`,
    ];
  });
  return parts.length === 0
    ? ""
    : `Settings are those in force on the day of the lot: ${parts.join(", ")}.`;
}
