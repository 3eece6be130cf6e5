/**
 * The dossier of factors: a page for each, with value, spread, sources, scores, vintages, use, and the doubt
 * it carries; before them an index, and the factors that carry most.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Factor } from "../../factors/factor.js";
import type { Block, Cell, ReportDocument, Run } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import type { DossierInput } from "./input.js";
import { factorAnchor, indicatorWords, printedShare } from "./printed.js";
import { sectionOf } from "./section.js";
import { swingShares } from "./uses.js";

/** Most factors listed among those that carry most. */
const MOST = 15;

/**
 * Puts the dossier together.
 *
 * @param input - factors and their uses
 * @returns a document
 */
export function composeDossier(input: DossierInput): ReportDocument {
  const families = new Map<string, Factor[]>();
  for (const factor of [...input.shown].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    const family = factor.id.split(".", 1)[0] ?? "";
    families.set(family, [...(families.get(family) ?? []), factor]);
  }
  const shares = swingShares(input.swings);
  return {
    title: "Factors and what stands behind them",
    author: input.house,
    language: "en",
    date: input.date,
    footer: `factors ${input.factors.digest.slice(0, 12)} · millrace ${input.version}`,
    figures: {},
    blocks: [
      { kind: "heading", level: 1, id: "dossier", text: "Factors and what stands behind them" },
      paragraph(
        `${input.shown.length} factors, as they were known on the date above. Use and doubt are those of ${input.house}: another mill reads other factors.`,
        "lead",
      ),
      paragraph(
        "Each curve shows the spread in force, its 95 % interval filled, with a line at the value as stated. A broken line is the spread that the quality scores alone would make, where an interval stands beside the value and is used instead. Of several vintages a lot takes the newest that holds on the first of its month; a report of an earlier date leaves out what was entered later.",
      ),
      ...carryingMost(input, shares),
      { kind: "heading", level: 2, id: "index", text: "Index" },
      { kind: "list", ordered: false, items: [...families].map(indexLine) },
      ...[...families].flatMap(([family, factors]): Block[] => [
        { kind: "heading", level: 2, id: `family-${family}`, text: family, newPage: true },
        ...factors.flatMap((factor, i) => sectionOf(factor, i > 0, input, shares.get(factor.id))),
      ]),
    ],
  };
}

function indexLine([family, factors]: readonly [string, readonly Factor[]]): readonly Run[] {
  return [
    { kind: "text", text: family, style: "bold" },
    ...factors.flatMap(({ id }, i): Run[] => [
      { kind: "text", text: i === 0 ? ": " : ", " },
      { kind: "link", text: id.slice(family.length + 1), href: `#${factorAnchor(id)}` },
    ]),
  ];
}

function carryingMost(
  { shown, swings, indicators }: DossierInput,
  shares: ReadonlyMap<string, ReadonlyMap<IndicatorId, number>>,
): readonly Block[] {
  const here = new Set(shown.map(({ id }) => id));
  const ids = [...swings.keys()];
  const largest = [...shares].filter(([id]) => here.has(id)).slice(0, MOST);
  if (largest.length === 0) return [];
  return [
    { kind: "heading", level: 2, id: "most", text: "Where the doubt comes from" },
    paragraph(
      "Each factor is moved alone from the low to the high end of its 95 % interval, and the saving is worked out at both. Its share is the square of that swing over the sum of all squares: a share of the squared swings. It ranks factors and is no share of a variance; settings of the plant file swing too and have their share, so that columns need not add up to the whole.",
    ),
    {
      kind: "table",
      id: "most-doubt",
      caption: "Share of the squared swings of the saving, largest first.",
      head: [textCell("Factor"), ...ids.map((id) => numberCell(indicatorWords(id, indicators)))],
      rows: largest.map(([id, own]): readonly Cell[] => [
        { runs: [{ kind: "link", text: id, href: `#${factorAnchor(id)}` }] },
        ...ids.map((indicator) => numberCell(printedShare(own.get(indicator) ?? 0))),
      ]),
      widths: [3, ...ids.map(() => 1)],
    },
  ];
}

function paragraph(text: string, tone?: "lead"): Block {
  return {
    kind: "paragraph",
    runs: [{ kind: "text", text }],
    ...(tone === undefined ? {} : { tone }),
  };
}
