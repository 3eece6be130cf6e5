/**
 * Regular expressions made of the wordings of a language.
 */

import type { BanId } from "./bans.js";
import { ENGLISH } from "./english.js";
import { asItStands, fold } from "./fold.js";
import { FRENCH } from "./french.js";
import { GERMAN } from "./german.js";
import { ITALIAN } from "./italian.js";
import type { Language, LanguageWords } from "./language.js";
import { PORTUGUESE } from "./portuguese.js";
import { SPANISH } from "./spanish.js";
import { TURKISH } from "./turkish.js";

/** Words of every language. */
export const WORDS: Readonly<Record<Language, LanguageWords>> = {
  en: ENGLISH,
  de: GERMAN,
  fr: FRENCH,
  it: ITALIAN,
  es: SPANISH,
  pt: PORTUGUESE,
  tr: TURKISH,
};

/** Patterns of a language, each over folded text. */
export interface Patterns {
  /** Wordings by ban. */
  readonly bans: readonly (readonly [BanId, RegExp])[];
  /** Wordings that may stand. */
  readonly spared: RegExp;
  /** Comparisons. */
  readonly comparing: RegExp;
  /** What is compared with. */
  readonly basis: RegExp;
}

/** Between two words: a blank, a hyphen, both, or nothing. */
const GAP = " ?-? ?";
const MACROS: Readonly<Record<string, string>> = {
  "~": "\\p{L}*",
  "#": "\\d[\\d.,']*",
  "…": "(?:[^.!?\\n]|\\.(?=\\d)){0,40}[^\\p{L}\\p{N}.!?\\n]",
  "\\p{L}": "\\p{L}",
  ä: "ae?",
  ö: "oe?",
  ü: "ue?",
};

function source(wording: string, language: Language): string {
  return wording
    .split(language === "de" ? /(\\p\{L\}|[~#…äöü])/ : /(\\p\{L\}|[~#…])/)
    .map((part) => MACROS[part] ?? fold(asItStands(part)).text.replaceAll(" ", GAP))
    .join("");
}

/**
 * Whole words that follow one of several wordings; the longest is tried first.
 *
 * @param wordings - wordings in the manner of the language files
 * @param language - their language
 * @returns the expression, for folded text
 */
export function wholeWords(wordings: readonly string[], language: Language): RegExp {
  const choices = wordings.toSorted((a, b) => b.length - a.length);
  const all = choices.map((wording) => source(wording, language)).join("|");
  return new RegExp(`(?<![\\p{L}\\p{N}_])(?:${all})(?![\\p{L}\\p{N}_])`, "gu");
}

const made = new Map<Language, Patterns>();

/**
 * Patterns of a language, made when they are first asked for.
 *
 * @param language - the language
 * @returns the patterns
 */
export function patternsOf(language: Language): Patterns {
  const before = made.get(language);
  if (before !== undefined) return before;
  const { bans, spared, comparing, basis } = WORDS[language];
  const patterns: Patterns = {
    bans: (Object.entries(bans) as [BanId, readonly string[]][]).map(([id, wordings]) => [
      id,
      wholeWords(wordings, language),
    ]),
    spared: wholeWords(spared, language),
    comparing: wholeWords(comparing, language),
    basis: wholeWords(basis, language),
  };
  made.set(language, patterns);
  return patterns;
}
