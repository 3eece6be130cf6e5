/**
 * The report as JSON: every figure with its trace, and the counts and factors behind it.
 */

import { leafRange } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import type { Comparison } from "../compare/compare.js";
import type { Scenarios } from "../compare/scenarios.js";
import { datedStream } from "../plant/dated.js";
import type { ReportDocument } from "./document.js";
import type { ReportInput } from "./compose/input.js";

/** Format of the file. */
const FORMAT = "millrace-report-1";

/**
 * Writes the JSON report. Names of clients, lots and files stand in it only as far as they stand in the
 * document.
 *
 * @param document - the document
 * @param input - what it was made of
 * @returns JSON text
 */
export function reportJson(document: ReportDocument, input: ReportInput): string {
  const { reference, scope, days, account, log } = input;
  return `${JSON.stringify(
    {
      format: FORMAT,
      tool: input.version,
      title: document.title,
      house: document.author,
      date: document.date,
      period: { from: days[0], to: days[1] },
      scope,
      reference,
      draws: account.draws.count,
      seed: input.seed,
      factors: input.factors.digest,
      files: log.files,
      reasons: Object.fromEntries(log.counts),
      comparisons: comparisonsJson(input.comparisons),
      ...(input.scenarios === undefined ? {} : { scenarios: scenariosJson(input.scenarios) }),
      audience: input.audience ?? "internal",
      ...(input.fastness === undefined ? {} : { fastness: input.fastness }),
      figures: document.figures,
      ...settingsJson(input),
      swings: Object.fromEntries(input.swings),
    },
    null,
    1,
  )}\n`;
}

// What the traces of figures read, each stream once, and the sources named there.
function settingsJson({ account, factors }: ReportInput): object {
  const settings = new Map<string, object>();
  const named = new Set<string>();
  for (const { leaf } of account.program.nodes.leaves()) {
    if (leaf.provenance === "constant") continue;
    named.add(leaf.source);
    const { median, low, high } = leafRange(leaf);
    settings.set(datedStream(leaf), {
      words: leaf.words,
      unit: leaf.unit,
      given: leaf.provenance,
      value: leaf.spread.value,
      median,
      low,
      high,
      source: leaf.source,
    });
  }
  const sources = [...factors.sources].filter(([key]) => named.has(key));
  const inOrder = <T>(entries: Iterable<readonly [string, T]>): Record<string, T> =>
    Object.fromEntries([...entries].sort(([a], [b]) => (a < b ? -1 : 1)));
  return { settings: inOrder(settings), sources: inOrder(sources) };
}

function comparisonsJson(comparisons: ReadonlyMap<IndicatorId, Comparison>): object {
  return Object.fromEntries([...comparisons].map(([id, { draws: _draws, ...rest }]) => [id, rest]));
}

function scenariosJson({ draws, base, played }: Scenarios): object {
  return {
    draws,
    base: comparisonsJson(base),
    whatIf: played.map(({ scenario, comparisons, changes }) => ({
      name: scenario.name,
      note: scenario.note,
      asked: scenario.asked,
      differs: scenario.differs,
      comparisons: comparisonsJson(comparisons),
      changeOfSaving: Object.fromEntries(changes),
    })),
  };
}
