import type { ProvenanceShares } from "../document.js";
import type { Provenance } from "../shares.js";
import { PROVENANCES } from "../shares.js";
import { number, numbers, rectangle, rgb } from "./operators.js";
import type { Colour } from "./sheet.js";
import { COLOURS } from "./sheet.js";

/** A rectangle. [pt] */
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

/**
 * Parts a bar by shares.
 *
 * @param bar - the whole bar
 * @param shares - four shares
 * @returns a box for each share above 0, along the longer side of the bar
 */
export function parts(
  bar: Box,
  shares: ProvenanceShares,
): readonly { readonly name: Provenance; readonly box: Box }[] {
  const upright = bar.height > bar.width;
  let done = 0;
  return PROVENANCES.flatMap((name) => {
    const share = shares[name];
    const start = done;
    done += share;
    if (!(share > 0)) return [];
    const box = upright
      ? { ...bar, y: bar.y + start * bar.height, height: share * bar.height }
      : { ...bar, x: bar.x + start * bar.width, width: share * bar.width };
    return [{ name, box }];
  });
}

// Spacing of the strokes. [pt]
const STEP = 2.6;
const STROKE = 0.5;

/**
 * Fills a box with the pattern of a provenance: full, strokes close together, dots, empty. All four
 * can be told apart on a copy without colour.
 *
 * @param name - provenance
 * @param box - the box
 * @param colour - colour of the pattern
 * @returns drawing operators
 */
export function patterned(name: Provenance, box: Box, colour: Colour): string {
  const ink = rgb(colour);
  const shape = rectangle(box.x, box.y, box.width, box.height);
  const edge = `${ink} RG ${STROKE} w [] 0 d ${shape} S`;
  switch (name) {
    case "measured":
      return `${ink} rg ${shape} f ${edge}`;
    case "allocated":
      return `q ${shape} W n ${ink} RG 1 w ${hatch(box)} S Q ${edge}`;
    case "modelled":
      return `q ${shape} W n ${ink} RG 1 w 1 J [0 ${STEP}] 0 d ${dots(box)} S Q ${edge}`;
    case "default":
      return `${rgb(COLOURS.white)} rg ${shape} f ${edge}`;
  }
}

function hatch({ x, y, width, height }: Box): string {
  const strokes: string[] = [];
  for (let at = x - height; at < x + width; at += STEP) {
    strokes.push(`${numbers(at, y + height)} m ${numbers(at + height, y)} l`);
  }
  return strokes.join(" ");
}

function dots({ x, y, width, height }: Box): string {
  const rows: string[] = [];
  let odd = false;
  for (let at = y + STEP / 2; at < y + height; at += STEP / 2 + 0.4) {
    const start = x + (odd ? STEP / 2 : 0) + 0.6;
    rows.push(`${numbers(start, at)} m ${number(x + width)} ${number(at)} l`);
    odd = !odd;
  }
  return rows.join(" ");
}
