/**
 * Marks in private-use letters. They carry values and line numbers through the template engine and
 * through Markdown, where no such letter has a meaning and no text from a log can hold one.
 */

/** A value on its way into the text. */
export type Carried =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "figure"; readonly figure: string; readonly text: string };

/** A stretch of a text with marks, taken apart. */
export type Piece = Carried | { readonly kind: "line"; readonly line: number };

const VALUE = { open: "\ue000", close: "\ue001" } as const;
const LINE = { open: "\ue002", close: "\ue003" } as const;
const FIRST_DIGIT = 0xe010;

const MARK = /\ue000([\ue010-\ue019]+)\ue001|\ue002([\ue010-\ue019]+)\ue003/gu;
const LINE_MARK = /\ue002([\ue010-\ue019]+)\ue003/u;

function written(number: number): string {
  return String(number).replace(/\d/g, (digit) => String.fromCharCode(FIRST_DIGIT + Number(digit)));
}

function read(digits: string): number {
  return Number(digits.replace(/./gu, (digit) => String(digit.charCodeAt(0) - FIRST_DIGIT)));
}

/**
 * Makes the mark that stands for a value.
 *
 * @param place - place of the value in the list of values
 * @returns letters to put into the text
 */
export function valueMark(place: number): string {
  return VALUE.open + written(place) + VALUE.close;
}

/**
 * Tells whether a text holds a private-use letter.
 *
 * @param text - any text
 * @returns true when there is one
 */
export function hasPrivateUse(text: string): boolean {
  return /\p{Co}/u.test(text);
}

/**
 * Makes a text from a log or plant file fit to be carried: one line, without private-use letters,
 * control characters and halves of letters.
 *
 * @param text - any text
 * @returns the text to be printed
 */
export function tidied(text: string): string {
  return text.replace(/[\s\p{Zl}\p{Zp}\u0085]+/gu, blank).replace(/[\p{Co}\p{Cc}\p{Cs}]/gu, "");
}

// Blanks that keep numbers together stay as they are.
function blank(found: string): string {
  return /^[\u00a0\u202f\u2007]+$/u.test(found) ? found : " ";
}

// What the engine reads itself: no mark may stand in there.
const ENGINE = /\{%-?\s*(raw|comment)\s*-?%\}[^]*?\{%-?\s*end\1\s*-?%\}|\{\{[^]*?\}\}|\{%[^]*?%\}/g;

// Addresses of links and ids of headings, which are read letter by letter.
const ADDRESS = /\]\([^)\n]*\)|\{#[^}\n]*\}/g;

// What opens a line in Markdown, up to where its text begins.
const OPENING = /^\s*(?:#{1,6}\s+|[-*+]\s+|\d+[.)]\s+|\|\s*)?(?:\[\^[\w-]*\]:?\s*)*/u;

/**
 * Puts a mark with its number into every line that has text of its own, so that faults found later
 * can be traced to a line of the template although loops repeat lines.
 *
 * @param source - the template
 * @returns the template with marks; they stand before a letter or digit
 */
export function markLines(source: string): string {
  const blanked = (found: string): string => found.replace(/[^\n]/g, "\u0000");
  const free = source.replace(ENGINE, blanked).replace(ADDRESS, blanked);
  const plain = free.split("\n");
  return source
    .split("\n")
    .map((line, index) => {
      const shown = plain[index] ?? "";
      const start = OPENING.exec(shown)?.[0].length ?? 0;
      const at = shown.slice(start).search(/[\p{L}\p{N}]/u) + start;
      if (at < start || /[&<\\]$/.test(shown.slice(0, at))) return line;
      return line.slice(0, at) + LINE.open + written(index + 1) + LINE.close + line.slice(at);
    })
    .join("\n");
}

/**
 * Takes a text apart at its marks.
 *
 * @param text - text out of the engine
 * @param values - the values by their place
 * @returns texts, values and line numbers in order; no text is empty
 */
export function pieces(text: string, values: readonly Carried[]): readonly Piece[] {
  const found: Piece[] = [];
  let from = 0;
  for (const mark of text.matchAll(MARK)) {
    if (mark.index > from) found.push({ kind: "text", text: text.slice(from, mark.index) });
    from = mark.index + mark[0].length;
    const [, place, line] = mark;
    if (line !== undefined) found.push({ kind: "line", line: read(line) });
    const value = place === undefined ? undefined : values[read(place)];
    if (value !== undefined) found.push(value);
  }
  if (from < text.length) found.push({ kind: "text", text: text.slice(from) });
  return found;
}

/**
 * Reads a text with marks as plain text.
 *
 * @param text - text out of the engine
 * @param values - the values by their place
 * @returns the text as it will be read
 */
export function plain(text: string, values: readonly Carried[]): string {
  return pieces(text, values)
    .map((piece) => (piece.kind === "line" ? "" : piece.text))
    .join("");
}

/**
 * Takes the line marks out of a text and leaves the values.
 *
 * @param text - text out of the engine
 * @returns the text without line marks
 */
export function withoutLines(text: string): string {
  return text.replace(new RegExp(LINE_MARK, "gu"), "");
}

/**
 * Finds the first line number that a text carries.
 *
 * @param text - text out of the engine
 * @returns number of the line in the template, if there is one
 */
export function firstLine(text: string): number | undefined {
  const digits = LINE_MARK.exec(text)?.[1];
  return digits === undefined ? undefined : read(digits);
}
