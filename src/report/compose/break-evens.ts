/**
 * What would overturn the answer: the settings and factors at which nothing is saved, or a claim falls below
 * its level, and maps over two of them.
 */

import type { IndicatorId } from "../../account/indicators.js";
import {
  breakEvensOf,
  type BreakEvens,
  type FactorBreakEven,
  type Target,
} from "../../compare/break-even.js";
import { quantile } from "../../numbers/quantiles.js";
import type { Leaf } from "../../numbers/quantity.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { TABLE } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { wordsOf } from "./factor-table.js";
import { mapBlocks } from "./two-way-maps.js";
import { leafUnit, valueText } from "./units.js";

/** Settings listed for each indicator, and refined on the draws. */
const LISTED = 3;

/** Draws to refine on: what is looked for is a shift on the same draws, so few will do. */
const DRAWS = 1000;

/**
 * Break-evens of all settings and factors: the nearest of each indicator and claim, how many there are, and the
 * maps.
 *
 * @param desk - the report
 * @returns tables and figures
 */
export function turningBlocks(desk: ReportDesk): readonly Block[] {
  const { account, factors, seed, yields } = desk.input;
  const areas = yields?.accepted.dye.map((area, i) => area / (yields.accepted.pigment[i] ?? NaN));
  const indicators = savingTargets(desk);
  const claims = claimTargets(desk);
  const answers = breakEvensOf(
    {
      program: account.program,
      factors,
      ...(areas === undefined ? {} : { areas }),
      draws: Math.min(DRAWS, account.draws.count),
      seed,
      refined: LISTED,
    },
    [...indicators.map(({ target }) => target), ...claims.map(({ target }) => target)],
  );
  const named = (list: readonly Named[], from: number): readonly NamedAnswer[] =>
    list.flatMap(({ words }, i) => {
      const answer = answers[from + i];
      return answer === undefined ? [] : [{ words, answer }];
    });
  const ofIndicators = named(indicators, 0);
  const ofClaims = named(claims, indicators.length);
  return [
    ...(ofIndicators.length === 0 ? [] : [nearestTable(ofIndicators), countTable(ofIndicators)]),
    ...(ofClaims.length === 0 ? [] : [claimTable(ofClaims)]),
    ...mapBlocks(desk, areas === undefined ? 1 : quantile(areas, 0.5)),
  ];
}

interface Named {
  readonly words: string;
  readonly target: Target;
}

interface NamedAnswer {
  readonly words: string;
  readonly answer: BreakEvens;
}

function savingTargets(desk: ReportDesk): readonly Named[] {
  return TABLE.flatMap(([id, words]) => {
    const today = desk.input.comparisons.get(id)?.saving?.median;
    return today === undefined ? [] : [{ words, target: { id, quantile: 0.5, level: 0, today } }];
  });
}

// The level of a claim is its cautious value; it is held by the lower end of the interval.
function claimTargets(desk: ReportDesk): readonly Named[] {
  return (desk.input.claims?.verdicts ?? []).flatMap(({ kind, verdict, cautious }) => {
    const id: IndicatorId | undefined = kind.indicator;
    if (id === undefined || cautious === undefined || verdict === "not-supported") return [];
    const today = desk.input.comparisons.get(id)?.saving?.low;
    if (today === undefined) return [];
    return [
      {
        words: `${kind.words}, ${formatPercent(cautious)} or more`,
        target: { id, quantile: 0.025, level: cautious, today },
      },
    ];
  });
}

const HEAD: readonly Cell[] = [
  textCell("Setting or factor"),
  textCell("Median drawn"),
  textCell("Turns at"),
  textCell("Tried over"),
];

function nearestTable(answers: readonly NamedAnswer[]): Block {
  return {
    kind: "table",
    id: "break-evens",
    caption: `Break-even values: where the median share saved is nothing, one setting or factor held at that value in all draws, all else as drawn. The ${formatNumber(LISTED, 0)} nearest to the median drawn, of each indicator, by the part of itself it would have to change; owners that share a value move together. A mark * says that the value was found with all else at its median.`,
    head: [textCell("Indicator"), ...HEAD],
    rows: answers.flatMap((answer) => rowsOf(answer, LISTED)),
    widths: [1.5, 3.6, 1.2, 1.9, 1.7],
  };
}

function claimTable(answers: readonly NamedAnswer[]): Block {
  return {
    kind: "table",
    id: "claim-break-evens",
    caption:
      "Where a claim would fall below its level: the value at which the lower end of the 95 % interval of the share saved reaches the cautious value.",
    head: [textCell("Claim"), ...HEAD],
    rows: answers.flatMap((answer) => rowsOf(answer, LISTED)),
    widths: [1.8, 3.4, 1.2, 1.9, 1.7],
  };
}

function rowsOf({ words, answer }: NamedAnswer, most: number): readonly (readonly Cell[])[] {
  const shown = answer.found.slice(0, most);
  if (shown.length === 0) {
    return [
      [
        textCell(words, true),
        textCell(`none of ${formatNumber(answer.none.length, 0)} that move it`),
        textCell("–"),
        textCell("none"),
        textCell("their plausible ranges"),
      ],
    ];
  }
  return shown.map((found, i) => [
    textCell(i === 0 ? words : "", true),
    {
      runs: [
        { kind: "text", text: `${wordsOf(found.leaf)} ` },
        { kind: "text", text: found.factor, style: "code" },
      ],
    },
    textCell(printed(found.today, found.leaf)),
    textCell(rootsText(found)),
    textCell(rangeText(found)),
  ]);
}

function rootsText({ roots, leaf, interval: [low, high] }: FactorBreakEven): string {
  const values = roots.map(({ value, isDrawn }) => `${printed(value, leaf)}${isDrawn ? "" : " *"}`);
  const isInside = roots.some(({ value }) => value >= low && value <= high);
  return `${values.join(" and ")}${isInside ? ", inside its 95 % interval" : ""}`;
}

function rangeText({ range: [low, high], leaf }: FactorBreakEven): string {
  return `${low === 0 ? "0" : valueText(low, "1")} to ${printed(high, leaf)}`;
}

function printed(value: number, leaf: Leaf): string {
  const unit = leafUnit(leaf);
  return value === 0 && unit === "1" ? "0" : valueText(value, unit);
}

function countTable(answers: readonly NamedAnswer[]): Block {
  return {
    kind: "table",
    id: "break-even-counts",
    caption:
      "How many settings and factors have a break-even inside their plausible range, each turned alone over all of it. Prices, which have no plausible range, were turned from nothing to ten times today’s. Several: more than one such value. Bend: it rises over one part of the range and falls over another, with a break-even or without.",
    behind: true,
    head: [
      "Indicator",
      "With a break-even",
      "With several",
      "None inside the range",
      "Bend",
      "Do not move it",
    ].map((text, i) => (i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const })),
    rows: answers.map(({ words, answer: { found, none, bends, idle } }) => [
      textCell(words, true),
      ...[
        found.length,
        found.filter(({ roots }) => roots.length > 1).length,
        none.length,
        bends,
        idle,
      ].map((count) => numberCell(formatNumber(count, 0))),
    ]),
    widths: [2.2, 1.4, 1.2, 1.6, 0.9, 1.3],
  };
}
