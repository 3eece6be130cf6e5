/**
 * The dossier of factors: one section for each, with value, spread, sources, scores, vintages, use, and the
 * doubt it carries.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Swings } from "../../account/swings.js";
import type { Factor, FactorSet, FactorValue } from "../../factors/factor.js";
import { valueInForce } from "../../factors/in-force.js";
import { quantileOf } from "../../numbers/distributions.js";
import { gsdFromScores } from "../../numbers/pedigree.js";
import type { Block, Cell, ReportDocument } from "../document.js";
import { textCell } from "../figure-desk.js";
import { formatDate, formatPercent } from "../format.js";
import { type FactorUse, swingShares } from "./uses.js";

/** What a dossier is made of. */
export interface DossierInput {
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Factors shown, by id. */
  readonly shown: readonly Factor[];
  /** Uses by id of the factor, in the mill looked at. */
  readonly uses: ReadonlyMap<string, FactorUse>;
  /** Swings of that mill. */
  readonly swings: ReadonlyMap<IndicatorId, Swings>;
  /** Name of that mill. */
  readonly house: string;
  /** Date of the dossier, ISO 8601. */
  readonly date: string;
  /** Version of the tool. */
  readonly version: string;
}

const SCORES = [
  ["reliability", "how the value was come by"],
  ["completeness", "how many sites and how long"],
  ["time", "years between value and use"],
  ["place", "distance between value and use"],
  ["technology", "likeness of machine and process"],
] as const;

const NAMES: Readonly<Partial<Record<IndicatorId, string>>> = {
  "co2-location": "CO₂e, location-based",
};

const SHAPES: Readonly<Record<string, string>> = {
  fixed: "without doubt",
  normal: "normal",
  lognormal: "lognormal",
  triangular: "triangular",
  uniform: "uniform",
  pert: "beta-PERT",
};

/**
 * Puts the dossier together.
 *
 * @param input - factors and their uses
 * @returns a document
 */
export function composeDossier(input: DossierInput): ReportDocument {
  const families = new Map<string, Factor[]>();
  for (const factor of [...input.shown].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const family = factor.id.split(".")[0] ?? "";
    families.set(family, [...(families.get(family) ?? []), factor]);
  }
  return {
    title: "Factors and what stands behind them",
    author: input.house,
    language: "en",
    date: input.date,
    footer: `factors ${input.factors.digest.slice(0, 12)} · millrace ${input.version}`,
    figures: {},
    blocks: [
      { kind: "heading", level: 1, id: "dossier", text: "Factors and what stands behind them" },
      {
        kind: "paragraph",
        tone: "lead",
        runs: [
          {
            kind: "text",
            text: `${input.shown.length} factors. Use and doubt are those of ${input.house}; factors it does not use say so. A share of the squared swings is the square of the swing of one factor over the sum of all: it ranks, and is no share of a variance.`,
          },
        ],
      },
      ...[...families].flatMap(([family, factors]): Block[] => [
        { kind: "heading", level: 2, id: `family-${family}`, text: family },
        ...factors.flatMap((factor) => sectionOf(factor, input)),
      ]),
    ],
  };
}

function sectionOf(factor: Factor, input: DossierInput): readonly Block[] {
  const inForce = valueInForce(factor, input.date.slice(0, 7), input.date);
  const name = factor.id.replaceAll(/[^A-Za-z0-9]+/g, "-");
  const heading: Block = {
    kind: "heading",
    level: 3,
    id: `factor-${name}`,
    text: factor.id,
    newPage: true,
  };
  if (inForce === undefined) {
    return [heading, said(`${factor.words}. No value had been entered by ${input.date}.`)];
  }
  const { value } = inForce;
  const quantile = quantileOf(value.spread);
  const quantiles = [0.025, 0.25, 0.5, 0.75, 0.975].map(quantile);
  const [low = NaN, lower = NaN, median = NaN, upper = NaN, high = NaN] = quantiles;
  const printed = (number: number): string => String(Number(number.toPrecision(4)));
  const unit = factor.unit === "1" ? "" : factor.unit;
  return [
    heading,
    {
      kind: "figure",
      id: `spread-${name}`,
      title: `${factor.words}${unit === "" ? "" : `, ${unit}`}`,
      description: `Median ${printed(median)}, 95 % interval ${printed(low)} to ${printed(high)}.`,
      chart: {
        kind: "spread-strip",
        data: {
          unit,
          quantiles: [low, lower, median, upper, high],
          printed: [printed(low), printed(lower), printed(median), printed(upper), printed(high)],
          limits: factor.plausible,
        },
      },
    },
    facts(`facts-${name}`, factor, value, input),
  ];
}

