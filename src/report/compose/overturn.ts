/**
 * What would overturn the answer: the yield at which nothing is saved, and few lots.
 */

import { leafRange } from "../../account/draws.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell, Run } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatInterval, formatNumber, formatPercent } from "../format.js";
import { TABLE } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { blendRuns } from "./standing.js";

/**
 * Lots from which on the scatter of single lots is left unsaid: the mean of 30 strays by less than a fifth of
 * what one lot strays (common practice, no source).
 */
const MANY_LOTS = 30;

/** Settings that a lot may log: words, amount over the lots without it, amount over all. */
const OPEN_SETTINGS = [
  ["pick-up of the pad", "mass[no pickup]", "mass"],
  ["cloth temperature at fixation", "mass[no fixTemp]", "mass"],
  ["speed or dwell at fixation", "length[no dwell, speed]", "length"],
  ["ink or coverage", "printed[no ink, coverage]", "printed"],
  ["water of the wash", "mass[no liquorRatio, baths]", "mass"],
] as const;

/**
 * Break-even yield of every indicator of page one: how much of what dye yields pigment must yield at least.
 *
 * @param desk - the report
 * @returns a sentence on the yields taken, and a table
 */
export function breakEvenBlocks(desk: ReportDesk): readonly Block[] {
  const rows = TABLE.flatMap(([id, words]): (readonly Cell[])[] => {
    const comparison = desk.input.comparisons.get(id);
    if (comparison === undefined) return [];
    const noted = desk.breakEven(id);
    if (noted === undefined) {
      return [
        [
          textCell(words, true),
          numberCell("none"),
          numberCell("–"),
          textCell("the dye route takes next to nothing"),
        ],
      ];
    }
    const rises = (comparison.breakEvenYield?.median ?? NaN) > 1;
    return [
      [
        textCell(words, true),
        numberCell(noted.run),
        numberCell(noted.interval),
        textCell(
          rises ? "no saving unless pigment yields more" : "saving gone once pigment yields less",
        ),
      ],
    ];
  });
  return [
    { kind: "paragraph", runs: yieldRuns(desk) },
    {
      kind: "table",
      id: "break-even-yield",
      caption:
        "Break-even yield: accepted area of pigment, % of the accepted area that dye gives of the same printed lots, at which both routes take as much per accepted m². Medians of draws with 95 % intervals; 100 % means the same yield.",
      head: [
        textCell("Indicator"),
        { ...textCell("% of dye’s yield"), align: "right" },
        { ...textCell("95 % interval"), align: "right" },
        textCell("Meaning"),
      ],
      rows,
      widths: [2.2, 1.4, 1.5, 4.2],
    },
  ];
}

function yieldRuns(desk: ReportDesk): readonly Run[] {
  const { yields, plant, reference } = desk.input;
  if (yields !== undefined) {
    const given = yields.given.map(({ site, arm, leaf }) => {
      const { median, low, high } = leafRange(leaf);
      return `${formatPercent(median, 1)} (${formatPercent(low, 1)} to ${formatPercent(high, 1)}; ${leaf.source}) of the printed area of site ${site} by ${arm}`;
    });
    return [
      {
        kind: "text",
        text: `Yield by workflow is taken from the plant file: lots are held to have given, had they been printed on the other route, a first quality of ${given.join("; ")}. Lots on the route they took keep the accepted area that was logged. No reprint is made up or left out on either route.`,
      },
    ];
  }
  const written = Object.values(plant.sites).some((site) => site.yield !== undefined);
  const why = !written
    ? "The plant file gives no yield by workflow"
    : reference.per === "m2"
      ? "The plant file gives a yield by workflow, but for no lot of this report"
      : `The plant file gives a yield by workflow; it acts per accepted m² only, so that it changes nothing in this report per ${reference.words}`;
  return [
    {
      kind: "text",
      text: `${why}. Both routes are given the accepted area that was logged, with the same rejects and reprints. The table says how far the yields may part before the answer turns.`,
    },
  ];
}

// Break-even yields of what is saved, for the conditions on page one; empty where nothing is.
function breakEvenRuns(desk: ReportDesk): readonly Run[] {
  const said = (
    [
      ["water", "water"],
      ["energy", "energy"],
      ["cost", "cost"],
    ] as const
  ).flatMap(([id, words]) => {
    const median = desk.input.comparisons.get(id)?.breakEvenYield?.median ?? NaN;
    const noted = median < 1 ? desk.breakEven(id) : undefined;
    return noted === undefined
      ? []
      : [[text(`${words} `), noted.run, text(` (${noted.interval})`)] as const];
  });
  if (said.length === 0) return [];
  return [
    text("a saving is gone below a yield, in % of dye’s, of: "),
    ...said.flatMap((runs, i) => (i === 0 ? runs : [text("; "), ...runs])),
    text(". "),
  ];
}

