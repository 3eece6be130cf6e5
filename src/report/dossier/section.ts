/**
 * The page of one factor.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Factor, FactorValue, Source } from "../../factors/factor.js";
import { valueInForce } from "../../factors/in-force.js";
import { interval95, meanOf, medianOf } from "../../numbers/distributions.js";
import type { Spread } from "../../numbers/spread.js";
import type { Block, Run } from "../document.js";
import { textCell } from "../figure-desk.js";
import { formatDate, formatPercent } from "../format.js";
import { densityCurve } from "./density.js";
import type { DossierInput } from "./input.js";
import {
  factorAnchor,
  full,
  indicatorWords,
  LEAST,
  printedShare,
  short,
  unitOf,
} from "./printed.js";
import { type Scores, scoresOf } from "./scores.js";
import { scoreTable, vintageTable } from "./tables.js";
import type { FactorUse } from "./uses.js";

const SHAPES: Readonly<Record<Spread["shape"], readonly [shape: string, value: string]>> = {
  fixed: ["without doubt", "certain"],
  normal: ["normal", "mean"],
  lognormal: ["lognormal", "median"],
  triangular: ["triangular", "most likely"],
  uniform: ["uniform", "as stated"],
  pert: ["beta-PERT", "most likely"],
};

/**
 * Writes the page of a factor.
 *
 * @param factor - the factor
 * @param newPage - whether it starts a page in print
 * @param input - the dossier
 * @param shares - its shares of the squared swings, by indicator
 * @returns heading, picture and tables
 */
export function sectionOf(
  factor: Factor,
  newPage: boolean,
  input: DossierInput,
  shares: ReadonlyMap<IndicatorId, number> | undefined,
): readonly Block[] {
  const name = factorAnchor(factor.id);
  const heading: Block = { kind: "heading", level: 3, id: name, text: factor.id, newPage };
  const inForce = valueInForce(factor, input.date.slice(0, 7), input.date)?.value;
  if (inForce === undefined) {
    const text = `${factor.words}. No value had been entered by ${formatDate(input.date)}.`;
    return [heading, { kind: "paragraph", runs: [{ kind: "text", text }] }];
  }
  const scores = scoresOf(factor, inForce);
  return [
    heading,
    picture(name, factor, inForce, scores),
    {
      kind: "table",
      id: `facts-${name}`,
      caption: `${factor.id}: what stands behind it.`,
      head: [textCell("Question"), textCell("Answer")],
      rows: facts(factor, inForce, scores, input, shares).map(([question, ...runs]) => [
        textCell(question, true),
        { runs },
      ]),
      widths: [1, 5],
    },
    scoreTable(name, factor.id, scores),
    vintageTable(name, factor, inForce, input.date),
  ];
}

function picture(name: string, factor: Factor, value: FactorValue, scores: Scores): Block {
  const { spread } = value;
  const [low, high] = interval95(spread);
  const printed = [short(low), full(spread.value), short(high)] as const;
  const unit = unitOf(factor);
  const compared =
    spread.shape === "fixed" || scores.inForce || scores.alone === undefined ? [] : [scores.alone];
  return {
    kind: "figure",
    id: `spread-${name}`,
    title: `${factor.words}${unit === "" ? "" : `, ${unit}`}`,
    description:
      low < high
        ? `Value ${printed[1]}, 95 % interval ${printed[0]} to ${printed[2]}, ${SHAPES[spread.shape][0]}.`
        : `Value ${printed[1]}, without doubt.`,
    chart: {
      kind: "spread-curve",
      data: {
        unit,
        curve: densityCurve(spread),
        other: compared.flatMap((one) => densityCurve(one)),
        value: spread.value,
        interval: [low, high],
        printed,
      },
    },
  };
}

type Fact = readonly [question: string, ...answer: Run[]];

