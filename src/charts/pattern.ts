/**
 * Patterns as plain lines that end at the edges of the area, so that nothing has to be clipped and
 * every writer can draw them.
 */

import type { DrawingElement } from "./drawing.js";
import { coordinate, element } from "./nodes.js";
import type { Fill } from "./palette.js";

/** Lines or dots on an area; rising and falling as read from left to right. */
export type Pattern = "plain" | "rising" | "falling" | "crossed" | "level" | "upright" | "dots";

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

/** Distance between lines, and between dots. */
const PITCH = 5;
const DOT = 1.8;

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
  const weight = fill.pattern === "dots" ? DOT : 1;
  return [element("path", { d, fill: "none", stroke: fill.line, "stroke-width": weight })];
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
  const { x, y, width, height } = box;
  const [right, bottom] = [x + width, y + height];
  switch (pattern) {
    case "plain":
      return "";
    case "rising":
      return slanted(box);
    case "falling":
      return slanted(box, true);
    case "crossed":
      return slanted(box) + slanted(box, true);
    case "level":
      return steps(y, bottom)
        .map((at) => `M${coordinate(x)},${coordinate(at)}H${coordinate(right)}`)
        .join("");
    case "upright":
      return steps(x, right)
        .map((at) => `M${coordinate(at)},${coordinate(y)}V${coordinate(bottom)}`)
        .join("");
    case "dots":
      return steps(y, bottom, DOT / 2)
        .flatMap((row, line) =>
          steps(x, right, DOT / 2, line % 2 === 0 ? 0 : PITCH / 2).map(
            (at) => `M${coordinate(at - DOT / 2)},${coordinate(row)}h${DOT}`,
          ),
        )
        .join("");
  }
}

function steps(low: number, high: number, rim = 0.5, shift = 0): readonly number[] {
  const found: number[] = [];
  const first = Math.ceil((low + rim - shift) / PITCH);
  for (let at = first * PITCH + shift; at <= high - rim; at += PITCH) found.push(at);
  return found;
}

// On a rising line x + y is the same everywhere, on a falling one y − x.
function slanted({ x, y, width, height }: Box, falls = false): string {
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
