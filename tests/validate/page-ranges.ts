/** Published ranges in the page: at a glance, and one by one. */

import { type IntervalRow, intervalRows } from "../../src/charts/interval-rows.js";
import type { Block, Cell } from "../../src/report/document.js";
import { numberCell, textCell } from "../../src/report/figure-desk.js";
import {
  asGiven,
  capital,
  fabricWords,
  fromTo,
  head,
  paragraph,
  PRACTICE_WORDS,
  practisedCells,
  said,
} from "./cells.js";
import { PRACTICES } from "./practice.js";
import {
  MARKS,
  type Published,
  type QuantityName,
  QUANTITIES,
  SOURCES,
  type SourceKey,
} from "./published.js";
import { REASONS, RESTS } from "./reasons.js";
import type { Compared, FabricRow } from "./results.js";
import { spanOf } from "./verdict.js";

const NAMES = Object.keys(QUANTITIES) as QuantityName[];

/** Weight that stands for all in the pictures at a glance. [g/m²] */
const MIDDLE = 140;

/**
 * All verdicts: a table, and a picture for each quantity.
 *
 * @param compared - ours beside every range
 * @returns blocks
 */
export function glanceBlocks(compared: readonly Compared[]): readonly Block[] {
  return [
    paragraph(
      `Each row sets one number of ours beside one range. A mark stands for the middle weight, ${MIDDLE} g/m², of the first fibre asked; the thin line reaches over all fabrics and all three ways of running the hall. A ceiling begins at the left edge. Inside and outside hold for that whole reach; beside them stands on how many fabrics ours lies inside when the hall is run as usual.`,
    ),
    ...NAMES.flatMap((name): readonly Block[] => {
      const rows = compared.filter(({ published }) => published.quantity === name);
      const { words, unit } = QUANTITIES[name];
      return [
        {
          kind: "figure",
          id: `glance-${name}`,
          title: `${words}, ${unit}`,
          description: `${rows.length} published ranges as bands, with ours as lines from well run to poorly run. The numbers stand in the table below.`,
          drawing: intervalRows({
            quantity: words.toLowerCase(),
            unit,
            reach: "all fabrics, all ways of running",
            rows: rows.map(glanceRow),
          }),
        },
        glanceTable(name, rows),
      ];
    }),
  ];
}

function glanceTable(name: QuantityName, rows: readonly Compared[]): Block {
  const { words, unit } = QUANTITIES[name];
  return {
    kind: "table",
    id: `verdicts-${name}`,
    caption: `${words}, ${unit}: ranges, ours as usual over all fabrics, verdicts.`,
    behind: true,
    head: [
      ...head(["Range", "Ours"], ["Published", "As usual"]),
      ...head(["Verdict", "Usual inside"]),
    ],
    rows: rows.map((row): readonly Cell[] => {
      const { published, beside, fabrics, verdict } = row;
      const usual = spanOf(fabrics.map(({ at }) => at.usual));
      return [
        textCell(rangeName(published), true),
        textCell(beside.words),
        numberCell(rangeText(published)),
        numberCell(fromTo(usual.low, usual.high)),
        textCell(verdict),
        textCell(usualText(row)),
      ];
    }),
    widths: [3, 2.4, 1.3, 1.3, 1.2, 1],
  };
}

/**
 * Those that rest on a default of ours that is in doubt.
 *
 * @param compared - ours beside every range
 * @returns a box, or nothing when there are none
 */
export function inDoubt(compared: readonly Compared[]): readonly Block[] {
  const found = compared.filter(
    (row) => row.verdict !== "inside" && reasonOf(row)?.rests === "ours",
  );
  if (found.length === 0) return [];
  return [
    {
      kind: "box",
      tone: "caution",
      title: "Where our own default is in doubt, and not the range",
      blocks: [
        {
          kind: "list",
          ordered: false,
          items: found.map((row) =>
            said(
              `${capital(row.beside.words)}, beside ${lower(row.published.name)}: ${reasonOf(row)?.words ?? ""}`,
            ),
          ),
        },
      ],
    },
  ];
}

/**
 * Range by range: what it covers, where it is from, ours on every fabric, verdict and reason.
 *
 * @param compared - ours beside every range
 * @returns blocks
 */
export function rangeBlocks(compared: readonly Compared[]): readonly Block[] {
  const ranges = [...new Set(compared.map(({ published }) => published))];
  return ranges.flatMap((published): readonly Block[] => [
    {
      kind: "heading",
      level: 3,
      id: published.id,
      text: `${published.name}: ${rangeText(published)} ${unitOf(published)}`,
    },
    paragraph(
      `${capital(published.words)}. ${SOURCES[published.source].full}${published.where === undefined ? "" : `, ${published.where}`}. ${capital(published.mark)}: ${MARKS[published.mark]}.${published.note === undefined ? "" : ` ${published.note}`}`,
    ),
    ...compared.filter((row) => row.published === published).flatMap(comparedBlocks),
  ]);
}

