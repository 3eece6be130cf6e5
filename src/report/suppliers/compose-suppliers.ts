/**
 * Puts the comparison of suppliers together from its template and its blocks.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Reversal } from "../../suppliers/reversal.js";
import { LOT_SCATTER } from "../../suppliers/sampling.js";
import { NOT_TRUE } from "../../suppliers/verify.js";
import { numbered } from "../compose/numbered.js";
import type { Block, ReportDocument } from "../document.js";
import { FigureDesk } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import { renderTemplate } from "../template.js";
import {
  askTable,
  boundaryTable,
  evidenceTables,
  flagTable,
  gateTable,
  mixTable,
} from "./condition-tables.js";
import { MANY, overviewTable } from "./many-suppliers.js";
import { panelFigures } from "./panel-figures.js";
import { mixFigure, placeFigures, stabilityBlocks, standingFigure } from "./supplier-figures.js";
import {
  cellTable,
  freeTable,
  orderTable,
  printed,
  printingOf,
  scaled,
} from "./supplier-tables.js";
import { standingTable } from "./standing-table.js";
import type { Refused } from "../../suppliers/gate.js";
import type { Standings } from "../../suppliers/standings.js";
import {
  capital,
  chanceWords,
  listed,
  otherWords,
  pairsWords,
  verdictWords,
} from "./supplier-words.js";

/** What the report is made of beside the comparison. */
export interface SuppliersReport {
  /** Day of the comparison. */
  readonly date: string;
  /** Version of the tool. */
  readonly version: string;
  /** Seed. */
  readonly seed: number;
  /** Number of draws. */
  readonly draws: number;
}

/**
 * Makes the report.
 *
 * @param compared - the comparison
 * @param report - day, version and draws
 * @param template - text of the template
 * @returns the document
 */
export function composeSuppliers(
  compared: SuppliersCompared,
  report: SuppliersReport,
  template: string,
): ReportDocument {
  const desk = new FigureDesk();
  const { gate, mix, results } = compared;
  const [main] = results;
  const title = "Suppliers at one mix of orders";
  // Page one keeps to its page, however many suppliers there are.
  const isMany = compared.candidates.length >= MANY;
  const blocks: Record<string, readonly Block[]> = {
    reason: main === undefined ? [] : reasonBlocks(main),
    "standing-main":
      main === undefined
        ? []
        : [isMany ? overviewTable(compared, main) : standingTable(compared, main, desk)],
    "figure-main": main === undefined || isMany ? [] : [standingFigure(compared, main)],
    gate: [gateTable(compared)],
    boundary: [boundaryTable(compared)],
    "mix-table": [mixTable(compared)],
    chapters: results.flatMap((result, i) => chapter(compared, result, desk, i === 0 && !isMany)),
    flags: [flagTable(compared), askTable(compared)],
    evidence: evidenceTables(compared),
  };
  const body = renderTemplate(
    template,
    "suppliers.md",
    {
      title,
      verdict: verdictWords(
        gate.verdict,
        main === undefined ? compared.candidates.length : main.standings.ranked.length,
        isMany ? [] : (main?.standings.unranked ?? []).map(({ alias }) => alias),
      ),
      refused: limitWords(compared),
      change: main === undefined ? "There is no order." : changeWords(main),
      mix: `${mix.name}, SHA-256 ${mix.digest.slice(0, 16)}`,
      fixed:
        mix.from === "file"
          ? "The mix was read, and its digest made, before any pack was opened."
          : "No mix was given. It is the accepted area of all suppliers together, fixed before any quantity but area was looked at; `--reference` takes a mix of the buyer's own.",
      truth: NOT_TRUE,
      draws: formatNumber(report.draws, 0),
      places: formatNumber(compared.placeDraws, 0),
      // Standard error of a chance of 0.90, in points.
      slack: formatNumber(100 * Math.sqrt(0.09 / Math.max(1, compared.placeDraws)), 1),
      scatter: formatPercent(LOT_SCATTER),
    },
    blocks,
  );
  return {
    title,
    author: "the buyer",
    language: "en",
    date: report.date,
    footer: `Mix ${mix.digest.slice(0, 12)} · ${compared.candidates.length} suppliers · millrace ${report.version} · seed ${report.seed} · not reviewed · for the buyer alone`,
    blocks: numbered(body),
    figures: desk.figures,
  };
}

function chapter(
  compared: SuppliersCompared,
  result: IndicatorResult,
  desk: FigureDesk,
  isMain: boolean,
): readonly Block[] {
  // Beyond a dozen, rows grow long and slopes cross; a small panel each says both.
  const isMany = compared.candidates.length >= MANY;
  return [
    { kind: "heading", level: 2, id: `chapter-${result.id}`, text: capital(result.words) },
    ...(isMain
      ? []
      : [
          ...reasonBlocks(result),
          standingTable(compared, result, desk),
          ...(isMany ? panelFigures(compared, result) : [standingFigure(compared, result)]),
        ]),
    orderTable(compared, result, desk),
    ...(isMany ? [] : [mixFigure(result)]),
    ...placeFigures(result),
    ...freeTable(result, desk),
    ...stabilityBlocks(result),
    cellTable(compared, result, desk),
  ];
}

/**
 * The finding in a sentence: why suppliers stand otherwise at one mix, who can be told apart there, and what
 * comes of it where the route is left to the supplier.
 *
 * @param result - the indicator
 * @returns a paragraph
 */
