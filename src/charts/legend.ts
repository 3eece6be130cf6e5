import type { DrawingElement, DrawingNode } from "./drawing.js";
import { element, LETTER_SIZE, LINE_HEIGHT, lineStack } from "./nodes.js";
import { type Fill, SOFT, WHITE } from "./palette.js";
import { filled } from "./pattern.js";
import { cutText, type TextMeasure } from "./text-width.js";

/** One entry of a legend. */
export interface LegendItem {
  /** What is said. */
  readonly label: string;
  /** Draws the sign around its middle. */
  readonly sign: (x: number, y: number) => readonly DrawingNode[];
}

/** Width kept for a sign. */
const SIGN_WIDTH = 16;

const SIGN_HEIGHT = 10;
const AFTER_SIGN = 6;
const BETWEEN = 18;
const ROW = 18;

/**
 * Makes an entry for a filled area.
 *
 * @param label - what is said
 * @param fill - how the area is filled
 * @returns the entry
 */
export function fillItem(label: string, fill: Fill): LegendItem {
  return { label, sign: (x, y) => swatch(x, y, SIGN_WIDTH, SIGN_HEIGHT, fill) };
}

/**
 * Draws a small sample of a fill.
 *
 * @param x - its middle
 * @param y - its middle
 * @param width - width
 * @param height - height
 * @param fill - the fill
 * @returns elements; a white ground gets an outline
 */
export function swatch(
  x: number,
  y: number,
  width: number,
  height: number,
  fill: Fill,
): readonly DrawingElement[] {
  const box = { x: x - width / 2, y: y - height / 2, width, height };
  if (fill.colour !== WHITE) return filled(box, fill);
  return [...filled(box, fill), element("rect", { ...box, fill: "none", stroke: SOFT })];
}

/** A legend laid out. */
export interface Legend {
  /** Its elements. */
  readonly nodes: readonly DrawingNode[];
  /** Height it takes, with room below; 0 without entries. */
  readonly height: number;
}

/**
 * Lays out a legend in reading order, in as many rows as it takes.
 *
 * @param items - entries
 * @param left - left edge
 * @param right - right edge
 * @param measure - measures text
 * @returns elements, from the top edge of the sheet
 */
export function legend(
  items: readonly LegendItem[],
  left: number,
  right: number,
  measure: TextMeasure,
): Legend {
  const nodes: DrawingNode[] = [];
  let x = left;
  let top = 0;
  let deepest = 1;
  for (const { label, sign } of items) {
    const room = right - left - SIGN_WIDTH - AFTER_SIGN;
    const { lines, width } = cutText(label, room, 3, (text) => measure(text, LETTER_SIZE));
    const whole = SIGN_WIDTH + AFTER_SIGN + width;
    if (x > left && x + whole > right) {
      top += ROW + (deepest - 1) * LINE_HEIGHT;
      x = left;
      deepest = 1;
    }
    const y = top + ROW / 2;
    nodes.push(...sign(x + SIGN_WIDTH / 2, y));
    const middle = y + ((lines.length - 1) * LINE_HEIGHT) / 2;
    nodes.push(...lineStack(x + SIGN_WIDTH + AFTER_SIGN, middle, lines));
    deepest = Math.max(deepest, lines.length);
    x += whole + BETWEEN;
  }
  const height = items.length === 0 ? 0 : top + ROW + (deepest - 1) * LINE_HEIGHT + 8;
  return { nodes, height };
}
