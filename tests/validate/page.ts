/** The page of the validation as one document. */

import type { Block, ReportDocument } from "../../src/report/document.js";
import { formatNumber } from "../../src/report/format.js";
import type { CalibrationTable } from "./calibration.js";
import { paragraph, said } from "./cells.js";
import { FABRICS, FIBRES, LENGTH, WEIGHTS, WIDTH } from "./hall.js";
import { glanceBlocks, inDoubt, rangeBlocks, sourceTable } from "./page-ranges.js";
import { practiceBlocks, stepBlocks } from "./page-steps.js";
import { worldBlocks } from "./page-worlds.js";
import { type Mark, MARKS } from "./published.js";
import { REASONS, type Rests, RESTS } from "./reasons.js";
import type { Compared, Results } from "./results.js";
import type { Verdict } from "./verdict.js";

/** What the page is made of. */
export interface PageAsked {
  /** Ours. */
  readonly results: Results;
  /** Coverage in known worlds; none when they were left out. */
  readonly worlds: readonly CalibrationTable[];
  /** Day, ISO 8601. */
  readonly date: string;
  /** Draws and seed of the intervals. */
  readonly draws: number;
  readonly seed: number;
  /** Version of the tool, and digest of the shipped factors. */
  readonly version: string;
  readonly digest: string;
}

/**
 * Puts the page together.
 *
 * @param asked - what it is made of
 * @returns the document
 */
export function pageOf(asked: PageAsked): ReportDocument {
  const { results, worlds, date, draws, seed, version, digest } = asked;
  const { compared, steps } = results;
  const title = "Millrace beside published ranges";
  return {
    title,
    author: `Millrace ${version}`,
    language: "en",
    date,
    footer: `Validation · factors ${digest.slice(0, 12)} · millrace ${version} · ${draws} draws · seed ${seed} · not reviewed`,
    figures: {},
    blocks: [
      { kind: "heading", level: 1, id: "title", text: title },
      ...leadBlocks(compared),
      paragraph(
        `Version ${version}, shipped factors with the digest ${digest}. ${FABRICS.length} fabrics (${FIBRES.join(", ")}; ${WEIGHTS.join(", ")} g/m²), one lot of ${formatNumber(LENGTH, 0)} m × ${WIDTH} m of each on every route of an invented hall with shipped settings. Marks are worked out with every factor at its median; 95 % intervals rest on ${formatNumber(draws, 0)} draws of all doubt of the shipped factors.`,
        "small",
      ),
      chapter("glance", "At a glance"),
      ...glanceBlocks(compared),
      ...inDoubt(compared),
      chapter("ranges", "Range by range"),
      ...rangeBlocks(compared),
      chapter("steps", "Step by step"),
      ...stepBlocks(steps, compared),
      chapter("practice", "Three ways to run the hall"),
      ...practiceBlocks(),
      ...(worlds.length === 0
        ? []
        : [chapter("known-worlds", "Intervals in known worlds"), ...worldBlocks(worlds)]),
      chapter("where-from", "Where the ranges are from"),
      sourceTable(compared),
    ],
  };
}

function chapter(id: string, text: string): Block {
  return { kind: "heading", level: 2, id, text };
}

function leadBlocks(compared: readonly Compared[]): readonly Block[] {
  const ranges = [...new Set(compared.map(({ published }) => published))];
  const verdicts = (verdict: Verdict): readonly Compared[] =>
    compared.filter((row) => row.verdict === verdict);
  const usual = compared.filter(({ fabrics }) => fabrics.every((row) => row.usualInside));
  const resting = (rests: Rests): number =>
    compared.filter(
      ({ verdict, published, beside }) =>
        verdict !== "inside" && REASONS[`${published.id}/${beside.id}`]?.rests === rests,
    ).length;
  const marks = (Object.keys(MARKS) as Mark[]).map((mark) => ({
    mark,
    count: ranges.filter((range) => range.mark === mark).length,
  }));
  return [
    paragraph(
      `${ranges.length} published ranges are set beside ${compared.length} numbers of ours. From well run to poorly run and on every fabric, ${verdicts("inside").length} lie inside, ${verdicts("partly inside").length} partly inside and ${verdicts("outside").length} outside. Run as usual, ${usual.length} lie inside on every fabric.`,
      "lead",
    ),
    paragraph("What the others rest on:"),
    {
      kind: "list",
      ordered: false,
      items: (Object.keys(RESTS) as Rests[]).map((rests) =>
        said(`${resting(rests)}: ${RESTS[rests]}.`),
      ),
    },
    {
      kind: "box",
      tone: "plain",
      title: "How far the ranges themselves can be relied on",
      blocks: [
        {
          kind: "list",
          ordered: false,
          items: marks.map(({ mark, count }) => said(`${count} ${mark}: ${MARKS[mark]}.`)),
        },
        paragraph(
          "None of them is of ink-jet printing. A range that ours lies inside makes a number plausible and no more; only meters can do better.",
        ),
      ],
    },
  ];
}
