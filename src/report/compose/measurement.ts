/**
 * The measurement that would help most, what others would be worth, and the defaults that ask for one.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { SavingDoubt, Worth } from "../../compare/meters-worth.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { wideDefaults } from "./wide-defaults.js";

/** What the doubt of savings is made of, by indicator. */
export type WorthByIndicator = ReadonlyMap<IndicatorId, SavingDoubt>;

const NAMES: Readonly<Partial<Record<IndicatorId, string>>> = {
  water: "water",
  cod: "COD load",
  energy: "final energy",
  "co2-location": "CO₂e",
};

/** Shares below this are not listed. */
const LEAST = 0.02;

/** Shares below this get no interval of their own. */
const WORTH_AN_INTERVAL = 0.1;

/** Measurements with an interval, a saving. */
const MOST_INTERVALS = 3;

/**
 * The best measurement in a sentence for page one, with the best for the other savings.
 *
 * @param desk - the report
 * @returns a paragraph
 */
export function bestMeasurement(desk: ReportDesk): Block {
  const firsts = [...(desk.input.worth ?? [])]
    .flatMap(([id, { worths }]) =>
      worths[0] === undefined || worths[0].share < LEAST ? [] : [{ id, worth: worths[0] }],
    )
    .sort((a, b) => b.worth.share - a.worth.share);
  const [best, ...others] = firsts;
  const saving = best === undefined ? undefined : desk.input.comparisons.get(best.id)?.saving;
  if (best === undefined || saving === undefined) return lead("none stands out.");
  const rest = new Map<string, string[]>();
  for (const { id, worth } of others) {
    const said = `${nameOf(id)} ${formatPercent(worth.share)}`;
    const { words } = worth.measurement;
    rest.set(words, [...(rest.get(words) ?? []), said]);
  }
  const then = [...rest].map(([words, said]) => `${words} (${said.join(", ")})`).join("; ");
  return lead(
    `${best.worth.measurement.words}: it would take away ${removed(best.worth)} of the variance of the ${nameOf(best.id)} saving (${interval(saving)} would be about ${interval(best.worth.after)}).${then === "" ? "" : ` Then ${then}.`}`,
  );
}

/**
 * What measurements would be worth, saving by saving.
 *
 * @param desk - the report
 * @returns tables of shares, of intervals that would stay, and of defaults that are wide
 */
export function worthBlocks(desk: ReportDesk): readonly Block[] {
  const worth = [...(desk.input.worth ?? [])];
  const some = worth.some(([, { worths }]) => (worths[0]?.share ?? 0) >= LEAST);
  return [
    ...(some
      ? [shareTable(worth), afterTable(desk, worth), ...actualList(worth)]
      : [text("No measurement would take away a part worth naming.")]),
    ...wideDefaults(desk),
  ];
}

type Listed = readonly (readonly [IndicatorId, SavingDoubt])[];

function shareTable(worth: Listed): Block {
  const words = new Map(
    worth.flatMap(([, { worths }]) =>
      worths.map(({ measurement }) => [measurement.id, measurement.words]),
    ),
  );
  const rows = [...words]
    .map(([id, said]) => ({
      words: said,
      shares: worth.map(
        ([, { worths }]) => worths.find(({ measurement }) => measurement.id === id)?.share ?? 0,
      ),
    }))
    .filter(({ shares }) => Math.max(...shares) >= LEAST)
    .sort((a, b) => Math.max(...b.shares) - Math.max(...a.shares) || (a.words < b.words ? -1 : 1));
  const without = (said: string, of: (doubt: SavingDoubt) => number): (typeof rows)[number] => ({
    words: said,
    shares: worth.map(([, doubt]) => of(doubt)),
  });
  return {
    kind: "table",
    id: "worth",
    caption:
      "Share of the variance of each saving that a measurement would take away by itself, were it without error. Fitted to the draws, so that some per cent are chance; what acts only through several settings at once is told apart in the last row, and rows too small to name are left out.",
    head: [textCell("Measurement"), ...worth.map(([id]) => right(nameOf(id)))],
    rows: [
      ...rows,
      without("no meter shows it: factors of fuels, grids, warming and fibres", (d) => d.sources),
      without("settings that none of these measurements shows", (d) => d.unlisted),
      without("several settings at once, bent dependences, yields", (d) => d.together),
    ].map(({ words: said, shares }) => [
      textCell(said, true),
      ...shares.map((share) => numberCell(share < 0.005 ? "–" : formatPercent(share))),
    ]),
    widths: [5, ...worth.map(() => 1)],
  };
}

function afterTable(desk: ReportDesk, worth: Listed): Block {
  const rows = worth.flatMap(([id, { worths }]): readonly (readonly Cell[])[] => {
    const saving = desk.input.comparisons.get(id)?.saving;
    if (saving === undefined) return [];
    return [
      [textCell(nameOf(id), true), textCell("as it stands"), right("–"), right(interval(saving))],
      ...worths
        .filter(({ share }) => share >= WORTH_AN_INTERVAL)
        .slice(0, MOST_INTERVALS)
        .map((one) => [
          textCell(""),
          textCell(one.measurement.words),
          right(removed(one)),
          right(interval(one.after)),
        ]),
    ];
  });
  return {
    kind: "table",
    id: "worth-after",
    caption:
      "What would stay of each 95 % interval. The first number is what the measurement takes away when nothing else is measured, the second what it takes away at most, when all else is known. The interval is the one that would stay if the settings turned out as they are assumed now; its place will move, its width hardly.",
    head: [
      textCell("Saving"),
      textCell("With"),
      right("Variance taken away"),
      right("95 % interval"),
    ],
    rows,
    widths: [1.4, 4, 1.6, 1.4],
  };
}

// Totals are what a mill reports of itself, with or without a comparison.
function actualList(worth: Listed): readonly Block[] {
  const best = worth.flatMap(([id, { actual }]) =>
    actual === undefined || actual.share < LEAST
      ? []
      : [`${nameOf(id)} ${actual.measurement.words} (${formatPercent(actual.share)})`],
  );
  return best.length === 0
    ? []
    : [
        text(
          `For the totals of what the mill really did, whatever they are compared with, these take most of the variance away: for ${best.join("; for ")}.`,
        ),
      ];
}

function nameOf(id: IndicatorId): string {
  return NAMES[id] ?? id;
}

function removed({ share, most }: Worth): string {
  const [low, high] = [formatNumber(100 * share, 0), formatPercent(most)];
  return formatPercent(share) === high ? high : `${low} to ${high}`;
}

function interval({ low, high }: { readonly low: number; readonly high: number }): string {
  return `${formatNumber(100 * low, 0)} to ${formatPercent(high)}`;
}

function right(said: string): Cell {
  return { ...textCell(said), align: "right" };
}

function lead(said: string): Block {
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "The measurement that would help most: ", style: "bold" },
      { kind: "text", text: said },
    ],
  };
}

function text(said: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: said }] };
}