function comparedBlocks(row: Compared): readonly Block[] {
  const { published, beside, fabrics, verdict } = row;
  const unit = unitOf(published);
  const { words } = QUANTITIES[published.quantity];
  const reason = reasonOf(row);
  const id = `${published.id}-${beside.id}`;
  return [
    {
      kind: "figure",
      id,
      title: `${capital(beside.words)}, ${unit}`,
      description: `Ours on every fabric beside ${rangeText(published)} ${unit}. ${inWords(row)}`,
      drawing: intervalRows({
        quantity: words.toLowerCase(),
        unit,
        reach: "95 % interval as usual",
        rows: fabrics.map((fabric): IntervalRow => {
          const span = fabric.drawn ?? spanOf(Object.values(fabric.at));
          return {
            name: fabricWords(fabric.fabric),
            published,
            ...fabric.at,
            low: span.low,
            high: span.high,
            verdict: fabric.verdict,
          };
        }),
      }),
    },
    fabricTable(id, `${capital(beside.words)}, ${unit}, fabric by fabric.`, fabrics),
    {
      kind: "paragraph",
      runs: [
        { kind: "text", text: capital(verdict), style: "bold" },
        {
          kind: "text",
          text: `; as usual ${usualText(row)} fabrics inside.${reason === undefined || verdict === "inside" ? "" : ` ${capital(RESTS[reason.rests])}. ${reason.words}`}`,
        },
      ],
    },
  ];
}

function fabricTable(id: string, caption: string, fabrics: readonly FabricRow[]): Block {
  return {
    kind: "table",
    id: `${id}-table`,
    caption,
    behind: true,
    head: [
      ...head(
        ["Fabric"],
        [...PRACTICES.map((practice) => PRACTICE_WORDS[practice]), "95 % interval as usual"],
      ),
      textCell("Verdict"),
    ],
    rows: fabrics.map((fabric) => [
      textCell(fabricWords(fabric.fabric), true),
      ...practisedCells(fabric),
      textCell(fabric.verdict),
    ]),
    widths: [2, 1, 1, 1, 1.6, 1.2],
  };
}

/**
 * Where the ranges are published.
 *
 * @param compared - ours beside every range
 * @returns a table of the sources used
 */
export function sourceTable(compared: readonly Compared[]): Block {
  const keys = Object.keys(SOURCES) as SourceKey[];
  const ranges = [...new Set(compared.map(({ published }) => published))];
  return {
    kind: "table",
    id: "sources",
    caption: "Sources of the ranges, and how many ranges of each are vouched for in which way.",
    head: head(["Short", "Source", "Ranges"]),
    rows: keys.flatMap((key): (readonly Cell[])[] => {
      const of = ranges.filter(({ source }) => source === key);
      if (of.length === 0) return [];
      const counts = (Object.keys(MARKS) as (keyof typeof MARKS)[]).flatMap((mark) => {
        const count = of.filter((range) => range.mark === mark).length;
        return count === 0 ? [] : [`${count} ${mark}`];
      });
      return [
        [
          textCell(SOURCES[key].short, true),
          textCell(SOURCES[key].full),
          textCell(counts.join(", ")),
        ],
      ];
    }),
    widths: [1.2, 5, 1.6],
  };
}

function glanceRow(row: Compared): IntervalRow {
  const { published, beside, fabrics, verdict } = row;
  const shown = fabrics.find(({ fabric }) => fabric.gsm === MIDDLE) ?? fabrics[0];
  if (shown === undefined) throw new Error(`No fabric is set beside ${published.id}.`);
  const { low, high } = spanOf(fabrics.flatMap(({ at }) => Object.values(at)));
  return {
    name: capital(beside.words),
    note: rangeName(published),
    published,
    ...shown.at,
    low,
    high,
    // Blanks that hold together keep the count on one line.
    verdict: `${verdict}, ${`usual ${usualText(row)}`.replaceAll(" ", "\u00a0")}`,
  };
}

function rangeName({ name, source, mark }: Published): string {
  return `${name}, ${SOURCES[source].short}, ${mark}`;
}

function inWords(row: Compared): string {
  const { published, beside, fabrics, verdict } = row;
  const { low, high } = spanOf(fabrics.map(({ at }) => at.usual));
  return `${capital(beside.words)} beside ${lower(published.name)}, ${rangeText(published)}: as usual ${fromTo(low, high)}, ${verdict}.`;
}

function reasonOf({ published, beside }: Compared): (typeof REASONS)[string] | undefined {
  return REASONS[`${published.id}/${beside.id}`];
}

function rangeText({ low, high }: Published): string {
  return low === 0 ? `up to ${asGiven(high)}` : `${asGiven(low)} to ${asGiven(high)}`;
}

function unitOf({ quantity }: Published): string {
  return QUANTITIES[quantity].unit;
}

function usualText({ fabrics }: Compared): string {
  return `${fabrics.filter(({ usualInside }) => usualInside).length} of ${fabrics.length}`;
}

function lower(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
