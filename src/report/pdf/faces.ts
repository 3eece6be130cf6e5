import type { KitFeatures, KitFont, KitTypeface } from "./kit.js";

/** The three faces a report is set in. */
export type FaceName = "regular" | "semibold" | "italic";

/** Glyphs that share a height above the line, ready for a text operator. */
interface Part {
  /** Items of a TJ array: glyph numbers in hexadecimal and kerns. */
  readonly items: string;
  /** Height above the line. [em] */
  readonly rise: number;
}

/** A text turned into glyphs. */
export interface Setting {
  /** Length. [em] */
  readonly width: number;
  /** Glyphs in order. */
  readonly parts: readonly Part[];
}

/** A face that can be measured and set. */
export interface Face {
  /** Name among the page's resources. */
  readonly id: string;
  /** The library's font, needed once per page. */
  readonly font: KitFont;
  /** Height above the line. [em] */
  readonly ascent: number;
  /** Depth below the line, negative. [em] */
  readonly descent: number;
  /** Height of the small letters. [em] */
  readonly xHeight: number;
  /** Tells whether the face has a glyph for a code point. */
  readonly has: (codePoint: number) => boolean;
  /**
   * Turns a printable text into glyphs.
   *
   * @param text - text without characters the face lacks
   * @param digits - numbers are set with digits of equal width
   */
  set(text: string, digits: boolean): Setting;
}

const NUMBER =
  /^[\d.,:+\-\u2212\u2013\u00b1%\u2030()/<>\u2264\u2265\u2248\u00a0\u2007\u2009\u202f]+$/;

// Contextual forms would turn `->` into an arrow and `2x3` into a product: text is set as written.
const AS_WRITTEN = { calt: false } as const;
const EQUAL_DIGITS = ["tnum"] as const;

/**
 * Opens a face for measuring and setting. Words are turned into glyphs once; numbers are built
 * from single characters, so that a new number costs no layout.
 *
 * @param font - the library's font
 * @returns the face
 */
export function openFace(font: KitFont): Face {
  keepRuns(font);
  const words = new Map<string, Setting>();
  const characters = new Map<string, Setting>();
  const known = new Map<number, boolean>();

  const word = (text: string): Setting => {
    const cached = words.get(text);
    if (cached) return cached;
    const made = encode(font, text, AS_WRITTEN);
    words.set(text, made);
    return made;
  };

  const character = (text: string): Setting => {
    const cached = characters.get(text);
    if (cached) return cached;
    const made = encode(font, text, EQUAL_DIGITS);
    characters.set(text, made);
    return made;
  };

  return {
    id: font.id,
    font,
    ascent: font.ascender / 1000,
    descent: font.descender / 1000,
    xHeight: font.xHeight / 1000,
    has(codePoint) {
      let found = known.get(codePoint);
      if (found === undefined) {
        found = font.font.hasGlyphForCodePoint(codePoint);
        known.set(codePoint, found);
      }
      return found;
    },
    set(text, digits) {
      if (!text.includes(" ") && !digits) return word(text);
      const pieces = text.match(/ |[^ ]+/g) ?? [];
      return join(
        pieces.flatMap((piece) =>
          digits && NUMBER.test(piece) ? Array.from(piece, character) : [word(piece)],
        ),
      );
    },
  };
}

/** Texts laid out, by parsed font: glyphs and their places are the same in every report. */
const RUNS = new WeakMap<KitTypeface, Map<string, object>>();

// The library lays a text out anew in every file; that is most of the work of setting one.
function keepRuns(font: KitFont): void {
  const runs = RUNS.get(font.font) ?? new Map<string, object>();
  RUNS.set(font.font, runs);
  const layOut = font.layoutRun.bind(font);
  font.layoutRun = (text, features) => {
    const key = `${JSON.stringify(features)}${text}`;
    let run = runs.get(key);
    if (run === undefined) runs.set(key, (run = layOut(text, features)));
    return run;
  };
}

/**
 * Sets texts end to end.
 *
 * @param settings - texts in order
 * @returns one text
 */
export function join(settings: readonly Setting[]): Setting {
  const only = settings.length === 1 ? settings[0] : undefined;
  if (only) return only;
  const parts: { items: string; rise: number }[] = [];
  let width = 0;
  for (const setting of settings) {
    width += setting.width;
    for (const part of setting.parts) {
      const last = parts.at(-1);
      if (last?.rise === part.rise) last.items += part.items;
      else parts.push({ ...part });
    }
  }
  return { width, parts };
}

function encode(font: KitFont, text: string, features: KitFeatures): Setting {
  const [glyphs, positions] = font.encode(text, features);
  const parts: { items: string; rise: number }[] = [];
  let width = 0;
  let row = "";
  let items = "";
  let rise = 0;
  const closeRow = (): void => {
    if (row !== "") items += `<${row}>`;
    row = "";
  };
  const closePart = (): void => {
    closeRow();
    if (items !== "") parts.push({ items, rise });
    items = "";
  };
  const shift = (amount: number): void => {
    // A positive number in a TJ array moves the next glyph to the left.
    const left = -Math.round(amount);
    if (left === 0) return;
    closeRow();
    items += `${left} `;
  };
  positions.forEach((position, index) => {
    width += position.xAdvance;
    const lift = position.yOffset / 1000;
    if (lift !== rise) {
      closePart();
      rise = lift;
    }
    shift(position.xOffset);
    row += glyphs[index] ?? "";
    shift(position.xAdvance - position.advanceWidth - position.xOffset);
  });
  closePart();
  return { width: width / 1000, parts };
}
