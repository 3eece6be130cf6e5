/**
 * How long a text is when set in Inter, without a page to measure on.
 */

import { REGULAR_WIDTHS, SEMIBOLD_WIDTHS, type WidthTable } from "./inter-widths.js";

/**
 * Measures a text.
 *
 * @param text - one line
 * @param size - size of the letters
 * @param weight - face; regular when absent
 * @returns its length, in the unit of the size
 */
export type TextMeasure = (text: string, size: number, weight?: "regular" | "semibold") => number;

/** Characters of other scripts are taken for as wide as they are high. [em] */
const UNKNOWN = 1;

const FACES = { regular: widths(REGULAR_WIDTHS), semibold: widths(SEMIBOLD_WIDTHS) };

function widths(table: WidthTable): ReadonlyMap<string, number> {
  return new Map(
    table.flatMap(([hundredths, characters]) =>
      Array.from(characters, (character) => [character, hundredths / 100] as const),
    ),
  );
}

/**
 * Measures a text from a table of advance widths, so slightly too long rather than too short: pairs
 * that are set closer together are not counted. Marks that sit on the letter before them take no room.
 *
 * @param text - one line
 * @param size - size of the letters
 * @param weight - face
 * @returns its length, in the unit of the size
 */
export const interWidth: TextMeasure = (text, size, weight = "regular") => {
  const face = FACES[weight];
  let sum = 0;
  for (const character of text.normalize("NFC")) {
    sum += face.get(character) ?? (/^\p{M}$/u.test(character) ? 0 : UNKNOWN);
  }
  return sum * size;
};

/** A text cut to a width. */
export interface CutText {
  /** Lines in order. */
  readonly lines: readonly string[];
  /** Length of the longest. */
  readonly width: number;
}

// A word up to its blank or its hyphen. Blanks that hold together, as between thousands, do not end it.
const PIECE = /[ \t\n]*[^ \t\n]+?(?:(?<=\p{L})-(?=\p{L})|(?=[ \t\n]|$))/gu;

/**
 * Breaks a text into lines at blanks and hyphens, and within a word only where the word alone is too
 * long. What does not fit into the last line is cut, with an ellipsis for it.
 *
 * @param text - the text
 * @param room - longest line allowed
 * @param most - most lines allowed
 * @param measure - measures in the size and face the text will be set in
 * @returns lines, at least one
 */
export function cutText(
  text: string,
  room: number,
  most: number,
  measure: (text: string) => number,
): CutText {
  const lines: string[] = [];
  let line = "";
  const place = (piece: string): void => {
    const joined = line === "" ? piece.trimStart() : line + piece;
    if (line !== "" && measure(joined) > room) {
      lines.push(line);
      line = piece.trimStart();
    } else {
      line = joined;
    }
  };
  for (const piece of text.trim().match(PIECE) ?? []) {
    const letters = Array.from(piece.trimStart());
    if (measure(letters.join("")) <= room) place(piece);
    else
      letters.forEach((letter, at) =>
        place(at === 0 && piece !== letters.join("") ? ` ${letter}` : letter),
      );
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  const kept = lines.slice(0, most);
  if (lines.length > most) kept[most - 1] = shortened(kept[most - 1] ?? "", room, measure);
  return { lines: kept, width: Math.max(...kept.map(measure)) };
}

function shortened(text: string, room: number, measure: (text: string) => number): string {
  const letters = Array.from(text);
  while (letters.length > 1 && measure(`${letters.join("")}…`) > room) letters.pop();
  return `${letters.join("").replace(/[\s,;:.–-]+$/, "")}…`;
}
