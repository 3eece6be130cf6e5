/**
 * Page one: the answer, the table of indicators, what gets worse, and what would help most.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell, Run } from "../document.js";
import {
  digitsFor,
  formatInterval,
  formatNumber,
  formatPercent,
  formatShareOfDraws,
} from "../format.js";
import { concentration } from "./tables.js";
import { numberCell, textCell } from "../figure-desk.js";
import type { NotedComparison, ReportDesk } from "./desk.js";
import { yieldFall, yieldRow } from "./first-quality.js";

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

/** Indicators that are named when they rise. */
const WATCHED: readonly (readonly [IndicatorId, string])[] = [
  ["water", "water withdrawn"],
  ["evaporated", "water evaporated"],
  ["discharged", "water discharged"],
  ["cod", "COD load"],
  ["nitrogen", "nitrogen load"],
  ["salt", "dissolved salts"],
  ["energy", "final energy"],
  ["electricity", "electricity"],
  ["heat", "fuel and bought heat"],
  ["co2-location", "CO₂e (location)"],
  ["co2-market", "CO₂e (market)"],
  ["biogenic", "biogenic CO₂"],
  ["carbon-to-air", "organic carbon to air"],
  ["formaldehyde", "formaldehyde to air"],
  ["ink", "ink"],
  ["paper", "protecting paper"],
  ["hours", "machine time"],
  ["labour", "labour time"],
  ["cost", "cost of the priced flows"],
];

/**
 * One sentence per indicator.
 *
 * @param desk - the report
 * @returns a list
 */
export function answerList(desk: ReportDesk): Block {
  const items = (["water", "cod", "energy", "electricity", "co2-location"] as const).flatMap(
    (id) => {
      const noted = desk.compared(id);
      return noted === undefined ? [] : [answer(id, noted)];
    },
  );
  return { kind: "list", ordered: false, items };
}

function answer(id: IndicatorId, noted: NotedComparison): readonly Run[] {
  const { comparison, pigment, dye, unit, saving, difference } = noted;
  const name = WATCHED.find(([watched]) => watched === id)?.[1] ?? id;
  const rises = comparison.difference.median < 0;
  const { low = NaN, high = NaN } = comparison.saving ?? {};
  const runs: Run[] = [
    { kind: "text", text: `${capital(name)}: `, style: "bold" },
    { kind: "text", text: "pigment takes " },
    pigment.run,
    { kind: "text", text: `, dye ` },
    dye.run,
    { kind: "text", text: ` ${unit}; ` },
  ];
  if (saving === undefined) {
    runs.push({ kind: "text", text: "dye minus pigment " }, difference.run, {
      kind: "text",
      text: ` (${difference.interval})`,
    });
  } else {
    runs.push(
      { kind: "text", text: "that is " },
      rises
        ? { kind: "text", text: formatNumber(-100 * (comparison.saving?.median ?? 0), 0) }
        : saving.run,
      {
        kind: "text",
        text: rises
          ? ` % more (${formatInterval(-100 * high, -100 * low, 0)} %)`
          : ` % less (${saving.interval} %)`,
      },
    );
  }
  runs.push({ kind: "text", text: comparison.resolved ? "." : ", zero inside." });
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
    const { comparison, pigment, dye, difference, unit } = noted;
    return [
      [
        textCell(`${words}, ${unit.replace(" CO₂e", "")}`, true),
        numberCell(pigment.run),
        numberCell(dye.run),
        numberCell(difference.run),
        numberCell(difference.interval),
        numberCell(formatShareOfDraws(comparison.less, comparison.count)),
        numberCell(measuredShare(desk, id)),
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
      "Pigment less",
      "Measured",
      "Sign\u00a0known",
    ].map((text, i) =>
      i === 0 || i === 7 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [3.3, 0.95, 0.65, 1.15, 2.05, 1.7, 1.2, 1.2],
  };
}

// Where an indicator is not broken down, its share is known only as long as nothing is measured at all.
function measuredShare(desk: ReportDesk, id: IndicatorId): string {
  const broken = BROKEN_DOWN.find((known) => known === id);
  if (broken !== undefined) return formatPercent(desk.provenance(broken).measured);
  return BROKEN_DOWN.some((known) => desk.provenance(known).measured > 0) ? "–" : formatPercent(0);
}

/**
 * What gets worse on the pigment route.
 *
 * @param desk - the report
 * @returns a sentence that names everything that rises
 */
export function worseList(desk: ReportDesk): Block {
  const rising = WATCHED.flatMap(([id, words]) => {
    const noted = desk.compared(id);
    if (noted === undefined || !(noted.comparison.difference.median < 0)) return [];
    // A rise that the digits carried do not show, and that the draws do not settle, is none.
    const same = noted.pigment.value.text === noted.dye.value.text;
    return same && !noted.comparison.resolved ? [] : [{ words, noted }];
  });
  const named = rising.map(({ words, noted }): readonly Run[] => [
    { kind: "text", text: `${words} rises from ` },
    noted.dye.run,
    { kind: "text", text: " to " },
    noted.pigment.run,
    {
      kind: "text",
      text: ` ${noted.unit}${times(noted)}${noted.comparison.resolved ? "" : " (the interval holds zero)"}`,
    },
  ]);
  const worse = [...named, stronger(desk), yieldFall(desk)].filter((runs) => runs.length > 0);
  if (worse.length === 0) {
    return {
      kind: "paragraph",
      runs: [
        {
          kind: "text",
          text: "No indicator of this report has a higher median on the pigment route.",
        },
      ],
    };
  }
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "What gets worse on the pigment route: ", style: "bold" },
      ...worse.flatMap((runs, i): readonly Run[] => [
        ...runs,
        { kind: "text", text: i === worse.length - 1 ? "." : "; " },
      ]),
    ],
  };
}

// A rise to several times the amount is said so.
function times({ comparison }: NotedComparison): string {
  const ratio = comparison.pigment.median / comparison.dye.median;
  return ratio >= 2 && Number.isFinite(ratio) ? `, ${formatNumber(ratio, 0)} times` : "";
}

// Permits limit concentration too, which can rise while the load falls.
function stronger(desk: ReportDesk): readonly Run[] {
  const pigment = concentration(desk, "cod", "pigment");
  const dye = concentration(desk, "cod", "dye");
  if (!(dye > 0 && pigment > 1.05 * dye)) return [];
  const text = (value: number): string =>
    formatNumber(value, digitsFor(value, 0.8 * value, 1.2 * value));
  return [
    {
      kind: "text",
      text: `COD in the effluent from ${text(dye)} to ${text(pigment)} mg/L (means)`,
    },
  ];
}

/**
 * First letter large.
 *
 * @param text - words
 * @returns the words as a beginning of a sentence
 */
function capital(text: string): string {
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
