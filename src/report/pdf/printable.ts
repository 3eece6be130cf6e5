/** Stands for a character that cannot be set: a white square, which every face we ship has. */
const REPLACEMENT = "\u25a1";

/** How often each character could not be set, by code point: `U+1F600`. */
export type Tally = Map<string, number>;

// Characters that a renderer is meant to show as nothing: joiners, soft hyphens, variation marks.
const UNSEEN = /\p{Default_Ignorable_Code_Point}/u;

// Marks that turn the order of the letters round could make a text read as what it is not.
const TURNING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

const UNPRINTABLE = /[\p{Cc}\p{Cs}\p{Co}\p{Cn}]/u;

const BLANK = /[\t\n\v\f\r\u0085\u2028\u2029]+/g;

const SIMPLE = /^[\x20-\x7e]*$/;

/**
 * Makes a text fit to be set: composed letters, one line, and a visible square for each character
 * that has no form, no glyph, or would turn the reading order.
 *
 * @param text - anything a log may hold
 * @param hasGlyph - whether the face can show a code point
 * @param tally - counts what was replaced
 * @returns the text with every character printable
 */
export function printable(
  text: string,
  hasGlyph: (codePoint: number) => boolean,
  tally: Tally,
): string {
  if (SIMPLE.test(text)) return text;
  let result = "";
  for (const character of text.replace(BLANK, " ").normalize("NFC")) {
    if (UNSEEN.test(character) && !TURNING.test(character)) continue;
    const codePoint = character.codePointAt(0) ?? 0;
    if (isPlain(character) && hasGlyph(codePoint)) {
      result += character;
      continue;
    }
    const name = `U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}`;
    tally.set(name, (tally.get(name) ?? 0) + 1);
    result += REPLACEMENT;
  }
  return result;
}

/**
 * Makes a text fit for bookmarks, properties and descriptions, where no face limits the letters.
 *
 * @param text - anything a log may hold
 * @returns the text on one line, without control characters
 */
export function plainText(text: string): string {
  if (SIMPLE.test(text)) return text;
  let result = "";
  for (const character of text.replace(BLANK, " ").normalize("NFC")) {
    result += isPlain(character) ? character : "\ufffd";
  }
  return result;
}

/**
 * Escapes a text for XML.
 *
 * @param text - any text
 * @returns the text without anything that XML forbids or reads as markup
 */
export function xmlText(text: string): string {
  return plainText(text)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/'/g, "&apos;");
}

function isPlain(character: string): boolean {
  return !TURNING.test(character) && !UNPRINTABLE.test(character);
}
