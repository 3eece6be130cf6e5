/**
 * What to ask a supplier, and the smallest thing that would mend it.
 */

import type { SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { formatNumber, formatPercent } from "../format.js";
import { printingOf } from "./supplier-tables.js";
import { questionWords } from "./flag-words.js";
import { capital, listed } from "./supplier-words.js";

/** A question with the smallest fix. */
export interface Ask {
  /** The gap, or the question. */
  readonly question: string;
  /** What would mend it. */
  readonly fix: string;
}

/** Least part of the value that a setting left unsaid must cost to be asked for. [-] */
const WORTH = 0.03;

/** Settings asked for by indicator. */
const SETTINGS = 2;

/**
 * Questions to a supplier. None names another supplier.
 *
 * @param compared - the comparison
 * @param alias - the supplier
 * @returns questions, the gravest first
 */
export function asksOf(compared: SuppliersCompared, alias: string): readonly Ask[] {
  const at = compared.candidates.findIndex((one) => one.alias === alias);
  if (at < 0) return [];
  const holes = compared.gate.boundary.filter((row) => row.alias === alias && row.holes.length > 0);
  return [
    ...holes.map(({ route, holes: missing }) => ({
      question: `Route ${route} counts no ${listed(missing)}. Where is it done?`,
      fix: `Put the step into the route: with its machine, or as outsourced with what the partner takes.`,
    })),
    ...missingAsks(compared, at),
    ...settingAsks(compared, at),
    ...(compared.flags[at] ?? [])
      .filter(({ id, outcome }) => outcome === "flag" && id !== "same evidence")
      .map((flag) => ({
        question: questionWords(flag),
        fix: "An answer in a sentence, or a new pack.",
      })),
  ];
}

function missingAsks({ mix, results }: SuppliersCompared, at: number): readonly Ask[] {
  const cells = results[0]?.suppliers[at]?.cells ?? [];
  const missing = mix.strata.filter(
    (_, k) => cells[k]?.value === undefined && cells[k]?.hole === undefined,
  );
  if (missing.length === 0) return [];
  const weight = missing.reduce((sum, stratum) => sum + stratum.weight, 0);
  return [
    {
      question: `Nothing was printed of ${listed(missing.map(({ words }) => words))}, ${formatPercent(weight)} of the mix. Is it printed at all?`,
      fix: "A longer period, or a trial lot.",
    },
  ];
}

function settingAsks({ results }: SuppliersCompared, at: number): readonly Ask[] {
  return results.flatMap((result) => {
    const own = result.suppliers[at];
    if (own === undefined) return [];
    const { unit, scale } = printingOf(result);
    const known = own.cells.flatMap(({ value }) => (value === undefined ? [] : [value.median]));
    const usual = known.reduce((sum, value) => sum + value, 0) / Math.max(1, known.length);
    return own.unstated
      .filter(({ rise }) => rise / Math.max(1, own.accepted) > WORTH * usual)
      .slice(0, SETTINGS)
      .map(({ factor, words, unit: its, counted, rise }) => ({
        question: `${capital(words)} was left unsaid and counts at ${plain(counted)}${its === "1" ? "" : ` ${its}`}, which costs ${plain((rise * scale) / Math.max(1, own.accepted))} ${unit} of ${result.words}.`,
        fix: `Measure it and state ${factor} in the plant file.`,
      }));
  });
}

function plain(value: number): string {
  return formatNumber(value, value >= 100 ? 0 : value >= 10 ? 1 : 2);
}
