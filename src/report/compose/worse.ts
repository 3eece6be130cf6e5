/**
 * What gets worse on the pigment route, for page one.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Range } from "../../compare/compare.js";
import type { Block, Run } from "../document.js";
import { digitsFor, formatInterval, formatNumber } from "../format.js";
import { concentration, concentrationRatio } from "./concentrations.js";
import { inkCost } from "./cost-split.js";
import type { NotedComparison, ReportDesk } from "./desk.js";
import { lowerGrades } from "./equivalence.js";
import { yieldFall } from "./first-quality.js";

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

/** Rise of a mean or concentration from which it is named. [-] */
const NOTICED = 1.05;

/**
 * What gets worse on the pigment route.
 *
 * @param desk - the report
 * @returns a sentence that names everything that rises, with intervals
 */
export function worseList(desk: ReportDesk): Block {
  const rising = WATCHED.flatMap(([id, words]) => {
    const noted = desk.compared(id);
    if (noted === undefined || !(noted.comparison.difference.median < 0)) return [];
    // A rise that the digits carried do not show, and that the draws do not settle, is none.
    const same = noted.pigment.value.text === noted.dye.value.text;
    return same && !noted.comparison.resolved ? [] : [rise(words, noted)];
  });
  const grades = lowerGrades(desk.input);
  const faster = grades === "" ? [] : [said(grades)];
  const worse = [...rising, stronger(desk), dearerInk(desk), yieldFall(desk), faster].filter(
    (runs) => runs.length > 0,
  );
  if (worse.length === 0) {
    return {
      kind: "paragraph",
      runs: [said("No indicator of this report has a higher median on the pigment route.")],
    };
  }
  return {
    kind: "paragraph",
    tone: "dense",
    runs: [
      { kind: "text", text: "What gets worse on the pigment route: ", style: "bold" },
      ...worse.flatMap((runs, i): readonly Run[] => [
        ...runs,
        said(i === worse.length - 1 ? "." : "; "),
      ]),
    ],
  };
}

function rise(words: string, noted: NotedComparison): readonly Run[] {
  const { comparison, pigment, dye, unit } = noted;
  const { saving } = comparison;
  const ratio: Range | undefined =
    saving === undefined
      ? undefined
      : { median: 1 - saving.median, low: 1 - saving.high, high: 1 - saving.low };
  return [
    said(`${words} `),
    ...fromTo(dye.run, pigment.run, ratio),
    said(` ${unit}${ratio === undefined ? ` (${pigment.interval})` : fold(ratio)}`),
  ];
}

// Permits limit concentration too, which can rise while the load falls.
function stronger(desk: ReportDesk): readonly Run[] {
  const dye = concentration(desk, "cod", "dye");
  const pigment = concentration(desk, "cod", "pigment");
  const ratio = concentrationRatio(desk, "cod");
  if (dye === undefined || pigment === undefined || ratio === undefined) return [];
  if (!(ratio.median > NOTICED)) return [];
  return [
    said("COD concentration at the drain (permits limit it) "),
    ...fromTo(dye.run, pigment.run, ratio),
    said(` mg/L${fold(ratio)}`),
  ];
}

function dearerInk(desk: ReportDesk): readonly Run[] {
  const ink = inkCost(desk);
  if (ink === undefined || !(ink.pigment > NOTICED * ink.dye)) return [];
  const digits = digitsFor(ink.pigment, 0.8 * ink.pigment, 1.2 * ink.pigment);
  const [from, to] = [ink.dye, ink.pigment].map((value) => formatNumber(value, digits));
  return [said(`cost of ink rises from ${from ?? ""} to ${to ?? ""} ${ink.unit} (means)`)];
}

// An interval that holds 1 leaves open whether it rises at all; then the medians may even stand the other way.
function fromTo(dye: Run, pigment: Run, ratio: Range | undefined): readonly Run[] {
  return ratio !== undefined && ratio.low <= 1
    ? [said("may rise: "), pigment, said(" instead of "), dye]
    : [said("rises from "), dye, said(" to "), pigment];
}

// How many times the amount, with its interval.
function fold({ median, low, high }: Range): string {
  const digits = digitsFor(median, low, high);
  return `, ${formatNumber(median, digits)}-fold (${formatInterval(low, high, digits)})`;
}

function said(text: string): Run {
  return { kind: "text", text };
}