function facts(
  factor: Factor,
  value: FactorValue,
  scores: Scores,
  input: DossierInput,
  shares: ReadonlyMap<IndicatorId, number> | undefined,
): readonly Fact[] {
  const source = input.factors.sources.get(value.source);
  const use = input.uses.get(factor.id);
  const fact = (question: string, answer: string | undefined): readonly Fact[] =>
    answer === undefined ? [] : [[question, { kind: "text", text: answer }]];
  return [
    ...fact("Value", valueWords(factor, value.spread)),
    ...fact("Spread", spreadWords(factor, value.spread, scores)),
    ["Source", ...sourceRuns(source, value)],
    ...fact("Licence", source?.licence?.trim()),
    ...fact(
      "Figures of",
      `${value.region}, ${value.year}${source === undefined ? "" : `; read: ${source.read}`}`,
    ),
    ...fact("Used in", useWords(use, input)),
    ...fact("Replaced", givenWords(use)),
    ...fact("Its doubt", doubtWords(use, shares, input)),
    ...fact("Note", value.note?.trim()),
    ...fact("Overruled", factor.overruled ? "by a file of the mill" : undefined),
  ];
}

function valueWords(factor: Factor, spread: Spread): string {
  const value = `${full(spread.value)} ${unitOf(factor)}`.trim();
  if (spread.shape === "fixed") return value;
  const named = SHAPES[spread.shape][1];
  const [low = "", high = ""] = interval95(spread).map(short);
  return [
    `${value} (${named})`,
    ...(named === "median" ? [] : [`median ${short(medianOf(spread))}`]),
    ...(named === "mean" ? [] : [`mean ${short(meanOf(spread))}`]),
    `95 % from ${low} to ${high}`,
  ].join("; ");
}

function spreadWords(factor: Factor, spread: Spread, scores: Scores): string {
  const [low, high] = factor.plausible;
  return [
    SHAPES[spread.shape][0],
    ...("low" in spread ? [`ends ${full(spread.low)} and ${full(spread.high)}`] : []),
    ...(spread.shape === "fixed"
      ? []
      : [scores.inForce ? "made by the scores" : "stated beside the value"]),
    `plausible from ${full(low)} to ${full(high)}`,
    ...(factor.basis === undefined ? [] : [`counted on: ${factor.basis}`]),
  ].join("; ");
}

function sourceRuns(source: Source | undefined, value: FactorValue): Run[] {
  const text = [
    source?.author,
    source?.title ?? value.source,
    source?.publisher === source?.author ? undefined : source?.publisher,
    value.page,
    source?.year === undefined ? undefined : String(source.year),
  ]
    .filter((part) => part !== undefined && part !== "")
    .join(", ");
  const where = source?.where;
  if (where === undefined) return [{ kind: "text", text }];
  return [
    { kind: "text", text: `${text}; ` },
    // Addresses stand in sources without `https://`; other places are words.
    /^[\w.-]+\.[a-z]+\/\S*$/.test(where)
      ? { kind: "link", text: where, href: `https://${where}` }
      : { kind: "text", text: where },
  ];
}

function useWords(use: FactorUse | undefined, { indicators }: DossierInput): string {
  if (use === undefined) return "no term, conversion or intensity of this mill reads it";
  const steps = [...use.steps].map(([step, flows]) => `${step} (${flows.join(", ")})`);
  return [
    ...(steps.length === 0
      ? []
      : [`${steps.join(", ")}: ${use.terms} ${use.terms === 1 ? "term" : "terms"}`]),
    ...(use.conversions.length === 0 ? [] : [`what becomes of ${use.conversions.join(", ")}`]),
    ...(use.indicators.length === 0
      ? []
      : [
          `intensities of ${use.indicators.map((id) => indicatorWords(id, indicators)).join(", ")}`,
        ]),
  ].join("; ");
}

function givenWords(use: FactorUse | undefined): string | undefined {
  if (use === undefined || use.given.length === 0) return undefined;
  return `by the mill's own value, from ${use.given.join(", ")}; the doubt below is that of the own value`;
}

function doubtWords(
  use: FactorUse | undefined,
  shares: ReadonlyMap<IndicatorId, number> | undefined,
  { indicators }: DossierInput,
): string {
  if (use === undefined) return "none in this mill";
  const listed = [...(shares ?? [])]
    .filter(([, share]) => share >= LEAST)
    .map(([id, share]) => `${indicatorWords(id, indicators)} ${printedShare(share)}`);
  return listed.length === 0
    ? `below ${formatPercent(LEAST, 2)} of the squared swings of any saving shown`
    : `share of the squared swings of the saving: ${listed.join(", ")}`;
}