function reasonBlocks(result: IndicatorResult): readonly Block[] {
  const { reversal, standings, free } = result;
  const text =
    reversal === undefined
      ? "As they stand and at the mix, the suppliers have the same order."
      : reversalWords(result, reversal);
  const apart = leadWords(standings, "With the routes of the mix");
  return [
    {
      kind: "paragraph",
      tone: "lead",
      runs: [
        {
          kind: "text",
          text: [text, apart, freeWords(free)].filter((one) => one !== "").join(" "),
        },
      ],
    },
  ];
}

function freeWords(free: IndicatorResult["free"]): string {
  return free === undefined ? "" : leadWords(free, "With the route left to the supplier");
}

// Who takes least among those whose meters bear them out, with both chances by name, and what it would take to lose it.
function leadWords({ ranked }: Standings, when: string): string {
  const [first, second] = ranked.filter(({ unborne }) => unborne !== true);
  if (
    first?.beforeNext === undefined ||
    first.beforeNextDrawn === undefined ||
    second === undefined ||
    first.counted === undefined ||
    second.counted === undefined
  )
    return ranked.length < 2
      ? ""
      : `${when} fewer than two can be told apart, for meters do not bear the others out.`;
  const chances = `chance with unsaid settings at their unfavourable end ${chanceWords(first.beforeNext)}, drawn ${chanceWords(first.beforeNextDrawn)}`;
  if (first.group === second.group)
    return `${when} ${first.alias} and ${second.alias} take least and are not told apart (that ${first.alias} takes less: ${chances}).`;
  const margin = second.counted.median / first.counted.median - 1;
  return `${when} ${first.alias} takes less than ${second.alias} (${chances}); a value ${formatPercent(margin, margin < 0.1 ? 1 : 0)} too low would lose it that.`;
}

function reversalWords(result: IndicatorResult, { first, second, of, inMix }: Reversal): string {
  const { unit, scale } = printingOf(result);
  const crude = (alias: string): string => {
    const range = result.suppliers.find((one) => one.alias === alias)?.crude;
    return range === undefined ? "–" : printed(scaled(range, scale));
  };
  const atMix = (alias: string): string => {
    const range = result.standings.ranked.find((one) => one.alias === alias)?.value;
    return range === undefined ? "–" : printed(scaled(range, scale));
  };
  const [a, b] = [first.alias, second.alias];
  return `As it stands ${a} takes less than ${b} (${crude(a)} and ${crude(b)} ${unit}) because ${formatPercent(first.share)} of its cloth is ${of}, against ${formatPercent(second.share)} there and ${formatPercent(inMix)} in the mix; at the mix it takes more (${atMix(a)} and ${atMix(b)} ${unit}).`;
}

function changeWords({ standings }: IndicatorResult): string {
  const { others, leastTau } = standings;
  const least = others.find(({ tau }) => tau === leastTau);
  if (leastTau === undefined || least === undefined)
    return "With fewer than two places there is no order to change.";
  return leastTau > 0.999
    ? "None of the assumptions tried changes it."
    : `Most of all: ${otherWords(least.id)} (${pairsWords(least.pairs, least.kept)}).`;
}

const CAUSES: Readonly<Record<Refused["cause"], string>> = {
  twin: "lots and settings are the same under more than one name, until it is known whose they are",
  "not verified": "the evidence did not verify",
  "not worked out": "the evidence cannot be worked out",
  "not read": "the file is no pack that can be read",
};

// What narrows the comparison, for the first page.
function limitWords({ gate, results: [main] }: SuppliersCompared): string {
  const holes = gate.boundary
    .filter(({ holes: missing }) => missing.length > 0)
    .map(
      ({ alias, routeClass, holes: missing }) =>
        `${alias} counts no ${listed(missing)} on ${routeClass} routes`,
    );
  const out = [...gate.leftOut].flatMap(([routeClass, duties]) =>
    [...duties].map((duty) => `${duty} of ${routeClass} routes is left out for all`),
  );
  const short = [...gate.short].map(
    ([alias, months]) => `${alias} shares ${months} months with the others`,
  );
  const refused = (["twin", "not verified", "not worked out", "not read"] as const).flatMap(
    (cause) => {
      const names = gate.refused.filter((one) => one.cause === cause).map(({ alias }) => alias);
      const stay = names.length === 1 ? "stays" : "stay";
      const named = names.length > 4 ? `${names.length} suppliers` : listed(names);
      return names.length === 0 ? [] : [`${named} ${stay} out, for ${CAUSES[cause]}`];
    },
  );
  const unborne = (main?.standings.ranked ?? [])
    .filter((one) => one.unborne === true)
    .map(({ alias }) => alias);
  const unread =
    unborne.length === 0
      ? []
      : [
          `${unborne.length > 4 ? `${unborne.length} suppliers` : listed(unborne)} ${unborne.length === 1 ? "is" : "are"} told apart from nobody, for meters do not bear ${unborne.length === 1 ? "it" : "them"} out`,
        ];
  const all = [...refused, ...holes, ...unread, ...out, ...short];
  if (all.length === 0) return "";
  const shown = all.slice(0, 3);
  return `${shown.join("; ")}${all.length > shown.length ? "; and more, under the conditions" : ""}.`;
}
