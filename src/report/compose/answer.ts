/**
 * Page one: the answer, the table of indicators, what gets worse, and what would help most.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { FactorSwing } from "../../account/swings.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell, Run } from "../document.js";
import { formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import { numberCell, textCell } from "../figure-desk.js";
import type { NotedComparison, ReportDesk } from "./desk.js";

/** Indicators of the table on page one. */
const TABLE: readonly (readonly [IndicatorId, string])[] = [
  ["water", "Water withdrawn"],
  ["cod", "COD load, before treatment"],
  ["energy", "Final energy"],
  ["electricity", "of which electricity"],
  ["co2-location", "CO₂e, location-based"],
  ["co2-market", "CO₂e, market-based"],
  ["cost", "Cost of priced flows"],
];

/** Indicators that are named when they rise. */
const WATCHED: readonly (readonly [IndicatorId, string])[] = [
  ["water", "water withdrawn"],
  ["evaporated", "water evaporated"],
  ["cod", "COD load"],
  ["nitrogen", "nitrogen load"],
  ["salt", "dissolved salts"],
  ["energy", "final energy"],
  ["electricity", "electricity"],
  ["heat", "fuel and bought heat"],
  ["co2-location", "CO₂e, location-based"],
  ["co2-market", "CO₂e, market-based"],
  ["carbon-to-air", "organic carbon to air"],
  ["formaldehyde", "formaldehyde to air"],
  ["paper", "protecting paper"],
  ["hours", "machine time"],
];

/**
 * One sentence per indicator.
 *
 * @param desk - the report
 * @returns a list
 */
export function answerList(desk: ReportDesk): Block {
  const items = (["water", "cod", "energy", "co2-location"] as const).flatMap((id) => {
    const noted = desk.compared(id);
    return noted === undefined ? [] : [answer(id, noted)];
  });
  return { kind: "list", ordered: false, items };
}

function answer(id: IndicatorId, noted: NotedComparison): readonly Run[] {
  const { comparison, pigment, dye, difference, unit, saving } = noted;
  const name = WATCHED.find(([watched]) => watched === id)?.[1] ?? id;
  const rises = comparison.difference.median < 0;
  const runs: Run[] = [
    { kind: "text", text: `${capital(name)}: `, style: "bold" },
    { kind: "text", text: "the pigment route takes " },
    pigment.run,
    { kind: "text", text: ` ${unit}, the dye route ` },
    dye.run,
    { kind: "text", text: ` ${unit}; dye minus pigment ` },
    difference.run,
    { kind: "text", text: ` ${unit} (95 % interval ${difference.interval})` },
  ];
  if (saving !== undefined) {
    runs.push(
      { kind: "text", text: `, ${rises ? "a rise" : "a fall"} of ` },
      {
        ...saving.run,
        ...("text" in saving.run
          ? { text: formatNumber(Math.abs(100 * (comparison.saving?.median ?? 0)), 0) }
          : {}),
      } as Run,
      { kind: "text", text: ` % of the dye route (interval ${saving.interval} %)` },
    );
  }
  runs.push({
    kind: "text",
    text: `. Pigment takes less in ${formatShareOfDraws(comparison.less, comparison.count)} of draws${comparison.resolved ? "." : ": the difference is not resolved."}`,
  });
  return runs;
}

/**
 * Table of indicators: both routes absolute, difference, interval, probability, measured share, status.
 *
 * @param desk - the report
 * @returns the table
 */
