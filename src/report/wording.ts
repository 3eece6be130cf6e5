/**
 * Words that generated text may not use: they praise, promise or say more than a measurement can.
 */

/** A word that may not stand in a report. */
export interface BannedWord {
  /** The word as it stands in the text. */
  readonly word: string;
  /** Where it begins. [UTF-16 code units from the start of the text] */
  readonly index: number;
}

/** Banned wordings of English, as patterns; a blank stands for blanks, a hyphen, or nothing. */
const BANNED = [
  "green(?:er|est)?",
  "eco",
  "eco friendly",
  "ecological(?:ly)?",
  "environmentally (?:friendly|safe|correct|sound|responsible)",
  "planet",
  "planet friendly",
  "nature's friend",
  "sustainab\\p{L}*",
  "climate (?:friendly|neutral|positive)",
  "(?:carbon|co2|co₂) (?:friendly|neutral|positive|negative)",
  "net zero",
  "low carbon",
  "energy efficient",
  "clean(?:er|est)?",
  "pure(?:r|st)?",
  "non (?:polluting|toxic)",
  "harmless",
  "(?:chemical|formaldehyde|water) free",
  "waterless",
  "zero (?:waste|water|effluent|discharge|emissions?|impact)",
  "bio degradable",
  "bio based",
  "gentle on the environment",
  "(?:good|better|kind|kinder) (?:for|to) the (?:environment|climate)",
  "conscious(?:ly)?",
  "responsibl[ey]",
  "natural(?:ly)?",
  "best",
  "guaranteed?",
  "compliant",
  "(?:water|carbon) footprint",
] as const;

/**
 * Wordings that hold a banned one and may stand: names of laws, standards and reader roles, of fuels
 * and fibres, and words that say what a figure is not.
 */
const ALLOWED = [
  "sustainability (?:officers?|report(?:s|ing)?|statements?)",
  "corporate sustainability (?:reporting|due diligence) directive",
  "european sustainability reporting standards?",
  "natural (?:gas|fibres?|logarithm)",
  "best available techniques?",
  "clean (?:feed|rinse|steam|water)",
  "responsible for",
  "(?:no|not a|never a|nor a|neither a|than a) (?:water|carbon) footprint",
  "partial carbon footprint",
] as const;

const GAP = "[\\s\\-\\u00ad\\u2010\\u2011]*";

function wholeWords(wordings: readonly string[]): RegExp {
  const longestFirst = wordings.toSorted((a, b) => b.length - a.length);
  const choices = longestFirst.map((wording) =>
    wording.replaceAll(" ", GAP).replaceAll("'", "['\u2019]"),
  );
  return new RegExp(`(?<![\\p{L}\\p{N}_])(?:${choices.join("|")})(?![\\p{L}\\p{N}_])`, "giu");
}

const banned = wholeWords(BANNED);
const allowed = wholeWords(ALLOWED);

/**
 * Finds words that a report may not use, as whole words and in any case: `clean` is found in "clean
 * and fast" but not in "cleaning".
 *
 * @param text - generated text in English
 * @returns each banned word with its place, in the order of the text; empty when there is none
 * @see Directive (EU) 2024/825, ISO 14021 5.3 to 5.5 and 16 CFR part 260, whose intent the list follows
 */
export function lintWording(text: string): readonly BannedWord[] {
  const spared = [...text.matchAll(allowed)].map((found) => ({
    from: found.index,
    to: found.index + found[0].length,
  }));
  return [...text.matchAll(banned)]
    .map((found) => ({ word: found[0], index: found.index }))
    .filter(
      ({ word, index }) =>
        !spared.some(({ from, to }) => from <= index && index + word.length <= to),
    );
}
