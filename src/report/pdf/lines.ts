import type { Setting } from "./faces.js";
import { join } from "./faces.js";
import type { Span } from "./spans.js";
import type { Bit, Word } from "./words.js";
import { partWord, words } from "./words.js";

/** A stretch of a line that looks the same throughout. */
export interface Piece {
  /** Look. */
  readonly span: Span;
  /** Glyphs. */
  readonly setting: Setting;
  /** From the start of the line. [pt] */
  readonly x: number;
  /** Length. [pt] */
  readonly width: number;
  /** The blank at the end of a line, which only those see who read the text out. */
  readonly blank?: boolean;
}

/** A line of text. */
export interface Line {
  /** Pieces from left to right. */
  readonly pieces: readonly Piece[];
  /** Length without the blank at its end. [pt] */
  readonly width: number;
}

// Sums of widths carry rounding; a word that fits exactly must not be sent to the next line.
const SLACK = 0.01;

/**
 * Breaks a text into lines, each as full as it will go.
 *
 * @param spans - text
 * @param width - longest line [pt]
 * @returns lines; one empty line for an empty text
 */
export function breakLines(spans: readonly Span[], width: number): readonly Line[] {
  const rows: Word[][] = [];
  let row: Word[] = [];
  let used = 0;
  for (const word of words(spans)) {
    if (row.length > 0 && used + word.width > width + SLACK) {
      rows.push(row);
      row = [];
      used = 0;
    }
    if (word.width <= width + SLACK) {
      row.push(word);
    } else {
      const parts = partWord(word, width);
      rows.push(...parts.slice(0, -1).map((part) => [part]));
      row = parts.slice(-1);
      used = 0;
    }
    const last = row.at(-1);
    used += (last?.width ?? 0) + (last?.blank?.width ?? 0);
  }
  rows.push(row);
  return rows.map((filled, index) => setLine(filled, index < rows.length - 1));
}

/**
 * Measures how narrow a text may be set without parting a word, and how long it is on one line.
 *
 * @param spans - text
 * @returns both lengths [pt]
 */
export function extent(spans: readonly Span[]): { readonly least: number; readonly full: number } {
  let least = 0;
  let full = 0;
  let blank = 0;
  for (const word of words(spans)) {
    least = Math.max(least, word.width);
    full += blank + word.width;
    blank = word.blank?.width ?? 0;
  }
  return { least, full };
}

function setLine(filled: readonly Word[], goesOn: boolean): Line {
  const pieces: Piece[] = [];
  let pending: Bit[] = [];
  let x = 0;
  const close = (): void => {
    const span = pending[0]?.span;
    if (!span) return;
    const setting = join(pending.map((bit) => bit.setting));
    const width = setting.width * span.size;
    pieces.push({ span, setting, x, width });
    x += width;
    pending = [];
  };
  const put = (bit: Bit): void => {
    if (pending[0] && pending[0].span !== bit.span) close();
    pending.push(bit);
  };
  filled.forEach((word, index) => {
    word.bits.forEach(put);
    if (word.blank && index < filled.length - 1) put(word.blank);
  });
  close();
  const width = x;
  // Readers and search engines put lines end to end: the blank between the words has to be there.
  const last = goesOn ? filled.at(-1)?.blank : undefined;
  if (last) {
    pieces.push({ span: last.span, setting: last.setting, x, width: last.width, blank: true });
  }
  return { pieces, width };
}
