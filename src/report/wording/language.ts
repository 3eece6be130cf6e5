/**
 * What the words of one language are made of, for those who look for wordings that may not stand.
 */

import type { BanId } from "./bans.js";

/** Languages that are read. */
export const LANGUAGES = ["en", "de", "fr", "it", "es", "pt", "tr"] as const;

/** A language that is read, ISO 639-1. */
export type Language = (typeof LANGUAGES)[number];

/** Names of the languages, as printed. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = {
  en: "English",
  de: "German",
  fr: "French",
  it: "Italian",
  es: "Spanish",
  pt: "Portuguese",
  tr: "Turkish",
};

/**
 * Wordings of a language. Each is a regular expression over folded text (small letters without accents), in
 * which a blank stands for a blank, a hyphen or nothing, `~` for any ending, `#` for a number and `…` for a
 * few words of the same sentence. Accents may be written; they are folded too.
 */
export interface LanguageWords {
  /** The language. */
  readonly language: Language;
  /** Wordings of each ban; whole words only. */
  readonly bans: Readonly<Partial<Record<BanId, readonly string[]>>>;
  /** Wordings that hold a banned one and may stand: laws, fuels, fibres, colours, what a figure is not. */
  readonly spared: readonly string[];
  /** Wordings that compare a use of resources. */
  readonly comparing: readonly string[];
  /** Wordings that name what is compared with. */
  readonly basis: readonly string[];
  /** Frequent words that tell the language from the others. */
  readonly frequent: readonly string[];
  /** Words of this language that only look like banned English ones. */
  readonly notEnglish?: readonly string[];
}
