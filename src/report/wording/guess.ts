/**
 * Which language a text is in, by its frequent words.
 */

import { fold, type Placed } from "./fold.js";
import { type Language, LANGUAGES } from "./language.js";
import { WORDS, wholeWords } from "./patterns.js";

/** Fewest frequent words that tell a language. */
const ENOUGH = 3;

/**
 * Languages to read a text as.
 *
 * @param text - what a reader sees of it
 * @returns the language with the most frequent words, and English, whose words stand in all; every language
 *   where too few words tell
 */
export function guessLanguages(text: Placed): readonly Language[] {
  const folded = fold(text).text;
  const counts = LANGUAGES.map((language) => ({
    language,
    count: [...folded.matchAll(wholeWords(WORDS[language].frequent, language))].length,
  })).sort((a, b) => b.count - a.count);
  const [first] = counts;
  if (first === undefined || first.count < ENOUGH) return LANGUAGES;
  return first.language === "en" ? ["en"] : [first.language, "en"];
}
