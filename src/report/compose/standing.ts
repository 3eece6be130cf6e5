/**
 * What the answer stands on, in a few lines for page one: blends, what is measured, whose estimates.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import type { Calibrated } from "../../meters/calibrate.js";
import { type Blindness, widest } from "../../meters/blindness.js";
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
      ? ` (without them, in means: water saved ${savedOf(rest, "water")} instead of ${savedOf(all, "water")}, energy ${savedOf(rest, "energy")} instead of ${savedOf(all, "energy")})`
      : "";
  return [
    {
      kind: "text",
      text: `${formatPercent(blends.accepted / all.accepted)} of the area is blends, one fibre dyed: equivalent only if the shade allows${without}. `,
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
  const { meters, withReadings, calibrated, blindness = [] } = desk.input;
  const measured = BROKEN_DOWN.some((id) => desk.provenance(id).measured > 0);
  const above = meters.map(aboveModel).filter((words) => words !== "");
  const { all, own } = factorCounts(desk);
  const [best] = blindness;
  const points = best === undefined ? 0 : widest(best);
  const low = ["water", "energy"] as const;
  const poor = low.some((id) => Math.min(...armsKnown(desk, id)) < LOW_COVERAGE);
  const parts = [
    calibrated === undefined
      ? measured
        ? "part rests on readings"
        : "no figure rests on a meter or a lot’s reading"
      : "metered as in the table",
    ...(above.length === 0
      ? calibrated === undefined
        ? ["no meter is set beside the lots"]
        : []
      : [
          `meters read ${above.join(", ")} than the lots’ model${calibrated === undefined ? "" : " before it was corrected by them"}`,
        ]),
    ...(poor && best !== undefined && points >= 1
      ? [
          `one meter would narrow a saving most: ${meterWords(best)}, by ${formatNumber(points, 0)} points`,
        ]
      : []),
    ...(withReadings === 0 ? [] : [readLotWords(withReadings, calibrated)]),
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
 * What readings of single lots do.
 *
 * @param withReadings - lots that have one
 * @param calibrated - what meters corrected; absent where nothing did
 * @returns words that begin in small letters
 */
export function readLotWords(withReadings: number, calibrated?: Calibrated): string {
  const used = (calibrated?.meters ?? []).filter(({ use }) => use.lots !== undefined);
  const lots = (count: number): string => formatNumber(count, 0);
  return used.length === 0
    ? `readings of ${lots(withReadings)} lots are not used, for \`readings\` in plant.yaml does not say what they count`
    : `readings of lots correct the model: ${used.map(({ use }) => `${use.name}, ${lots(use.lots ?? 0)} of them`).join("; ")}`;
}

/** Share measured and allocated below which a meter to put in is named. */
const LOW_COVERAGE = 0.5;

function armsKnown(desk: ReportDesk, id: "water" | "energy"): readonly number[] {
  return (["pigment", "dye"] as const).map((arm) => {
    const { measured, allocated } = desk.shares(id, arm);
    return measured + allocated;
  });
}

/**
 * How far a meter of a site reads above or below the model of the lots.
 *
 * @param series - its months
 * @returns words such as `31 % more water`; empty where no month has both
 */
export function aboveModel(series: MeterMonthSeries): string {
  if (series.behind !== undefined) return "";
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

/**
 * A meter in words.
 *
 * @param one - the meter
 * @returns words such as `water of wash-range`
 */
export function meterWords(one: Blindness): string {
  return `${one.carrier} of ${one.machine}`;
}
