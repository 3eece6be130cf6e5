/**
 * The report as JSON: every figure with its trace, and the counts and factors behind it.
 */

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
      comparisons: Object.fromEntries(
        [...input.comparisons].map(([id, { draws: _draws, ...rest }]) => [id, rest]),
      ),
      figures: document.figures,
      swings: Object.fromEntries(input.swings),
    },
    null,
    1,
  )}\n`;
}
