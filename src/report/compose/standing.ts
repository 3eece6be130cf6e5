/**
 * What the answer stands on, in a few lines for page one: blends, what is measured, whose estimates.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import type { MeterMonthSeries } from "../../meters/series.js";
import type { Block, Run } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { factorCounts } from "./factor-table.js";
import { isBlend, savedOf, subsetOf } from "./subsets.js";

/**
 * Blends as a condition of the answer.
 *
 * @param desk - the report
 * @returns runs that begin in small letters; empty where no lot is a blend
 */
export function blendRuns(desk: ReportDesk): readonly Run[] {
  const all = subsetOf(desk, () => true);
  const blends = subsetOf(desk, isBlend);
  if (blends.lots === 0 || !(all.accepted > 0)) return [];
  const rest = subsetOf(desk, (group) => !isBlend(group));
  const without =
    rest.accepted > 0
      ? `; without: water ${savedOf(rest, "water")}, energy ${savedOf(rest, "energy")} saved`
      : "";
  return [
    {
      kind: "text",
      text: `${formatPercent(blends.accepted / all.accepted)} of the area is blends with one fibre dyed, equivalent only if the shade allows${without}. `,
    },
  ];
}

/**
 * What is measured, what meters say, and how many numbers are estimates.
 *
 * @param desk - the report
 * @returns a paragraph
 */
export function evidenceLine(desk: ReportDesk): Block {
  const { meters, withReadings } = desk.input;
  const measured = BROKEN_DOWN.some((id) => desk.provenance(id).measured > 0);
  const above = meters.flatMap((series) => {
    const words = aboveModel(series);
    return words === "" ? [] : [words];
  });
  const { all, own } = factorCounts(desk);
  const parts = [
    measured ? "part is measured" : "nothing is measured",
    above.length === 0
      ? "no meter is set beside the lots"
      : `meters read ${above.join(", ")} than the lots’ model`,
    `readings of ${formatNumber(withReadings, 0)} lots are not yet used`,
    `${formatNumber(own, 0)} of ${formatNumber(all, 0)} numbers drawn are estimates without source`,
  ];
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "Evidence: ", style: "bold" },
      { kind: "text", text: `${parts.join("; ")}.` },
    ],
  };
}

/**
 * How far a meter reads above or below the model of the lots.
 *
 * @param series - its months
 * @returns words such as `31 % more water`; empty where no month has both
 */
export function aboveModel(series: MeterMonthSeries): string {
  let [metered, modelled] = [0, 0];
  for (const month of series.months) {
    if (month.metered === undefined || month.modelled === undefined) continue;
    metered += month.metered;
    modelled += month.modelled;
  }
  if (!(modelled > 0)) return "";
  const gap = metered / modelled - 1;
  return `${formatPercent(Math.abs(gap))} ${gap < 0 ? "less" : "more"} ${series.quantity}`;
}
