import { InputError } from "../../problems/input-error.js";
import type { ProvenanceShares } from "../document.js";
import { number, numbers, rectangle, rgb } from "./operators.js";
import type { Colour } from "./sheet.js";
import { COLOURS } from "./sheet.js";

/** The four provenances, best known first. */
export const PROVENANCES = ["measured", "allocated", "modelled", "default"] as const;

/** One of the four provenances. */
export type Provenance = (typeof PROVENANCES)[number];

/**
 * Checks that shares are shares.
 *
 * @param shares - four shares
 * @throws InputError when one is not between 0 and 1, or they do not add up to 1 (or all to 0,
 *   where there is no quantity)
 */
export function checkShares(shares: ProvenanceShares): void {
  let sum = 0;
  for (const name of PROVENANCES) {
    const share = shares[name];
    if (!(share >= 0 && share <= 1 + 1e-9)) {
      throw new InputError(
        `provenance.${name}`,
        share,
        "expected a share from 0 to 1; add the shares up again",
      );
    }
    sum += share;
  }
  if (!(Math.abs(sum - 1) < 1e-3 || sum === 0)) {
    throw new InputError(
      "provenance",
      sum,
      "expected four shares that add up to 1; add the shares up again",
    );
  }
}

/**
 * Rounds shares to whole percent so that they still add up to 100: the largest remainders go up.
 *
 * @param shares - four shares
 * @returns percent by provenance, as printed; what is there but rounds to nothing is `< 1 %`
 */
export function percents(shares: ProvenanceShares): Readonly<Record<Provenance, string>> {
  const exact = PROVENANCES.map((name) => shares[name] * 100);
  const whole = exact.map((value) => Math.floor(value + 1e-9));
  const total = exact.reduce((sum, value) => sum + value, 0);
  let missing = Math.round(total) - whole.reduce((sum, value) => sum + value, 0);
  const order = exact
    .map((value, index) => ({ index, rest: value - (whole[index] ?? 0) }))
    .toSorted((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of order) {
    if (missing <= 0) break;
    whole[index] = (whole[index] ?? 0) + 1;
    missing -= 1;
  }
  const printed = (index: number): string => {
    const value = whole[index] ?? 0;
    return value === 0 && (exact[index] ?? 0) > 0 ? "<\u00a01\u00a0%" : `${value}\u00a0%`;
  };
  return { measured: printed(0), allocated: printed(1), modelled: printed(2), default: printed(3) };
}

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
