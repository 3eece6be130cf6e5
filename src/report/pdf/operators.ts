import type { Colour } from "./sheet.js";

/**
 * Writes a number the way page descriptions take it.
 *
 * @param value - a finite number
 * @returns at most three decimals, never in powers of ten
 * @throws Error when the number is not finite: a page with a hole in it is worse than none
 */
export function number(value: number): string {
  if (!(Math.abs(value) < 1e9)) {
    throw new Error(
      `a place on a page came out as ${value}; expected a finite number; check the drawing's coordinates`,
    );
  }
  return String(Math.round(value * 1000) / 1000 + 0);
}

/**
 * Writes numbers in a row.
 *
 * @param values - finite numbers
 * @returns them, with blanks between
 */
export function numbers(...values: readonly number[]): string {
  return values.map(number).join(" ");
}

const colours = new Map<string, string>();

/**
 * Writes a colour for the operators `rg` and `RG`.
 *
 * @param colour - six hexadecimal digits
 * @returns red, green and blue from 0 to 1
 */
export function rgb(colour: Colour): string {
  let written = colours.get(colour);
  if (written === undefined) {
    const value = Number.parseInt(colour.slice(1), 16);
    written = numbers((value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255);
    colours.set(colour, written);
  }
  return written;
}

/**
 * Draws the outline of a rectangle, y downwards.
 *
 * @param x - left edge
 * @param y - upper edge
 * @param width - width
 * @param height - height
 * @returns the path operator
 */
export function rectangle(x: number, y: number, width: number, height: number): string {
  return `${numbers(x, y, width, height)} re`;
}