export function answerTable(desk: ReportDesk): Block {
  const rows: (readonly Cell[])[] = TABLE.flatMap(([id, words]) => {
    const noted = desk.compared(id);
    if (noted === undefined) return [];
    const { comparison, pigment, dye, difference, saving, unit } = noted;
    return [
      [
        textCell(`${words}, ${unit}`, true),
        numberCell(pigment.run),
        numberCell(dye.run),
        numberCell(difference.run),
        numberCell(difference.interval),
        saving === undefined ? numberCell("none") : numberCell(saving.run),
        numberCell(formatShareOfDraws(comparison.less, comparison.count)),
        numberCell("0 %"),
        textCell(comparison.resolved ? "resolved" : "open"),
      ],
    ];
  });
  const yields = desk.input.comparisons.size > 0 ? yieldRow(desk) : undefined;
  if (yields !== undefined) rows.push(yields);
  return {
    kind: "table",
    id: "indicators",
    caption: `Both routes on the same lots, per ${desk.input.reference.words}: medians of ${formatNumber(desk.input.account.draws.count, 0)} paired draws. “P less” is the share of draws in which pigment takes less; “resolved” means that the 95 % interval of the difference leaves zero out. Claims are not assessed.`,
    head: [
      "Indicator",
      "Pigment",
      "Dye",
      "Dye − pigment",
      "95 % interval",
      "% of dye",
      "P less",
      "Measured",
      "Difference",
    ].map((text, i) =>
      i === 0 || i === 8 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [2.9, 1, 1, 1.1, 1.6, 0.9, 0.95, 1, 1.1],
  };
}

// What the mill itself logged; not a matter of draws.
function yieldRow(desk: ReportDesk): readonly Cell[] | undefined {
  const area = { pigment: { printed: 0, accepted: 0 }, dye: { printed: 0, accepted: 0 } };
  const places = amountPlaces();
  for (const { key, amounts } of desk.input.groups) {
    if (key.kind === "overhead") continue;
    area[key.own].printed += amounts[places.printed] ?? 0;
    area[key.own].accepted += amounts[places.accepted] ?? 0;
  }
  const share = (own: "pigment" | "dye"): Run | string =>
    area[own].printed > 0
      ? desk.figures.plain(`yield.${own}`, (100 * area[own].accepted) / area[own].printed, "%", {
          digits: 1,
          of: "count",
        }).run
      : "no lots";
  return [
    textCell("First-quality yield as logged, %", true),
    numberCell(share("pigment")),
    numberCell(share("dye")),
    numberCell("–"),
    numberCell("–"),
    numberCell("–"),
    numberCell("–"),
    numberCell("100 %"),
    textCell("as logged"),
  ];
}

/**
 * What gets worse on the pigment route.
 *
 * @param desk - the report
 * @returns a list, or a sentence when nothing rises
 */
export function worseList(desk: ReportDesk): Block {
  const items: (readonly Run[])[] = WATCHED.flatMap(([id, words]) => {
    const noted = desk.compared(id);
    if (noted === undefined || !(noted.comparison.difference.median < 0)) return [];
    const open = noted.comparison.resolved
      ? ""
      : ", though the interval of the difference holds zero";
    return [
      [
        { kind: "text", text: capital(words), style: "bold" },
        { kind: "text", text: " rises from " },
        noted.dye.run,
        { kind: "text", text: " to " },
        noted.pigment.run,
        { kind: "text", text: ` ${noted.unit}${open}.` },
      ],
    ];
  });
  return items.length > 0
    ? { kind: "list", ordered: false, items }
    : {
        kind: "paragraph",
        runs: [
          {
            kind: "text",
            text: "No indicator of this report has a higher median on the pigment route.",
          },
        ],
      };
}

/**
 * The measurement that would help most: the widest swing among what the mill did not give.
 *
 * @param desk - the report
 * @returns a sentence
 */
export function bestMeasurement(desk: ReportDesk): Block {
  const best: { id: IndicatorId; swing: FactorSwing }[] = [];
  for (const [id, swings] of desk.input.swings) {
    const swing = swings.factors.find(({ own }) => !own);
    if (swing !== undefined) best.push({ id, swing });
  }
  const sentences = best.map(
    ({ id, swing }) =>
      `For ${WATCHED.find(([watched]) => watched === id)?.[1] ?? id}: ${swing.words} (${swing.factor}); over its present interval the share saved goes from ${formatPercent(Math.min(swing.low.saving, swing.high.saving))} to ${formatPercent(Math.max(swing.low.saving, swing.high.saving))}.`,
  );
  return {
    kind: "list",
    ordered: false,
    items: sentences.map((text) => [{ kind: "text", text }]),
  };
}

/**
 * First letter large.
 *
 * @param text - words
 * @returns the words as a beginning of a sentence
 */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/**
 * Places of amounts that chapters read.
 *
 * @returns places in the list of amounts
 */
export function amountPlaces(): Readonly<
  Record<"accepted" | "printed" | "mass" | "length" | "lots", number>
> {
  const at = (name: string): number => AMOUNTS.findIndex((amount) => amount.name === name);
  return {
    accepted: at("accepted"),
    printed: at("printed"),
    mass: at("mass"),
    length: at("length"),
    lots: at("lots"),
  };
}
