/**
 * Patterns as plain lines that end at the edges of the area, so that nothing has to be clipped and
 * every writer can draw them.
 */

import type { DrawingElement } from "./drawing.js";
import { coordinate, element } from "./nodes.js";
import type { Fill } from "./palette.js";

/**
 * Lines on an area; falling as read from left to right. Rising lines and dots are not among them: beside
 * the text they say where a number comes from, and no picture may seem to say so.
 */
export type Pattern = "plain" | "falling" | "crossed" | "level" | "upright" | "grid";

/** A rectangle. */
export interface Box {
  /** Left edge. */
  readonly x: number;
  /** Upper edge. */
  readonly y: number;
  /** Width. */
  readonly width: number;
  /** Height. */
  readonly height: number;
}

/** Distance between lines. */
const PITCH = 5;

/**
 * Draws an area with its pattern.
 *
 * @param box - the area
 * @param fill - how it is filled
 * @returns the ground and, unless it is plain, one path over it; nothing for an area without extent
 */
export function filled(box: Box, fill: Fill): readonly DrawingElement[] {
  if (!(box.width > 0 && box.height > 0)) return [];
  return [element("rect", { ...box, fill: fill.colour }), ...patterned(box, fill)];
}

/**
 * Draws the pattern alone.
 *
 * @param box - the area
 * @param fill - how it is filled
 * @returns one path, or nothing where there is no line to draw
 */
export function patterned(box: Box, fill: Fill): readonly DrawingElement[] {
  const d = patternPath(box, fill.pattern);
  if (d === "") return [];
  return [element("path", { d, fill: "none", stroke: fill.line, "stroke-width": 1 })];
}

/**
 * Finds the lines of a pattern within an area. They hang on the sheet, not on the area, so that
 * areas side by side match.
 *
 * @param box - the area
 * @param pattern - the pattern
 * @returns path data; empty for a plain area
 */
export function patternPath(box: Box, pattern: Pattern): string {
  switch (pattern) {
    case "plain":
      return "";
    case "falling":
      return slanted(box, true);
    case "crossed":
      return slanted(box, false) + slanted(box, true);
    case "level":
      return level(box);
    case "upright":
      return upright(box);
    case "grid":
      return level(box) + upright(box);
  }
}

function level({ x, y, width, height }: Box): string {
  return steps(y, y + height)
    .map((at) => `M${coordinate(x)},${coordinate(at)}H${coordinate(x + width)}`)
    .join("");
}

function upright({ x, y, width, height }: Box): string {
  return steps(x, x + width)
    .map((at) => `M${coordinate(at)},${coordinate(y)}V${coordinate(y + height)}`)
    .join("");
}

function steps(low: number, high: number): readonly number[] {
  const rim = 0.5;
  const found: number[] = [];
  const first = Math.ceil((low + rim) / PITCH);
  for (let at = first * PITCH; at <= high - rim; at += PITCH) found.push(at);
  return found;
}

// On a rising line x + y is the same everywhere, on a falling one y − x.
function slanted({ x, y, width, height }: Box, falls: boolean): string {
  const pitch = PITCH * Math.SQRT2;
  const [right, bottom] = [x + width, y + height];
  const [low, high] = falls ? [y - right, bottom - x] : [x + y, right + bottom];
  let path = "";
  for (let sum = Math.ceil(low / pitch) * pitch; sum < high; sum += pitch) {
    const start = falls ? Math.max(x, y - sum) : Math.max(x, sum - bottom);
    const end = falls ? Math.min(right, bottom - sum) : Math.min(right, sum - y);
    if (!(end - start > 0.1)) continue;
    const [from, to] = falls ? [start + sum, end + sum] : [sum - start, sum - end];
    path += `M${coordinate(start)},${coordinate(from)}L${coordinate(end)},${coordinate(to)}`;
  }
  return path;
}
