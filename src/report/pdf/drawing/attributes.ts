/** Attributes of an element as written in SVG. */
export type Attributes = Readonly<Record<string, string>>;

// Attributes that say nothing about how a picture looks. The family of the letters is ours alone.
const INERT = new Set([
  "id",
  "role",
  "lang",
  "tabindex",
  "focusable",
  "cursor",
  "pointer-events",
  "shape-rendering",
  "text-rendering",
  "font-family",
]);

const PLACED = ["transform", "clip-path"];
const WORDS = ["x", "y", "dx", "dy"];

/** Attributes that an element may have beyond those of paint and letters. */
const OWN: Readonly<Record<string, readonly string[]>> = {
  g: PLACED,
  path: [...PLACED, "d"],
  rect: [...PLACED, "x", "y", "width", "height", "rx", "ry"],
  line: [...PLACED, "x1", "y1", "x2", "y2"],
  circle: [...PLACED, "cx", "cy", "r"],
  ellipse: [...PLACED, "cx", "cy", "rx", "ry"],
  polygon: [...PLACED, "points"],
  polyline: [...PLACED, "points"],
  text: [...PLACED, ...WORDS],
  tspan: WORDS,
  defs: [],
  clipPath: ["clipPathUnits", "transform"],
  pattern: ["patternUnits", "patternTransform", "x", "y", "width", "height"],
};

/**
 * Tells whether an attribute leaves the picture as it is.
 *
 * @param name - attribute
 * @returns true for names, roles and what is said to other programs
 */
export function isInert(name: string): boolean {
  return INERT.has(name) || /^(aria-|data-|xmlns)/.test(name);
}

/**
 * Tells whether an element reads an attribute by itself.
 *
 * @param tag - element
 * @param name - attribute
 * @returns true for its geometry, place and clipping
 */
export function isOwn(tag: string, name: string): boolean {
  return OWN[tag]?.includes(name) === true;
}

/**
 * Tells whether an element can be drawn at all.
 *
 * @param tag - element
 * @returns true when it is known
 */
export function isKnown(tag: string): boolean {
  return Object.hasOwn(OWN, tag);
}

/**
 * Reads a length.
 *
 * @param attributes - attributes of the element
 * @param name - attribute
 * @param fallback - where the attribute is absent
 * @param em - size of the letters, where `em` may be used
 * @returns the length in units of the drawing
 * @throws Error when it is not a number, or has a unit that has no meaning here
 */
export function length(
  attributes: Attributes,
  name: string,
  fallback: number,
  em?: number,
): number {
  const text = attributes[name];
  if (text === undefined) return fallback;
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(px|em)?\s*$/i.exec(text);
  const unit = match?.[2]?.toLowerCase();
  if (!match || (unit === "em" && em === undefined)) {
    throw refused(name, text, em === undefined ? "a number" : "a number, alone or with em");
  }
  return Number(match[1]) * (unit === "em" ? (em ?? 1) : 1);
}

/**
 * Words the complaint about an attribute that would change the picture in a way that cannot be drawn.
 *
 * @param name - attribute
 * @param value - as written
 * @param expected - what can be drawn
 * @returns the fault, to be thrown
 */
export function refused(name: string, value: string, expected: string): Error {
  return new Error(
    `a drawing has ${name}="${value}"; expected ${expected}; change the drawing or draw it another way`,
  );
}
