import type { FaceName } from "./faces.js";

/** A colour as six hexadecimal digits, such as `#1e2733`. */
export type Colour = `#${string}`;

/** How a stretch of text looks. */
export interface TextStyle {
  /** Face where a run asks for none. */
  readonly face: FaceName;
  /** Size of the letters. [pt] */
  readonly size: number;
  /** From line to line. [pt] */
  readonly leading: number;
  /** Colour. */
  readonly colour: Colour;
}

/** A4, and the white around the column. [pt] */
export const PAGE = {
  width: 595.28,
  height: 841.89,
  left: 70,
  right: 56,
  top: 58,
  bottom: 58,
} as const;

/** Length of a full line. [pt] */
export const COLUMN = PAGE.width - PAGE.left - PAGE.right;

/** Longest line of running text: longer ones lose the reader on the way back. [pt] */
export const LONGEST_LINE = 440;

const INK: Colour = "#1e2733";
const SOFT: Colour = "#5b6675";

/** Colours of text and lines; all opaque. */
export const COLOURS = {
  ink: INK,
  soft: SOFT,
  link: "#2a3f5e",
  hair: "#cdd2d9",
  codeGround: "#eceff3",
  white: "#ffffff",
} as const satisfies Record<string, Colour>;

/** No letters are set smaller than this. [pt] */
export const SMALLEST = 7.5;

/** Styles of text, by what the text is. */
export const STYLES = {
  title: { face: "semibold", size: 20, leading: 25, colour: INK },
  chapter: { face: "semibold", size: 14, leading: 18, colour: INK },
  section: { face: "semibold", size: 10.8, leading: 14.5, colour: INK },
  body: { face: "regular", size: 9.6, leading: 14, colour: INK },
  lead: { face: "regular", size: 11, leading: 16, colour: INK },
  dense: { face: "regular", size: 8.6, leading: 11.8, colour: INK },
  small: { face: "regular", size: 8.2, leading: 11.2, colour: SOFT },
  caption: { face: "semibold", size: 8.8, leading: 12.2, colour: INK },
  cell: { face: "regular", size: 8.5, leading: 11.4, colour: INK },
  cellBehind: { face: "regular", size: 7.6, leading: 9.8, colour: INK },
  captionTable: { face: "regular", size: 8.8, leading: 12.2, colour: INK },
  captionBehind: { face: "regular", size: 7.8, leading: 10.6, colour: SOFT },
  key: { face: "regular", size: 7.8, leading: 10.4, colour: SOFT },
  furniture: { face: "regular", size: SMALLEST, leading: 9.6, colour: SOFT },
} as const satisfies Record<string, TextStyle>;

/** White above a block, unless it opens a page. [pt] */
export const WHITE = {
  chapter: 20,
  section: 17,
  paragraph: 6.4,
  item: 3.2,
  block: 14,
} as const;

/**
 * Finds the line on which letters stand within their share of the column.
 *
 * @param style - size and leading
 * @returns from the top of the line to the line the letters stand on [pt]
 */
export function baseline(style: TextStyle): number {
  return (style.leading - style.size * (ASCENT + DESCENT)) / 2 + style.size * ASCENT;
}

// Height above and depth below the line of the face we ship, in sizes; they centre the text only.
const ASCENT = 0.969;
const DESCENT = 0.241;
