/**
 * Page one: the answer, the table of indicators, what gets worse, and what would help most.
 */

import type { IndicatorId } from "../../account/indicators.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell, Run } from "../document.js";
import { formatNumber, formatShareOfDraws } from "../format.js";
import { numberCell, textCell } from "../figure-desk.js";
import type { NotedComparison, ReportDesk } from "./desk.js";

/** Indicators of the table on page one. */
const TABLE: readonly (readonly [IndicatorId, string])[] = [
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
  ["cod", "COD load"],
  ["nitrogen", "nitrogen load"],
  ["salt", "dissolved salts"],
  ["energy", "final energy"],
  ["electricity", "electricity"],
  ["heat", "fuel and bought heat"],
  ["co2-location", "CO₂e (location)"],
  ["co2-market", "CO₂e (market)"],
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
  const { comparison, pigment, dye, unit, saving, difference } = noted;
  const name = WATCHED.find(([watched]) => watched === id)?.[1] ?? id;
  const rises = comparison.difference.median < 0;
  const runs: Run[] = [
    { kind: "text", text: `${capital(name)}: `, style: "bold" },
    { kind: "text", text: "pigment " },
    pigment.run,
    { kind: "text", text: `, dye ` },
    dye.run,
    { kind: "text", text: ` ${unit}; ` },
  ];
  if (saving === undefined) {
    runs.push({ kind: "text", text: "dye minus pigment " }, difference.run, {
      kind: "text",
      text: ` (95 % interval ${difference.interval})`,
    });
  } else {
    runs.push(
      { kind: "text", text: rises ? "the pigment route takes more: a change of " : "a fall of " },
      rises
        ? { kind: "text", text: formatNumber(-100 * (comparison.saving?.median ?? 0), 0) }
        : saving.run,
      { kind: "text", text: rises ? " %" : ` % (95 % interval ${saving.interval} %)` },
    );
  }
  runs.push({ kind: "text", text: comparison.resolved ? "." : ", so not resolved." });
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
        textCell(`${words}, ${unit.replace(" CO₂e", "")}`, true),
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
    caption: `Both routes on the same lots, per ${desk.input.reference.words}; medians of ${formatNumber(desk.input.account.draws.count, 0)} paired draws. P less: share of draws in which pigment takes less. Resolved: the interval leaves zero out.`,
    head: [
      "Indicator",
      "Pigment",
      "Dye",
      "Dye − P",
      "95 % interval",
      "% of D",
      "P less",
      "Measured",
      "Status",
    ].map((text, i) =>
      i === 0 || i === 8 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [3.9, 0.9, 0.7, 0.8, 2.15, 0.7, 1.1, 1.15, 1.15],
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
    textCell("First-quality yield, %", true),
    numberCell(share("pigment")),
    numberCell(share("dye")),
    numberCell("–"),
    numberCell("–"),
    numberCell("–"),
    numberCell("–"),
    numberCell("100 %"),
    textCell("logged"),
  ];
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
    return noted === undefined || !(noted.comparison.difference.median < 0)
      ? []
      : [{ words, noted }];
  });
  if (rising.length === 0) {
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
      ...rising.flatMap(({ words, noted }, i): readonly Run[] => [
        { kind: "text", text: words },
        { kind: "text", text: " rises from " },
        noted.dye.run,
        { kind: "text", text: " to " },
        noted.pigment.run,
        {
          kind: "text",
          text: ` ${noted.unit}${noted.comparison.resolved ? "" : " (not resolved)"}${i === rising.length - 1 ? "." : "; "}`,
        },
      ]),
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
  const best = [...desk.input.swings].flatMap(([id, { factors }]) => {
    const swing = factors.find(({ own }) => !own);
    return swing === undefined ? [] : [{ id, swing }];
  });
  const byFactor = new Map<string, string[]>();
  for (const { id, swing } of best) {
    const name = WATCHED.find(([watched]) => watched === id)?.[1] ?? id;
    byFactor.set(swing.words, [...(byFactor.get(swing.words) ?? []), name]);
  }
  const words = [...byFactor].map(([factor, names]) => `${factor} (for ${names.join(" and ")})`);
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "The measurement that would help most: ", style: "bold" },
      {
        kind: "text",
        text:
          words.length === 0
            ? "none, for every setting was given by the mill."
            : `${words.join("; ")}.`,
      },
    ],
  };
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
