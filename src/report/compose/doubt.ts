/**
 * Chapters on doubt: distributions of the share saved, and what it rests on.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { FactorSwing } from "../../account/swings.js";
import { mean } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import { TABLE } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { valueText } from "./units.js";

const DISTRIBUTIONS: readonly (readonly [IndicatorId, string])[] = [
  ["water", "water withdrawn"],
  ["cod", "COD load"],
  ["energy", "final energy"],
  ["electricity", "electricity"],
  ["co2-location", "CO₂e, location-based"],
];

/** Factors shown in a picture of swings. */
const MOST_SWINGS = 10;

/** Change of the share saved from which a factor is listed. [percentage points] */
const LEAST_SWING = 0.5;

/**
 * Medians beside means: page one prints the former, break-downs add up the latter.
 *
 * @param desk - the report
 * @returns a table
 */
export function meanBlocks(desk: ReportDesk): readonly Block[] {
  const rows = TABLE.flatMap(([id, words]): (readonly Cell[])[] => {
    const noted = desk.compared(id);
    if (noted === undefined) return [];
    const of = (arm: "pigment" | "dye"): string => {
      const value = desk.per(
        id,
        mean(desk.input.account.indicators[arm].get(id) ?? new Float64Array(1)),
        arm,
      );
      const { low, high } = noted.comparison[arm];
      const digits = digitsFor(value, low * noted.scale, high * noted.scale) + 1;
      return formatNumber(value, Math.min(digits, Math.max(0, digitsFor(value))));
    };
    return [
      [
        textCell(`${words}, ${noted.unit}`, true),
        numberCell(noted.pigment.run),
        numberCell(of("pigment")),
        numberCell(noted.dye.run),
        numberCell(of("dye")),
      ],
    ];
  });
  return [
    {
      kind: "table",
      id: "medians-means",
      caption:
        "Median (page one) and mean of draws (break-downs) of the same totals. A lopsided distribution sets them apart; both are right, and they are never mixed in one sum.",
      head: ["Indicator", "Pigment, median", "mean", "Dye, median", "mean"].map((text, i) =>
        i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const },
      ),
      rows,
      widths: [3, 1.3, 0.9, 1.3, 0.9],
    },
  ];
}

/**
 * Distributions of the share saved over draws: picture and table.
 *
 * @param desk - the report
 * @returns blocks
 */
export function distributionBlocks(desk: ReportDesk): readonly Block[] {
  const panels = DISTRIBUTIONS.flatMap(([id, indicator]) => {
    const comparison = desk.input.comparisons.get(id);
    if (comparison?.saving === undefined || comparison.draws === undefined) return [];
    const { saving, less, count } = comparison;
    return [
      {
        indicator,
        unit: "%",
        digits: 0,
        draws: comparison.draws.map((value) => 100 * value),
        median: 100 * saving.median,
        low: 100 * saving.low,
        high: 100 * saving.high,
        less: formatShareOfDraws(less, count),
      },
    ];
  });
  if (panels.length === 0) {
    return [
      desk.gap(
        "distributions",
        "Share saved over draws",
        "The dye route takes next to nothing of these quantities, so no share is formed.",
      ),
    ];
  }
  return [
    desk.figure(
      "distributions",
      "Share saved by the pigment route over all draws, % of the dye route",
      "One panel an indicator: how the share saved is spread over the draws, with median and 95 % interval; below zero the pigment route takes more.",
      { kind: "saving-distribution", data: { panels } },
    ),
    {
      kind: "table",
      id: "distribution-table",
      caption: "Share saved by the pigment route, % of the dye route.",
      behind: true,
      head: [
        textCell("Indicator"),
        ...["Median", "2.5 %", "97.5 %", "Pigment less"].map((text) => ({
          ...textCell(text),
          align: "right" as const,
        })),
      ],
      rows: panels.map(({ indicator, median, low, high, less }) => [
        textCell(indicator, true),
        ...[median, low, high].map((value) => numberCell(formatNumber(value, 0))),
        numberCell(less),
      ]),
    },
  ];
}

/**
 * What the doubt of one saving rests on: picture and table.
 *
 * @param desk - the report
 * @param id - the indicator
 * @param words - what it is
 * @returns blocks
 */
export function swingBlocks(desk: ReportDesk, id: IndicatorId, words: string): readonly Block[] {
  const swings = desk.input.swings.get(id);
  if (swings === undefined || swings.factors.length === 0 || !Number.isFinite(swings.base)) {
    return [
      desk.gap(
        `${id}-swings`,
        `What the saving of ${words} rests on`,
        "No factor moves it: all settings were given without doubt.",
      ),
    ];
  }
  const moving = swings.factors.filter((swing) => reach(swing, swings.base) >= LEAST_SWING);
  const shown = (moving.length === 0 ? swings.factors : moving).slice(0, MOST_SWINGS);
  const listed = moving.slice(0, 2 * MOST_SWINGS);
  const left = swings.factors.length - listed.length;
  const end = (swing: FactorSwing, side: "low" | "high"): { label: string; change: number } => ({
    label: valueText(swing[side].value, swing.unit),
    change: 100 * (swing[side].saving - swings.base),
  });
  return [
    desk.figure(
      `${id}-swings`,
      `What the share saved of ${words} rests on: change in percentage points, one factor at a time`,
      "For each factor, how far the share saved moves when it alone goes to the low and to the high end of its 95 % interval.",
      {
        kind: "swing-bars",
        data: {
          saving: `share saved of ${words} (${formatPercent(swings.base)})`,
          digits: 0,
          factors: shown.map((swing) => ({
            factor: swing.words,
            low: end(swing, "low"),
            high: end(swing, "high"),
          })),
        },
      },
    ),
    {
      kind: "table",
      id: `${id}-swing-table`,
      caption: `Swings of the share saved of ${words}, one factor at a time, all others at their medians (share saved there: ${formatPercent(swings.base)}).${left === 0 ? "" : ` ${formatNumber(left, 0)} further factors are left out, each moving it by less than ${listed.length < moving.length ? "those shown" : "half a point"}.`}`,
      behind: true,
      head: [
        textCell("Factor"),
        textCell("Given by"),
        textCell("Low end"),
        { ...textCell("share saved"), align: "right" },
        textCell("High end"),
        { ...textCell("share saved"), align: "right" },
      ],
      rows: listed.map((swing) => [
        {
          strong: true,
          runs: [
            { kind: "text", text: `${swing.words} ` },
            { kind: "text", text: swing.factor, style: "code" },
          ],
        },
        textCell(swing.own ? "the mill" : "default"),
        textCell(valueText(swing.low.value, swing.unit)),
        numberCell(formatPercent(swing.low.saving)),
        textCell(valueText(swing.high.value, swing.unit)),
        numberCell(formatPercent(swing.high.saving)),
      ]),
      widths: [3.4, 0.9, 1.4, 0.9, 1.4, 0.9],
    },
  ];
}

// The larger of both changes, in percentage points.
function reach({ low, high }: FactorSwing, base: number): number {
  return 100 * Math.max(Math.abs(low.saving - base), Math.abs(high.saving - base));
}