function text(words: string): Run {
  return { kind: "text", text: words };
}

/**
 * Conditions of the answer: yield, blends, and how few lots it rests on.
 *
 * @param desk - the report
 * @returns a paragraph for page one
 */
export function conditions(desk: ReportDesk): Block {
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "Conditions: ", style: "bold" },
      {
        kind: "text",
        text:
          desk.input.yields === undefined
            ? "yields alike; "
            : "yields by workflow are those of the plant file; ",
      },
      ...breakEvenRuns(desk),
      ...blendRuns(desk),
      ...weakerRuns(desk),
      ...fewLots(desk),
    ],
  };
}

/** Fall of the share of energy saved from which a what-if is a condition of the answer. [-] */
const NOTICED_FALL = -0.1;

// A what-if that takes much of the saving away belongs beside it.
function weakerRuns(desk: ReportDesk): readonly Run[] {
  const said = (desk.input.scenarios?.played ?? []).flatMap(
    ({ scenario, comparisons, changes }) => {
      const saving = comparisons.get("energy")?.saving;
      if (saving === undefined || !((changes.get("energy")?.median ?? 0) < NOTICED_FALL)) return [];
      const interval = formatInterval(100 * saving.low, 100 * saving.high, 0);
      return [`“${scenario.name}” ${formatPercent(saving.median)} (${interval})`];
    },
  );
  return said.length === 0 ? [] : [text(`Energy saved in what-ifs: ${said.join("; ")}. `)];
}

// Doubt is about means. What single lots add to it falls with the root of their number, and is not drawn.
function fewLots(desk: ReportDesk): readonly Run[] {
  const { lots, open } = openSettings(desk);
  if (!(lots < MANY_LOTS) || open.length === 0) return [];
  const noted = desk.figures.plain("lots.compared", lots, "lots", { of: "count", digits: 0 });
  return [
    { kind: "text", text: "Few lots: ", style: "bold" },
    { kind: "text", text: "this report rests on " },
    noted.run,
    {
      kind: "text",
      text: ` ${lots === 1 ? "lot" : "lots"}. Scatter from lot to lot of settings that were not logged is not in the intervals, so they are too narrow: the mean strays by ${formatNumber(1 / Math.sqrt(lots), 2)} of what a single lot strays. Not logged: ${open.join(", ")}.`,
    },
  ];
}

/**
 * What the intervals leave out, for the chapter on doubt.
 *
 * @param desk - the report
 * @returns a sentence
 */
export function scatterBlock(desk: ReportDesk): Block {
  const { lots, open } = openSettings(desk);
  const many = lots >= MANY_LOTS;
  const text =
    open.length === 0
      ? "Every lot logged its own settings, so that no scatter from lot to lot is left out."
      : `The interval is doubt about the mean of a setting. Scatter from lot to lot is not added to it; over ${formatNumber(lots, 0)} ${lots === 1 ? "lot" : "lots"} it is ${formatNumber(1 / Math.sqrt(lots), 2)} of the scatter of one lot${many ? ", and small beside the doubt about the mean unless lots differ widely" : ", and may be as wide as the doubt shown"}. The plant file or a default is drawn only for what no lot logged: ${open.join(", ")}.`;
  return { kind: "paragraph", runs: [{ kind: "text", text }] };
}

function openSettings(desk: ReportDesk): {
  readonly lots: number;
  readonly open: readonly string[];
} {
  const groups = desk.input.groups.filter(
    ({ key }) => key.pigment !== "" && key.kind !== "overhead",
  );
  const total = (name: string): number => {
    const place = AMOUNTS.findIndex((amount) => amount.name === name);
    return groups.reduce((sum, { amounts }) => sum + (amounts[place] ?? 0), 0);
  };
  return {
    lots: groups.reduce((sum, group) => sum + group.lots, 0),
    open: OPEN_SETTINGS.flatMap(([words, without, all]) => {
      const share = total(without) / total(all);
      return share > 0 ? [`${words} (${atLeastOne(share)} of the cloth)`] : [];
    }),
  };
}

function atLeastOne(share: number): string {
  return share < 0.01 ? `under ${formatPercent(0.01)}` : formatPercent(share);
}
