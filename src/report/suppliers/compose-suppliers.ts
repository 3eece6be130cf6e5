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
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { renderTemplate } from "../template.js";
import {
  askTable,
  boundaryTable,
  evidenceTable,
  flagTable,
  gateTable,
  mixTable,
} from "./condition-tables.js";
import { MANY, overviewTable } from "./many-suppliers.js";
import { mixFigure, placeFigure, stabilityBlocks, standingFigure } from "./supplier-figures.js";
import { cellTable, freeTable, orderTable, printingOf, standingTable } from "./supplier-tables.js";
import { chanceWords, listed, otherWords, pairsWords, verdictWords } from "./supplier-words.js";

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
    evidence: [evidenceTable(compared)],
  };
  const body = renderTemplate(
    template,
    "suppliers.md",
    {
      title,
      verdict: verdictWords(gate.verdict, compared.candidates.length),
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
  const words = result.words.charAt(0).toUpperCase() + result.words.slice(1);
  return [
    { kind: "heading", level: 2, id: `chapter-${result.id}`, text: words },
    ...(isMain
      ? []
      : [
          ...reasonBlocks(result),
          standingTable(compared, result, desk),
          standingFigure(compared, result),
        ]),
    orderTable(result, desk),
    mixFigure(result),
    placeFigure(result),
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
  const [first, second] = standings.ranked;
  const apart =
    first?.beforeNext === undefined || second === undefined
      ? ""
      : ` With the routes of the mix ${first.alias} takes less than ${second.alias} with a chance of ${chanceWords(first.beforeNext)}${first.group === second.group ? ", too little to tell them apart" : ""}.`;
  return [
    {
      kind: "paragraph",
      tone: "lead",
      runs: [{ kind: "text", text: text + apart + freeWords(free) }],
    },
  ];
}

function freeWords(free: IndicatorResult["free"]): string {
  const [first, second] = free?.ranked ?? [];
  if (first?.beforeNext === undefined || second === undefined) return "";
  const chance = chanceWords(first.beforeNext);
  return first.group === second.group
    ? ` If the route is left to the supplier, ${first.alias} and ${second.alias} take least and cannot be told apart (chance that ${first.alias} takes less: ${chance}).`
    : ` If the route is left to the supplier, ${first.alias} takes least, less than ${second.alias} with a chance of ${chance}.`;
}

function reversalWords(result: IndicatorResult, { first, second, of, inMix }: Reversal): string {
  const { unit, scale } = printingOf(result);
  const number = (value: number): string =>
    formatNumber(value * scale, Math.min(2, digitsFor(value * scale)));
  return `As it stands ${first.alias} takes less than ${second.alias} (${number(first.crude)} and ${number(second.crude)} ${unit}) because ${formatPercent(first.share)} of its cloth is ${of}, against ${formatPercent(second.share)} there and ${formatPercent(inMix)} in the mix; at the mix it takes more (${number(first.atMix)} and ${number(second.atMix)} ${unit}).`;
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

// What narrows the comparison, for the first page.
function limitWords({ gate }: SuppliersCompared): string {
  const holes = gate.boundary
    .filter(({ holes: missing }) => missing.length > 0)
    .map(
      ({ alias, routeClass, holes: missing }) =>
        `${alias} counts no ${listed(missing)} on ${routeClass} routes, so those have no value`,
    );
  const out = [...gate.leftOut].flatMap(([routeClass, duties]) =>
    [...duties].map((duty) => `${duty} of ${routeClass} routes is left out for all`),
  );
  const short = [...gate.short].map(
    ([alias, months]) => `${alias} shares ${months} months with the others`,
  );
  const refused = gate.refused.map(
    ({ alias }) => `${alias} stays out, for its evidence did not verify or cannot be worked out`,
  );
  const all = [...holes, ...out, ...short, ...refused];
  if (all.length === 0) return "";
  const shown = all.slice(0, 3);
  return `${shown.join("; ")}${all.length > shown.length ? "; and more, under the conditions" : ""}.`;
}
