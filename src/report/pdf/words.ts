import type { Setting } from "./faces.js";
import type { Span } from "./spans.js";

/** A piece of a word that looks the same throughout. */
export interface Bit {
  /** Look. */
  readonly span: Span;
  /** Its glyphs. */
  readonly setting: Setting;
  /** Its letters. */
  readonly text: string;
  /** Length. [pt] */
  readonly width: number;
}

/** What may not be parted at the end of a line. */
export interface Word {
  /** Pieces in order. */
  readonly bits: readonly Bit[];
  /** Length. [pt] */
  readonly width: number;
  /** The blank after it, if one follows. */
  readonly blank: Bit | undefined;
}

// A line may also end after a hyphen or dash between letters: `pick-up`, not `-5` or `1-2`.
const PIECES = / +|(?:[^ ]*?\p{L}[-\u2010\u2013\u2014](?=\p{L}))|[^ ]+/gu;

// Blanks at which no line ends: within `3.2 to 6.1` and `5 4 5 4 2`, and around the sign of `Dye − P`.
const HELD =
  /(?<=[\d%]) to (?=[<>\u2212+]?\d)|(?<=\S) [\u2212+\u00b1=\u00d7] (?=\S)|(?<=\d) %|(?<=\b\d) (?=\d\b)/gu;
const HOLD = "\ue000";

/**
 * Parts spans into words. A word may run through several spans. An interval is one word, and so are the
 * two sides of a sign.
 *
 * @param spans - text in order
 * @returns words in order
 */
export function words(spans: readonly Span[]): readonly Word[] {
  const found: Word[] = [];
  let bits: Bit[] = [];
  const close = (blank: Bit | undefined): void => {
    if (bits.length > 0) found.push({ bits, width: length(bits), blank });
    bits = [];
  };
  for (const span of spans) {
    const held = span.text.replace(HELD, (found) => found.replaceAll(" ", HOLD));
    for (const part of held.match(PIECES) ?? []) {
      const piece = part.replaceAll(HOLD, " ");
      if (part.startsWith(" ")) {
        close(bit(span, " "));
        continue;
      }
      bits.push(bit(span, piece));
      if (/\p{L}[-\u2010\u2013\u2014]$/u.test(piece)) close(undefined);
    }
  }
  close(undefined);
  return found;
}

/**
 * Parts a word that is longer than a line. Parts end where an address or a name pauses if that
 * costs little, else anywhere.
 *
 * @param word - the word
 * @param width - longest part [pt]
 * @returns its parts, each at least one letter long
 */
export function partWord(word: Word, width: number): readonly Word[] {
  const letters = word.bits.flatMap((whole) =>
    (whole.text.match(/\P{M}\p{M}*|\p{M}+/gu) ?? []).map((text) => bit(whole.span, text)),
  );
  const parts: Word[] = [];
  let start = 0;
  while (start < letters.length) {
    let end = start;
    let pause = start;
    for (let used = 0; end < letters.length; end += 1) {
      const letter = letters[end];
      if (!letter || (end > start && used + letter.width > width)) break;
      used += letter.width;
      if (/[/\\.,;:_=&?-]/.test(letter.text)) pause = end + 1;
    }
    if (end < letters.length && pause - start > (end - start) * 0.7) end = pause;
    const bits = merge(letters.slice(start, end));
    start = end;
    parts.push({
      bits,
      width: length(bits),
      blank: start < letters.length ? undefined : word.blank,
    });
  }
  return parts;
}

function bit(span: Span, text: string): Bit {
  const setting = span.face.set(text, span.digits);
  return { span, text, setting, width: setting.width * span.size };
}

function merge(letters: readonly Bit[]): readonly Bit[] {
  const merged: { span: Span; text: string }[] = [];
  for (const { span, text } of letters) {
    const last = merged.at(-1);
    if (last?.span === span) last.text += text;
    else merged.push({ span, text });
  }
  return merged.map(({ span, text }) => bit(span, text));
}

function length(bits: readonly Bit[]): number {
  return bits.reduce((sum, { width }) => sum + width, 0);
}
