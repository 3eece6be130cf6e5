/**
 * Words of the checks on suppliers: what is looked for, and the question where it is not found.
 */

import type { Flag, FlagId } from "../../suppliers/flags.js";
import { formatNumber, formatPercent } from "../format.js";
import { listed } from "./supplier-words.js";

interface FlagWords {
  readonly test: string;
  readonly question: (found: Flag["found"]) => string;
}

const percent = (found: Flag["found"]): string => formatPercent(Number(found[0] ?? 0));
const names = (found: Flag["found"]): string => listed(found.map(String));

const FLAG_WORDS: Readonly<Record<FlagId, FlagWords>> = {
  "same evidence": {
    test: "no other supplier has the same lots",
    question: (found) =>
      `The lots are those of ${names(found)}, area by area. Are they one house, or was a file mixed up?`,
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
      `Readings of ${names(found)} are mostly round in the unit they were read in. Were they read, or estimated?`,
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
  "values far": {
    test: "no value of its own is less than half or more than twice what is usual among the others",
    question: (found) =>
      `Far from what is usual elsewhere: ${names(found)}. How was it measured, and when?`,
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
