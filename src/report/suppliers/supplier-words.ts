/**
 * Words of the comparison of suppliers: conditions, checks, assumptions and questions.
 */

import type { Comparable, GateLine } from "../../suppliers/gate.js";
import type { Candidate, Given } from "../../suppliers/candidate.js";
import type { Flag, FlagId } from "../../suppliers/flags.js";
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
 * @param suppliers - suppliers compared
 * @returns one sentence
 */
export function verdictWords(verdict: Comparable, suppliers: number): string {
  switch (verdict) {
    case "comparable":
      return `Comparable: all ${suppliers} suppliers stand on one unit, one boundary, one set of factors and one mix.`;
    case "partly comparable":
      return `Partly comparable: ${suppliers} suppliers stand on one unit, one set of factors and one mix, with the limits below.`;
    case "not comparable":
      return "Not comparable: fewer than two suppliers are left that can be set side by side.";
  }
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

interface FlagWords {
  readonly test: string;
  readonly question: (found: Flag["found"]) => string;
}

const percent = (found: Flag["found"]): string => formatPercent(Number(found[0] ?? 0));
const names = (found: Flag["found"]): string => listed(found.map(String));

const FLAG_WORDS: Readonly<Record<FlagId, FlagWords>> = {
  "same evidence": {
    test: "no other supplier has the same evidence",
    question: (found) =>
      `The evidence equals that of ${names(found)}. Are they one house, or was a file mixed up?`,
  },
  months: {
    test: "lots in at least nine months",
    question: (found) =>
      `The log has lots in ${found[0] ?? 0} months. Can the rest of the year be sent?`,
  },
  "few months carry": {
    test: "no three months hold more than half of the area",
    question: (found) =>
      `Three months hold ${percent(found)} of the accepted area. Was the year like that?`,
  },
  "rows set aside": {
    test: "at most 5 % of rows set aside",
    question: (found) =>
      `${percent(found)} of the rows were set aside. Which lots are they, and can the rows be mended?`,
  },
  "joined strata": {
    test: "at most 20 % of lots in strata of fewer than three",
    question: (found) =>
      `${percent(found)} of the lots stand in strata too small to be told apart. Would a longer period help?`,
  },
  "all accepted": {
    test: "some cloth is rejected",
    question: () => "No cloth was rejected. Are rejects logged?",
  },
  "partner steps": {
    test: "no step is done elsewhere",
    question: (found) => `Done by a partner: ${names(found)}. What does the partner take?`,
  },
  "own factors": {
    test: "factors of the world are the shipped ones",
    question: (found) =>
      `Own values were given for ${names(found)}. Where are they from? Here the shipped ones are used.`,
  },
  "steam without fuel": {
    test: "steam has a fuel",
    question: (found) =>
      `Site ${names(found)} steams cloth and names no fuel for it. Where does the steam come from?`,
  },
  "meters constant": {
    test: "readings of meters vary from month to month",
    question: (found) => `Readings of ${names(found)} hardly vary. Were they read, or estimated?`,
  },
  "meters round": {
    test: "readings of meters are not mostly round",
    question: (found) =>
      `Readings of ${names(found)} are mostly whole thousands. Were they read, or estimated?`,
  },
  "meters below": {
    test: "meters show at least half of what the lots come to",
    question: (found) =>
      `Site meters show less than half of what the lots come to: ${names(found)}. Is part of the house on another meter?`,
  },
  "meters above": {
    test: "site meters show at most half as much again as the lots come to",
    question: (found) =>
      `Site meters show more than the lots come to: ${names(found)}. What else do they feed, and how much of it is printing?`,
  },
  "no readings": {
    test: "readings of meters were sent",
    question: () => "No readings of meters were sent, or fewer than six months. Can they be?",
  },
  "more out than in": {
    test: "no more water leaves than came in",
    question: (found) =>
      `More water leaves (${formatNumber(Number(found[1] ?? 0), 1)} L/m²) than came in (${formatNumber(Number(found[0] ?? 0), 1)} L/m²). Is there a source that is not counted?`,
  },
  "machines unused": {
    test: "every machine serves a route in the log",
    question: (found) =>
      `No lot in the log went over ${names(found)}. Are lots of those machines logged elsewhere?`,
  },
};

/**
 * What a check looks for.
 *
 * @param id - the check
 * @returns words that hold where it is passed
 */
export function testWords(id: FlagId): string {
  return FLAG_WORDS[id].test;
}

/**
 * The question that a check asks.
 *
 * @param flag - the check made
 * @returns a question that blames nobody
 */
export function questionWords(flag: Flag): string {
  return FLAG_WORDS[flag.id].question(flag.found);
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
