/**
 * The chapter on meters: what they say, what they corrected, and which one more would help.
 */

import { widest } from "../../meters/blindness.js";
import type { MeterMonthSeries, SeriesMonth } from "../../meters/series.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { allocationBlocks, baseLoadBlocks } from "./base-loads.js";
import type { ReportDesk } from "./desk.js";
import type { ReportInput } from "./input.js";
import {
  balanceBlocks,
  correctionTable,
  COVERED,
  coverageTable,
  sideBySide,
} from "./meter-tables.js";
import { outflowBlocks } from "./meter-outflow.js";
import { tierBlocks } from "./tier-table.js";
import { aboveModel, meterWords } from "./standing.js";

/** Meters listed as worth putting in. */
const MOST = 8;

/** A meter that narrows every interval by less is not listed. [percentage points] */
const LEAST = 0.1;

/**
 * Meters beside the model.
 *
 * @param desk - the report
 * @returns blocks
 */
export function meterBlocks(desk: ReportDesk): readonly Block[] {
  const { meters, metersMissing, calibrated } = desk.input;
  if (calibrated === undefined)
    return [desk.gap("meters", "Meters beside the model", metersMissing), ...outflowBlocks(desk)];
  if (meters.length === 0)
    return [
      text(
        `${metersMissing} Corrections by ${formatNumber(calibrated.meters.length, 0)} meters of the house are in every figure of this report.`,
      ),
      coverageTable(desk),
    ];
  const above = meters.map(aboveModel).filter((words) => words !== "");
  const months = new Set(meters.flatMap((series) => series.months.map(({ month }) => month)));
  return [
    text(
      `${formatNumber(calibrated.meters.length, 0)} meters over ${formatNumber(months.size, 0)} months correct the model. Over the lots as printed, meters of the site read ${above.join(", ")} than the model alone adds up to. What a meter counts beside its lots stands apart and is spread over none of them.`,
    ),
    ...sideBySide(desk),
    coverageTable(desk),
    ...tierBlocks(desk, COVERED),
    correctionTable(desk, calibrated),
    ...balanceBlocks(calibrated),
    ...baseLoadBlocks(calibrated),
    ...allocationBlocks(desk, calibrated),
    ...outflowBlocks(desk),
    ...meters.flatMap((series) => meterBlock(desk, series)),
  ];
}

function meterBlock(desk: ReportDesk, series: MeterMonthSeries): readonly Block[] {
  const { meter, quantity, unit, behind, spread, months } = series;
  const names = [...new Set(months.flatMap(({ machines }) => [...(machines?.keys() ?? [])]))];
  const machine = (month: SeriesMonth): number =>
    [...(month.machines?.values() ?? [])].reduce((sum, value) => sum + value, 0);
  const cell = (value: number | undefined): Cell =>
    numberCell(value === undefined ? "–" : formatNumber(value, 0));
  const where = behind === undefined ? "the site" : behind.join(", ");
  // A picture for each site; tables for all.
  const picture = (): Block =>
    desk.figure(
      `meter-${meter}`,
      `Meter ${meter} (${quantity}, ${where}) beside what machines come to, ${unit} a month`,
      "A mark at each month’s reading over bars of the machines behind the meter as corrected, with what no lot asks for on top; the gap between both is printed.",
      {
        kind: "meter-months",
        data: {
          quantity,
          unit,
          months: months.map((month) => ({
            month: month.month,
            ...(month.metered === undefined ? {} : { metered: month.metered }),
            modelled: machine(month) + (month.stream ?? 0),
            parts: [
              ...names.map((name) => ({
                name: name === "" ? "works" : name,
                value: month.machines?.get(name) ?? 0,
              })),
              { name: "no lot", value: month.stream ?? 0 },
            ],
          })),
        },
      },
    );
  return [
    ...(behind === undefined ? [picture()] : []),
    {
      kind: "table",
      id: `meter-${meter}-table`,
      caption: `Meter ${meter}, the model before and after correction, what no lot asks for, and what is left unexplained, ${unit} a month.${spread === true ? " Readings that do not begin and end with a month were shared by days." : ""}`,
      behind: true,
      head: [
        textCell("Month"),
        ...["Meter", "Model before", "Model corrected", "No lot", "Unexplained"].map((words) => ({
          ...textCell(words),
          align: "right" as const,
        })),
      ],
      rows: months.map((month) => [
        textCell(month.month, true),
        cell(month.metered),
        cell(month.modelled),
        cell(machine(month)),
        cell(month.stream),
        cell(
          month.metered === undefined
            ? undefined
            : month.metered - machine(month) - (month.stream ?? 0),
        ),
      ]),
    },
  ];
}

/**
 * Meters that would narrow savings most.
 *
 * @param desk - the report
 * @returns a table; nothing where none would
 */
export function blindnessBlocks(desk: ReportDesk): readonly Block[] {
  const all = (desk.input.blindness ?? []).filter((one) => widest(one) >= LEAST);
  if (all.length === 0) return [];
  return [
    {
      kind: "table",
      id: "blindness",
      caption:
        "What it costs not to see: by how many percentage points the 95 % interval of each saving would narrow, had one machine more a meter of usual accuracy (± 2 %, steam ± 5 %). One at a time, the widest first; a straight-line estimate that asks for no reading.",
      head: [
        textCell("Meter to put in"),
        ...["Water", "Final energy", "CO₂e"].map((words) => ({
          ...textCell(words),
          align: "right" as const,
        })),
      ],
      rows: all
        .slice(0, MOST)
        .map((one) => [
          textCell(meterWords(one), true),
          ...(["water", "energy", "co2-location"] as const).map((id) =>
            numberCell(formatNumber(one.points.get(id) ?? 0, 1)),
          ),
        ]),
      widths: [4, 1, 1, 1],
    },
  ];
}

/**
 * What the chapter on method says of meters.
 *
 * @param input - what the report is made of
 * @returns sentences
 */
export function meteringSentence(input: ReportInput): string {
  const { calibrated } = input;
  if (calibrated === undefined) return "No meter corrects the model.";
  const own = calibrated.states.filter(({ by }) => by === "measured").length;
  return `Meters correct the model: in every draw the logarithms of machine flows, of fuel per steam, of streams without meter and of readings are moved, each as far as its doubt goes (weighted least squares), until every meter’s balance closes; the factors that come out multiply the rates of ${formatNumber(calibrated.states.length, 0)} machines’ quantities on both routes, ${formatNumber(own, 0)} of them by a meter of their own (${formatPercent(own / calibrated.states.length)}). Water that a correction adds leaves by the drain or as vapour.`;
}

function text(said: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: said }] };
}
