/**
 * Traces of the figures: how the totals of both arms came about. They are worked out last, because neither
 * the text nor the pictures wait for them.
 */

import { BROKEN_DOWN } from "../../account/account.js";
import { tracesOf } from "../../account/trace.js";
import type { Figure, FigureTerm, ReportDocument } from "../document.js";
import type { ReportInput } from "./input.js";
import { printUnit } from "./names.js";

/** Lines of a trace that are kept with a figure. */
const TRACE_LINES = 10;

/**
 * The report with the terms behind its totals.
 *
 * @param document - the report as composed
 * @param input - what it was made of
 * @returns the same report; figures `INDICATOR.ARM` have `terms`, whose rates are per unit of amount and not yet
 *   divided by the reference units, which stand in `over`
 */
export function traced(document: ReportDocument, input: ReportInput): ReportDocument {
  const { account, reference } = input;
  const wanted = BROKEN_DOWN.flatMap((id) =>
    (["pigment", "dye"] as const)
      .map((arm) => ({ id, arm, figure: `${id}.${arm}` }))
      .filter(({ figure }) => account.parts.has(id) && figure in document.figures),
  );
  const traces = tracesOf(account, wanted, TRACE_LINES);
  const figures: Record<string, Figure> = { ...document.figures };
  wanted.forEach(({ id, arm, figure }, at) => {
    const own = account.program.indicators.get(id)?.unit ?? "";
    const { unit, scale } = printUnit(id, own, reference.suffix);
    const units = reference.byArm?.[arm] ?? reference.units;
    const terms = (traces[at] ?? []).map(({ mean: _mean, ...line }): FigureTerm => ({
      ...line,
      median: line.median * scale,
      low: line.low * scale,
      high: line.high * scale,
    }));
    const known = figures[figure];
    if (known === undefined) return;
    const over = {
      units,
      words: reference.words,
      unit: unit.replace(`/${reference.suffix}`, ""),
    };
    figures[figure] = { ...known, terms, ...(reference.suffix === "" ? {} : { over }) };
  });
  return { ...document, figures };
}