function facts(id: string, factor: Factor, value: FactorValue, input: DossierInput): Block {
  const source = input.factors.sources.get(value.source);
  const use = input.uses.get(factor.id);
  const printed = (number: number): string => String(Number(number.toPrecision(4)));
  const rows: readonly (readonly [string, string])[] = [
    [
      "Spread",
      `${SHAPES[value.spread.shape] ?? value.spread.shape}; plausible from ${printed(factor.plausible[0])} to ${printed(factor.plausible[1])}${factor.basis === undefined ? "" : `; counted on ${factor.basis}`}`,
    ],
    [
      "Source",
      [
        source?.author,
        source?.title ?? value.source,
        source?.publisher,
        value.page,
        source?.year === undefined ? undefined : String(source.year),
      ]
        .filter((part) => part !== undefined && part !== "")
        .join(", "),
    ],
    ["Read", `${source?.read ?? "–"}${source?.licence === undefined ? "" : `; ${source.licence}`}`],
    ["Place and year", `${value.region}, ${value.year}`],
    ["Scores", scoresOf(value)],
    ["Vintages", vintagesOf(factor)],
    ["Used in", useOf(use)],
    ["Doubt it carries", doubtOf(use, input, factor.id)],
    ...(value.note === undefined ? [] : [["Note", value.note.trim()] as const]),
    ...(factor.overruled ? [["Overruled", "by a file of the mill"] as const] : []),
  ];
  return {
    kind: "table",
    id,
    caption: `${factor.id}: what stands behind it.`,
    head: ["Question", "Answer"].map((text) => textCell(text)),
    rows: rows.map(([question, answer]): readonly Cell[] => [
      textCell(question, true),
      textCell(answer),
    ]),
    widths: [1, 5],
  };
}

function scoresOf(value: FactorValue): string {
  const { quality } = value;
  const each = SCORES.map(([score, words]) => `${score} ${quality[score]} (${words})`).join(", ");
  const gsd = gsdFromScores(quality);
  const alone = `alone they would stand for a 95 % interval of × / ÷ ${(gsd ** 2).toPrecision(3)}`;
  return `${each}; 1 is best, 5 worst; ${alone}`;
}

function vintagesOf({ values }: Factor): string {
  return values
    .map(
      ({ from, entered, spread }) =>
        `${Number(quantileOf(spread)(0.5).toPrecision(4))} from ${from}, entered ${formatDate(entered)}`,
    )
    .join("; ");
}

function useOf(use: FactorUse | undefined): string {
  if (use === undefined) return "nothing in this mill";
  if (use.conversion)
    return "utilities and intensities: what flows at machines come to at the fence";
  return `${use.steps.join(", ")}; for ${use.flows.join(", ")}`;
}

function doubtOf(use: FactorUse | undefined, input: DossierInput, id: string): string {
  if (use === undefined) return "none in this mill";
  const shares = [...swingShares(input.swings, id)]
    .filter(([, share]) => share >= 0.0005)
    .map(
      ([indicator, share]) =>
        `${formatPercent(share)} of the squared swings of the saving of ${NAMES[indicator] ?? indicator}`,
    );
  return shares.length === 0 ? "below 0.05 % of the squared swings" : shares.join(", ");
}

function said(text: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text }] };
}
