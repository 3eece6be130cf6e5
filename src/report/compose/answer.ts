/**
 * Page one: the answer in sentences, and the table of indicators.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell, Run } from "../document.js";
import { formatInterval, formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import { numberCell, textCell } from "../figure-desk.js";
import type { NotedComparison, ReportDesk } from "./desk.js";
import { yieldRow } from "./first-quality.js";

/** Indicators of the table on page one. */
export const TABLE: readonly (readonly [IndicatorId, string])[] = [
  ["water", "Water withdrawn"],
  ["cod", "COD load"],
  ["energy", "Final energy"],
  ["electricity", "Electricity"],
  ["co2-location", "CO₂e location"],
  ["co2-market", "CO₂e market"],
  ["cost", "Cost"],
];

/** Words of the sentences: what is taken, and how. */
const SENTENCES: readonly (readonly [IndicatorId, string, string])[] = [
  ["water", "Water withdrawn", "take"],
  ["cod", "COD load", "send to the drain"],
  ["energy", "Final energy", "take"],
  ["electricity", "Electricity", "take"],
  ["co2-location", "CO₂e (location)", "cause"],
];

/**
 * What every sentence of the answer shares: reference unit, lots, interval and measured share.
 *
 * @param desk - the report
 * @returns a paragraph that leads to the list
 */
export function answerLead(desk: ReportDesk): Block {
  const shares = SENTENCES.map(([id]) => measuredShare(desk, id));
  const [first = ""] = shares;
  const measured = shares.every((share) => share === first)
    ? `${first} measured`
    : `measured shares: ${SENTENCES.map(([, words], i) => `${words} ${shares[i] ?? ""}`).join(", ")}`;
  return {
    kind: "paragraph",
    runs: [
      said(
        `On the same lots, per ${desk.input.reference.words} (95 % intervals in brackets; ${measured}):`,
      ),
    ],
  };
}

/**
 * One sentence per indicator.
 *
 * @param desk - the report
 * @returns a list
 */
export function answerList(desk: ReportDesk): Block {
  const items = SENTENCES.flatMap(([id, words, verb]) => {
    const noted = desk.compared(id);
    return noted === undefined ? [] : [answer(desk, words, verb, noted)];
  });
  return { kind: "list", ordered: false, items };
}

function answer(
  desk: ReportDesk,
  words: string,
  verb: string,
  noted: NotedComparison,
): readonly Run[] {
  const { comparison, pigment, dye, saving, difference } = noted;
  const { suffix } = desk.input.reference;
  const unit = suffix === "" ? noted.unit : noted.unit.replace(`/${suffix}`, "");
  const rises = comparison.difference.median < 0;
  const { low = NaN, high = NaN, median = NaN } = comparison.saving ?? {};
  const open = comparison.resolved ? "" : ", open";
  const runs: Run[] = [
    { kind: "text", text: `${words}: `, style: "bold" },
    said(`pigment would ${verb} `),
    pigment.run,
    said(" instead of "),
    dye.run,
    said(` ${unit}, `),
  ];
  if (saving === undefined) {
    runs.push(said("dye minus pigment "), difference.run);
    runs.push(said(` ${unit} (${difference.interval})${open}`));
  } else {
    runs.push(rises ? said(formatNumber(-100 * median, 0)) : saving.run);
    const interval = rises ? formatInterval(-100 * high, -100 * low, 0) : saving.interval;
    runs.push(said(` % ${rises ? "more" : "less"} (${interval} %)${open}`));
  }
  runs.push(said("."));
  return runs;
}

/**
 * Table of indicators: both routes absolute, difference, interval, probability, shares measured and from the
 * mill's own settings, and whether the interval leaves zero out.
 *
 * @param desk - the report
 * @returns the table
 */
export function answerTable(desk: ReportDesk): Block {
  const rows: (readonly Cell[])[] = TABLE.flatMap(([id, words]) => {
    const noted = desk.compared(id);
    if (noted === undefined) return [];
    const { comparison, pigment, dye, difference, unit } = noted;
    return [
      [
        textCell(`${words}, ${unit.replace(" CO₂e", "")}`, true),
        numberCell(pigment.run),
        numberCell(dye.run),
        numberCell(difference.run),
        numberCell(difference.interval),
        numberCell(formatShareOfDraws(comparison.less, comparison.count)),
        numberCell(ownShare(desk, id)),
        textCell(comparison.resolved ? "yes" : "no"),
      ],
    ];
  });
  rows.push(yieldRow(desk));
  return {
    kind: "table",
    id: "indicators",
    caption: `Same lots on both routes, per ${desk.input.reference.words}; medians of ${formatNumber(desk.input.account.draws.count, 0)} paired draws.`,
    head: [
      "Indicator",
      "Pigment",
      "Dye",
      "Dye\u00a0−\u00a0P",
      "95 % interval",
      "P\u00a0less",
      "Mill’s\u00a0own",
      "Not\u00a0zero",
    ].map((text, i) =>
      i === 0 || i === 7 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [3.5, 0.95, 0.75, 1.05, 1.95, 1.25, 1.35, 1.15],
  };
}

/**
 * What the columns of the table say, and what its numbers may not be taken for.
 *
 * @param desk - the report
 * @returns a small paragraph
 */
export function tableNotes(desk: ReportDesk): Block {
  const logged =
    desk.input.yields === undefined
      ? "each route’s own, different lots"
      : "with the yields of the plant file";
  const text = `Mill’s own: from its ${desk.input.calibrated === undefined ? "settings" : "meters and settings"}, the rest is defaults. Not zero: direction only, not quality of evidence. Yield: ${logged}, in points. Medians here; break-downs add means, which differ a little.`;
  return { kind: "paragraph", tone: "small", runs: [said(text)] };
}

// Of the indicators that are broken down, both routes alike.
function ownShare(desk: ReportDesk, id: IndicatorId): string {
  const broken = BROKEN_DOWN.find((known) => known === id);
  if (broken === undefined) return "–";
  const { measured, allocated, modelled } = desk.provenance(broken);
  return formatPercent(measured + allocated + modelled);
}

// Where an indicator is not broken down, its share is known only as long as nothing is measured at all.
function measuredShare(desk: ReportDesk, id: IndicatorId): string {
  const broken = BROKEN_DOWN.find((known) => known === id);
  if (broken !== undefined) return formatPercent(desk.provenance(broken).measured);
  return BROKEN_DOWN.some((known) => desk.provenance(known).measured > 0) ? "–" : formatPercent(0);
}

function said(text: string): Run {
  return { kind: "text", text };
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
