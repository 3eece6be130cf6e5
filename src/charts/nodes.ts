/**
 * Building blocks of pictures: elements, letters, and the sheet that everything stands on.
 */

import type { Drawing, DrawingElement, DrawingNode } from "./drawing.js";
import { INK } from "./palette.js";

/** Width of a picture for a page, in units of its view box. */
export const SHEET_WIDTH = 640;

/** Width of a picture for a screen held in the hand. */
export const NARROW_WIDTH = 360;

/** Size of the letters, in units of the view box. */
export const LETTER_SIZE = 11;

/** Size of what is said beside or below. */
export const SMALL_SIZE = 10.5;

/** Height of a line of letters. */
export const LINE_HEIGHT = 13;

/**
 * Writes a coordinate: two decimals at most, so that a picture is short and the same everywhere.
 *
 * @param value - the coordinate
 * @returns it as written in SVG
 * @throws Error when it is not a finite number
 */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a picture has a coordinate ${value}`);
  return String(Math.round(value * 100) / 100 + 0);
}

/**
 * Makes an element.
 *
 * @param tag - SVG element name
 * @param attributes - attributes; numbers are rounded, absent ones left out
 * @param children - what stands in it
 * @returns the element
 */
export function element(
  tag: string,
  attributes: Readonly<Record<string, string | number | undefined>>,
  ...children: readonly DrawingNode[]
): DrawingElement {
  const written: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    written[name] = typeof value === "number" ? coordinate(value) : value;
  }
  return { tag, attributes: written, children };
}

/** How a text is set; what is absent is ink, 11 units, regular, from its start. */
export interface Lettering {
  /** Size of the letters. */
  readonly size?: number;
  /** Heavier face. */
  readonly strong?: boolean;
  /** End that stands at the place given. */
  readonly anchor?: "middle" | "end";
  /** Colour. */
  readonly fill?: string;
  /** Colour of a rim that keeps the letters clear of what they cross. */
  readonly halo?: string;
}

/**
 * Sets a text.
 *
 * @param x - its start, middle or end
 * @param y - middle height of its figures and capitals
 * @param content - the text
 * @param lettering - how it is set
 * @returns a text element
 */
export function words(
  x: number,
  y: number,
  content: string,
  lettering: Lettering = {},
): DrawingElement {
  const size = lettering.size ?? LETTER_SIZE;
  return element(
    "text",
    {
      x,
      // Half the height of Inter's capitals, 1490 of 2048 units.
      y: y + 0.364 * size,
      "font-size": lettering.size,
      "font-weight": lettering.strong === true ? "600" : undefined,
      "text-anchor": lettering.anchor,
      fill: lettering.fill,
      ...(lettering.halo === undefined
        ? {}
        : {
            stroke: lettering.halo,
            "stroke-width": 3,
            "stroke-linejoin": "round",
            "paint-order": "stroke",
          }),
    },
    content,
  );
}

/**
 * Lays a plain ground under a text, so that it can be read on a pattern or across a line.
 *
 * @param x - left edge of the text
 * @param y - middle height of the text
 * @param width - length of the text
 * @param fill - colour of the ground
 * @returns a rectangle a little larger than the text
 */
export function plate(x: number, y: number, width: number, fill: string): DrawingElement {
  return element("rect", { x: x - 2, y: y - 6.5, width: width + 4, height: 13, fill });
}

/**
 * Sets lines of text below each other.
 *
 * @param x - start, middle or end of each line
 * @param y - middle of the whole
 * @param lines - the lines
 * @param lettering - how they are set
 * @returns a text element for each line
 */
export function lineStack(
  x: number,
  y: number,
  lines: readonly string[],
  lettering: Lettering = {},
): readonly DrawingElement[] {
  const first = y - ((lines.length - 1) * LINE_HEIGHT) / 2;
  return lines.map((line, index) => words(x, first + index * LINE_HEIGHT, line, lettering));
}

/**
 * Lays elements on a sheet.
 *
 * @param height - height of the sheet
 * @param children - elements in drawing order
 * @param width - width of the sheet
 * @returns the picture
 */
export function sheet(
  height: number,
  children: readonly DrawingNode[],
  width: number = SHEET_WIDTH,
): Drawing {
  const root = element(
    "g",
    { fill: INK, "font-family": "Inter, sans-serif", "font-size": LETTER_SIZE },
    ...children,
  );
  return { width, height: Math.ceil(height), children: [root] };
}
