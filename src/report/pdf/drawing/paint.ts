import type { Colour } from "../sheet.js";
import type { Ink } from "./ink.js";
import { readColour, readInk } from "./ink.js";
import { COLOURS } from "../sheet.js";
import type { Attributes } from "./attributes.js";
import { isInert, isOwn, length, refused } from "./attributes.js";

/** How shapes and letters look; each element starts from its parent's. */
export interface Paint {
  /** Inside of shapes and letters. */
  readonly fill: Ink;
  /** Where an outline crosses itself, every second area is inside. */
  readonly evenOdd: boolean;
  /** Outline. */
  readonly stroke: Ink;
  /** Weight of the outline, in units of the drawing. */
  readonly strokeWidth: number;
  /** 0 butt, 1 round, 2 square. */
  readonly cap: number;
  /** 0 mitre, 1 round, 2 bevel. */
  readonly join: number;
  /** Longest mitre, in weights of the line. */
  readonly mitreLimit: number;
  /** Lengths of dashes and gaps in turn; none for a full line. */
  readonly dashes: readonly number[];
  /** Where in the dashes a line starts. */
  readonly dashOffset: number;
  /** Meaning of `currentColor`. */
  readonly colour: Colour;
  /** Size of the letters, in units of the drawing. */
  readonly fontSize: number;
  /** Letters are set in the heavier face. */
  readonly heavy: boolean;
  /** Letters are set in the italic face, unless they are heavy. */
  readonly italic: boolean;
  /** Numbers have digits of equal width. */
  readonly digits: boolean;
  /** Which end of a text stands at its place. */
  readonly anchor: "start" | "middle" | "end";
  /** Which height of the letters stands at their place. */
  readonly baseline: Baseline;
  /** The line is drawn before the area: a halo around letters. */
  readonly strokeFirst: boolean;
}

/** Lines that letters can be hung from. */
export type Baseline = "alphabetic" | "middle" | "central" | "hanging" | "top" | "bottom";

/** Initial values. Source: SVG 1.1 (second edition) appendix N, property index. */
export const INITIAL: Paint = {
  fill: "#000000",
  evenOdd: false,
  stroke: "none",
  strokeWidth: 1,
  cap: 0,
  join: 0,
  mitreLimit: 4,
  dashes: [],
  dashOffset: 0,
  colour: COLOURS.ink,
  fontSize: 16,
  heavy: false,
  italic: false,
  digits: false,
  anchor: "start",
  baseline: "alphabetic",
  strokeFirst: false,
};

type Reader = (value: string, parent: Paint, attributes: Attributes) => Partial<Paint>;

function choice<Value>(
  name: string,
  choices: Readonly<Record<string, Value>>,
): (text: string) => Value {
  return (text) => {
    const found = Object.hasOwn(choices, text.trim()) ? choices[text.trim()] : undefined;
    if (found === undefined) throw refused(name, text, Object.keys(choices).join(", "));
    return found;
  };
}

const evenOdd = choice("fill-rule", { nonzero: false, evenodd: true });
const cap = choice("stroke-linecap", { butt: 0, round: 1, square: 2 });
const join = choice("stroke-linejoin", { miter: 0, round: 1, bevel: 2 });
const heavy = choice("font-weight", {
  normal: false,
  bold: true,
  "400": false,
  "500": true,
  "600": true,
  "700": true,
});
const italic = choice("font-style", { normal: false, italic: true, oblique: true });
const digits = choice("font-variant", { normal: false, "tabular-nums": true });
const anchor = choice("text-anchor", { start: "start", middle: "middle", end: "end" } as const);
const baseline = choice<Baseline>("dominant-baseline", {
  auto: "alphabetic",
  alphabetic: "alphabetic",
  middle: "middle",
  central: "central",
  hanging: "hanging",
  "text-before-edge": "top",
  "text-after-edge": "bottom",
});

const one =
  (name: string): Reader =>
  (value) => {
    if (Number(value) !== 1) throw refused(name, value, "1: colours are opaque");
    return {};
  };

const nothing =
  (name: string, harmless: readonly string[]): Reader =>
  (value) => {
    if (!harmless.includes(value.trim())) throw refused(name, value, harmless.join(" or "));
    return {};
  };

const READERS: Readonly<Record<string, Reader>> = {
  color: (value, parent) => ({ colour: readColour("color", value, parent.colour) }),
  fill: (value, parent) => ({ fill: readInk("fill", value, parent.colour) }),
  "fill-rule": (value) => ({ evenOdd: evenOdd(value) }),
  stroke: (value, parent) => ({ stroke: readInk("stroke", value, parent.colour) }),
  "stroke-width": (_, parent, all) => ({
    strokeWidth: length(all, "stroke-width", 1, parent.fontSize),
  }),
  "stroke-linecap": (value) => ({ cap: cap(value) }),
  "stroke-linejoin": (value) => ({ join: join(value) }),
  "stroke-miterlimit": (_, parent, all) => ({
    mitreLimit: length(all, "stroke-miterlimit", parent.mitreLimit),
  }),
  "stroke-dasharray": (value) => ({ dashes: readDashes(value) }),
  "stroke-dashoffset": (_, parent, all) => ({
    dashOffset: length(all, "stroke-dashoffset", 0, parent.fontSize),
  }),
  "font-size": (_, parent, all) => ({ fontSize: length(all, "font-size", 16, parent.fontSize) }),
  "font-weight": (value) => ({ heavy: heavy(value) }),
  "font-style": (value) => ({ italic: italic(value) }),
  "font-variant": (value) => ({ digits: digits(value) }),
  "font-variant-numeric": (value) => ({ digits: digits(value) }),
  "text-anchor": (value) => ({ anchor: anchor(value) }),
  "dominant-baseline": (value) => ({ baseline: baseline(value) }),
  "paint-order": (value) => ({ strokeFirst: value.trim().startsWith("stroke") }),
  opacity: one("opacity"),
  "fill-opacity": one("fill-opacity"),
  "stroke-opacity": one("stroke-opacity"),
  visibility: nothing("visibility", ["visible"]),
  "white-space": nothing("white-space", ["normal", "pre"]),
  "letter-spacing": nothing("letter-spacing", ["normal", "0"]),
};

/**
 * Reads how an element looks.
 *
 * @param tag - element
 * @param attributes - its attributes
 * @param parent - look of the element around it
 * @returns its look
 * @throws Error naming an attribute or value that cannot be drawn
 */
export function readPaint(tag: string, attributes: Attributes, parent: Paint): Paint {
  let paint = parent;
  const names = Object.keys(attributes);
  // `currentColor` and `em` refer to the element itself, whatever the order they are written in.
  for (const name of [
    "color",
    "font-size",
    ...names.filter((n) => n !== "color" && n !== "font-size"),
  ]) {
    const value = attributes[name];
    if (value === undefined || isOwn(tag, name) || isInert(name)) continue;
    const read = Object.hasOwn(READERS, name) ? READERS[name] : undefined;
    if (!read) throw refused(name, value, `an attribute of ${tag} that can be drawn`);
    if (value.trim() !== "inherit") paint = { ...paint, ...read(value, paint, attributes) };
  }
  return paint;
}

function readDashes(value: string): readonly number[] {
  if (value.trim() === "none") return [];
  const dashes = value
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (!dashes.every((dash) => dash >= 0 && dash < Infinity)) {
    throw refused("stroke-dasharray", value, "none or lengths");
  }
  // An odd list is repeated once, so that dashes and gaps take turns.
  const even = dashes.length % 2 === 0 ? dashes : [...dashes, ...dashes];
  return even.some((dash) => dash > 0) ? even : [];
}
