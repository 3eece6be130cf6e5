/**
 * Words of the comparison of suppliers: conditions, checks, assumptions and questions.
 */

import type { Comparable, GateLine } from "../../suppliers/gate.js";
import type { Candidate, Given } from "../../suppliers/candidate.js";
import type { OtherOrder } from "../../suppliers/standings.js";
import { formatNumber, formatPercent } from "../format.js";

/**
 * A list in words.
 *
 * @param items - what is listed
 * @returns `a, b and c`
 */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}

/**
 * The verdict as a sentence.
 *
 * @param verdict - the verdict
 * @param suppliers - suppliers with a value at the mix
 * @param without - names of those compared without one
 * @returns a sentence, and another for those without
 */
export function verdictWords(
  verdict: Comparable,
  suppliers: number,
  without: readonly string[] = [],
): string {
  const apart =
    without.length === 0
      ? ""
      : ` ${listed(without)} ${without.length === 1 ? "has" : "have"} no value at the mix.`;
  switch (verdict) {
    case "comparable":
      return `Comparable: all ${suppliers} suppliers stand on one unit, one boundary, one set of factors and one mix.`;
    case "partly comparable":
      return `Partly comparable: ${suppliers} suppliers stand on one unit, one set of factors and one mix, with the limits below.${apart}`;
    case "not comparable":
      return "Not comparable: fewer than two suppliers are left that can be set side by side.";
  }
}

/**
 * A text that begins with a capital.
 *
 * @param text - the text
 * @returns the same, its first letter large
 */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

const LINES: Readonly<Record<GateLine["id"], string>> = {
  unit: "Quantity, unit and 1 accepted m² as the thing compared",
  factors: "Factors of fuels, grids, fibres, substances and inks",
  heat: "Heating values, net",
  warming: "Warming potentials, AR6",
  boundary: "Steps that are counted",
  period: "Nine months in common",
  rejects: "Rejected cloth: what it took is counted, its area is not",
  partners: "Steps at partner houses",
};

const HOW: Readonly<Partial<Record<`${GateLine["id"]}|${GateLine["outcome"]}`, string>>> = {
  "factors|made the same": "made the same: own values replaced by shipped ones for",
  "warming|made the same": "made the same: worked out anew for",
  "boundary|narrowed": "narrowed: left out for all, since not all count them:",
  "boundary|not met":
    "not met: a step that cloth cannot do without is missing; such strata have no value:",
  "period|not met": "not met by",
  "partners|narrowed": "narrowed: done elsewhere and known by factors alone at",
};

/**
 * A condition of comparing.
 *
 * @param line - the condition
 * @returns what it is, and how it is met
 */
export function gateWords(line: GateLine): readonly [what: string, how: string] {
  const how = HOW[`${line.id}|${line.outcome}`] ?? line.outcome;
  return [LINES[line.id], line.concerns.length === 0 ? how : `${how} ${listed(line.concerns)}`];
}

const OTHERS: Readonly<Record<OtherOrder["id"], string>> = {
  "unsaid at typical": "unsaid settings drawn from their defaults",
  "common strata": "strata that all print",
  "missing at best": "missing strata at the least observed",
  "strata alike": "all strata weighed alike",
  "per kg": "per kg of cloth",
  "route free": "route left to the supplier",
};

/**
 * An assumption in a few words.
 *
 * @param id - the assumption
 * @returns words
 */
export function otherWords(id: OtherOrder["id"]): string {
  return OTHERS[id];
}

/**
 * How a supplier's evidence was checked.
 *
 * @param given - the supplier
 * @returns a few words
 */
export function verifiedWords(given: Given): string {
  const { verified } = given;
  if (verified === undefined) return "logs, not sealed";
  if (!verified.sound) return "refused";
  const signature = verified.checks.find(({ id }) => id === "signature");
  const signer = verified.checks.find(({ id }) => id === "signer");
  if (signature?.outcome !== "pass") return "whole, not signed: anyone could have resealed it";
  return signer?.outcome === "pass"
    ? `whole, ${signer.found}`
    : `whole, ${signature.found}; whose key it is, is not known`;
}

/**
 * Whether evidence was sealed and signed, in a word or two.
 *
 * @param given - the supplier
 * @returns words for a narrow column
 */
export function signedWords(given: Given): string {
  const { verified } = given;
  if (verified === undefined) return "not sealed";
  const outcome = (id: string): string | undefined =>
    verified.checks.find((check) => check.id === id)?.outcome;
  if (outcome("signature") !== "pass") return "not signed";
  return outcome("signer") === "pass" ? "signed, key known" : "signed, key not known";
}

/**
 * Share of an indicator that rests on the supplier's own settings and readings.
 *
 * @param candidate - the supplier
 * @param indicator - the indicator
 * @returns share from 0 to 1
 */
export function ownShare(candidate: Candidate, indicator: string): number {
  const found = candidate.given.pack.coverage.find((one) => one.indicator === indicator);
  return found === undefined ? 0 : found.measured + found.allocated + found.modelled;
}

/** Least and greatest chance printed: assumptions that are not drawn can always be wrong. */
const LEAST = 0.01;

/**
 * A chance as printed. Nothing prints as certain: draws hold only the doubt that was put into them.
 *
 * @param chance - share of the draws
 * @returns the chance in print, from `<1 %` to `>99 %`
 */
export function chanceWords(chance: number): string {
  if (!(chance >= LEAST)) return `<\u00a0${formatPercent(LEAST)}`;
  if (chance > 1 - LEAST) return `>\u00a0${formatPercent(1 - LEAST)}`;
  return formatPercent(chance);
}

/**
 * Kendall's tau-b in words.
 *
 * @param pairs - pairs that have an order in both
 * @param kept - those that keep it
 * @returns `of 10 pairs, 9 keep their order`
 */
export function pairsWords(pairs: number, kept: number): string {
  if (pairs === 0) return "no pair has an order in both";
  if (pairs === 1)
    return kept === 1 ? "the one pair keeps its order" : "the one pair is turned round";
  return `of ${numberWord(pairs)} pairs, ${kept === pairs ? "all" : numberWord(kept)} ${kept === 1 ? "keeps its" : "keep their"} order`;
}

const NUMBERS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
];

function numberWord(number: number): string {
  return NUMBERS[number] ?? formatNumber(number, 0);
}
