/**
 * The measurement that would help most, and what others would be worth.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Worth } from "../../compare/meters-worth.js";
import type { Block, Run } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";

/** Measurements by indicator, the most useful first. */
export type WorthByIndicator = ReadonlyMap<IndicatorId, readonly Worth[]>;

const NAMES: Readonly<Partial<Record<IndicatorId, string>>> = {
  water: "water",
  cod: "COD load",
  energy: "final energy",
  "co2-location": "CO₂e",
};

/** Shares below this are not listed. */
const LEAST = 0.02;

/**
 * One sentence for page one: the best measurement for each saving.
 *
 * @param desk - the report
 * @returns a paragraph
 */
export function bestMeasurement(desk: ReportDesk): Block {
  const best = new Map<string, string[]>();
  for (const [id, [first]] of desk.input.worth ?? []) {
    if (first === undefined || first.share < LEAST) continue;
    const of = `${NAMES[id] ?? id} ${formatPercent(first.share)}`;
    best.set(first.measurement.words, [...(best.get(first.measurement.words) ?? []), of]);
  }
  const said = [...best].map(([words, of]) => `${words} (${of.join(", ")})`);
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: "The measurement that would help most: ", style: "bold" },
      {
        kind: "text",
        text: said.length === 0 ? "none stands out." : `${said.join("; ")} of the doubt.`,
      },
    ],
  };
}

/**
 * What measurements would be worth, saving by saving.
 *
 * @param desk - the report
 * @returns how it is counted, a table of shares, and what the best would leave of each interval
 */
export function worthBlocks(desk: ReportDesk): readonly Block[] {
  const worth = [...(desk.input.worth ?? [])].filter(([, list]) => list.length > 0);
  if (worth.length === 0) return [text("No measurement would take away a part worth naming.")];
  const measurements = new Map(
    worth.flatMap(([, list]) => list.map(({ measurement }) => [measurement.id, measurement])),
  );
  const shareOf = (id: IndicatorId, measurement: string): number =>
    worth.find(([one]) => one === id)?.[1].find((w) => w.measurement.id === measurement)?.share ??
    0;
  const most = (measurement: string): number =>
    Math.max(...worth.map(([id]) => shareOf(id, measurement)));
  const rows = [...measurements.values()]
    .filter(({ id }) => most(id) >= LEAST)
    .sort((a, b) => most(b.id) - most(a.id) || (a.id < b.id ? -1 : 1));
  return [
    {
      kind: "table",
      id: "worth",
      caption:
        "Share of the variance of each saving that a measurement could take away at most, were it without error; fitted to the draws, so bent dependences count for less than they are. Shares of different measurements need not add up.",
      head: [
        textCell("Measurement"),
        ...worth.map(([id]) => ({ ...textCell(NAMES[id] ?? id), align: "right" as const })),
      ],
      rows: rows.map(({ id, words }) => [
        textCell(words, true),
        ...worth.map(([indicator]) => {
          const share = shareOf(indicator, id);
          return numberCell(share < 0.005 ? "–" : formatPercent(share));
        }),
      ]),
      widths: [5, ...worth.map(() => 1)],
    },
    { kind: "list", ordered: false, items: worth.flatMap((one) => after(desk, one)) },
  ];
}

function after(
  desk: ReportDesk,
  [id, list]: readonly [IndicatorId, readonly Worth[]],
): readonly (readonly Run[])[] {
  const [first] = list;
  const saving = desk.input.comparisons.get(id)?.saving;
  if (first === undefined || saving === undefined) return [];
  const interval = ({ low, high }: { low: number; high: number }): string =>
    `${formatPercent(low)} to ${formatPercent(high)}`;
  return [
    [
      {
        kind: "text",
        text: `Saving of ${NAMES[id] ?? id}: the 95 % interval is ${interval(saving)}; with ${first.measurement.words} it would be about ${interval(first.after)}, should that turn out as assumed now.`,
      },
    ],
  ];
}

function text(said: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: said }] };
}
