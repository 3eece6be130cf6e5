/**
 * Words that generated text may not use: they praise, promise or say more than a measurement can.
 */

import { judgeWording } from "./wording/judge.js";

/** A word that may not stand in a report. */
export interface BannedWord {
  /** The word as it stands in the text. */
  readonly word: string;
  /** Where it begins. [UTF-16 code units from the start of the text] */
  readonly index: number;
}

/**
 * Finds words that a report may not use, as whole words and in any case: `clean` is found in "clean
 * and fast" but not in "cleaning".
 *
 * @param text - generated text in English
 * @returns each refused wording with its place, in the order of the text; empty when there is none
 */
export function lintWording(text: string): readonly BannedWord[] {
  return judgeWording(text, ["en"]).found.flatMap(({ level, from, to }) =>
    level === "refused" ? [{ word: text.slice(from, to), index: from }] : [],
  );
}
