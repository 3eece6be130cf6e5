/**
 * Turns a plot as the library draws it into elements of a picture. Whatever would look different
 * from what is written, or is not among the elements a picture may have, is refused.
 */

import { ELEMENTS } from "./drawing-rules.js";
import type { DrawingElement, DrawingNode } from "./drawing.js";
import { coordinate, element, LETTER_SIZE } from "./nodes.js";
import { INK, WHITE } from "./palette.js";

// Says nothing about how a plot looks, or is said again by the sheet around it.
const LEFT_OUT = /^(aria-.*|class|xmlns|xmlns:.*)$/;
const ROOT_ONLY = new Set(["width", "height", "viewBox", "fill", "font-family", "font-size"]);
const COLOURS: Readonly<Record<string, string>> = {
  currentcolor: INK,
  white: WHITE,
  black: "#000000",
  transparent: "none",
  none: "none",
};
const OPACITIES = new Set(["opacity", "fill-opacity", "stroke-opacity"]);
const LENGTHS = new Set(
  "x y x1 y1 x2 y2 dx dy cx cy r width height font-size stroke-width stroke-miterlimit".split(" "),
);
const WEIGHTS: Readonly<Record<string, string>> = { normal: "400", bold: "600" };

interface Surroundings {
  /** Size of the letters, for lengths in em. */
  readonly size: number;
  /** New names of what is referred to, by old name. */
  readonly names: Map<string, string>;
}

/**
 * Reads a plot.
 *
 * @param svg - its outermost element, with sizes in units of the sheet
 * @returns one group that holds all of it
 * @throws Error naming the element or attribute that a picture must not have
 */
export function normalise(svg: Element): DrawingElement {
  if (svg.localName !== "svg") throw refused(`<${svg.localName}>`, "an svg element");
  const attributes: Record<string, string> = {};
  for (const { name, value } of Array.from(svg.attributes)) {
    if (LEFT_OUT.test(name) || ROOT_ONLY.has(name)) continue;
    if (name !== "text-anchor") throw refused(`<svg ${name}="${value}">`, "a plain svg element");
    attributes[name] = value;
  }
  const around: Surroundings = { size: LETTER_SIZE, names: new Map() };
  return element("g", attributes, ...children(svg, around));
}

function children(parent: Element, around: Surroundings): readonly DrawingNode[] {
  const found: DrawingNode[] = [];
  for (const child of Array.from(parent.childNodes)) {
    if (child.nodeType === 3) {
      const text = child.textContent ?? "";
      if (text !== "") found.push(text);
    } else if (isElement(child)) {
      const read = readElement(child, around);
      if (read !== undefined) found.push(read);
    }
  }
  return found;
}

function isElement(node: Node): node is Element {
  return node.nodeType === 1;
}

function readElement(node: Element, around: Surroundings): DrawingElement | undefined {
  const tag = node.localName;
  // The library's own rules speak of blanks and of colours that are resolved here.
  if (tag === "style") return undefined;
  const allowed = Object.hasOwn(ELEMENTS, tag) ? ELEMENTS[tag] : undefined;
  if (allowed === undefined) throw refused(`<${tag}>`, [...Object.keys(ELEMENTS)].join(", "));
  const written = writtenAttributes(node);
  const own = written.get("font-size");
  const size = own === undefined ? around.size : inUnits("font-size", own, around.size);
  const attributes: Record<string, string> = {};
  for (const [name, value] of written) {
    if (OPACITIES.has(name)) {
      if (Number(value) !== 1) throw refused(`${name}="${value}"`, "opaque colours, mixed before");
      continue;
    }
    if (!allowed.has(name)) throw refused(`<${tag} ${name}="${value}">`, [...allowed].join(", "));
    attributes[name] = readValue(name, value, {
      ...around,
      size: name === "font-size" ? around.size : size,
    });
  }
  const inside = children(node, { ...around, size });
  return tag === "g" && inside.length === 0 ? undefined : { tag, attributes, children: inside };
}

function writtenAttributes(node: Element): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { name, value } of Array.from(node.attributes)) {
    if (!LEFT_OUT.test(name) && name !== "style") found.set(name, value);
  }
  for (const rule of (node.getAttribute("style") ?? "").split(";")) {
    const [name = "", value = ""] = rule.split(/:(.*)/s).map((part) => part.trim());
    if (name !== "") found.set(name, value);
  }
  // In a fixed order, whatever order the tree keeps them in.
  return new Map([...found].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function readValue(name: string, value: string, around: Surroundings): string {
  if (name === "fill" || name === "stroke") return readColour(name, value);
  if (LENGTHS.has(name)) return coordinate(inUnits(name, value, around.size));
  if (name === "d" || name === "transform")
    return value.replace(/-?\d*\.?\d+(e[+-]?\d+)?/gi, rounded);
  if (name === "font-weight") return WEIGHTS[value] ?? value;
  if (name === "id") return renamed(value, around);
  if (name === "clip-path") {
    const [, target] = /^url\(["']?#([^"')]+)["']?\)$/.exec(value) ?? [];
    if (target === undefined) throw refused(`${name}="${value}"`, "url(#name) of the same plot");
    return `url(#${renamed(target, around)})`;
  }
  return value;
}

// The library numbers its names through all plots of a process.
function renamed(name: string, { names }: Surroundings): string {
  const known = names.get(name) ?? `part-${names.size + 1}`;
  names.set(name, known);
  return known;
}

function rounded(written: string): string {
  return coordinate(Number(written));
}

function inUnits(name: string, value: string, size: number): number {
  const [, digits, unit] = /^(-?\d*\.?\d+(?:e[+-]?\d+)?)(px|em)?$/.exec(value.trim()) ?? [];
  if (digits === undefined) throw refused(`${name}="${value}"`, "a number, alone or with px or em");
  return Number(digits) * (unit === "em" ? size : 1);
}

function readColour(name: string, value: string): string {
  const text = value.trim().toLowerCase();
  const fallback = /^var\(--plot-background(?:,[^()]*)?\)$/.test(text) ? WHITE : undefined;
  const known = fallback ?? (Object.hasOwn(COLOURS, text) ? COLOURS[text] : undefined);
  if (known !== undefined) return known;
  if (/^#[0-9a-f]{6}$/.test(text)) return text;
  if (/^#[0-9a-f]{3}$/.test(text)) return `#${text.slice(1).replace(/./g, "$&$&")}`;
  const [, ...parts] = /^rgb\((\d{1,3}),\s*(\d{1,3}),\s*(\d{1,3})\)$/.exec(text) ?? [];
  if (parts.length === 3 && parts.every((part) => Number(part) <= 255)) {
    return `#${parts.map((part) => Number(part).toString(16).padStart(2, "0")).join("")}`;
  }
  throw refused(`${name}="${value}"`, "none or an opaque colour as six hexadecimal digits");
}

function refused(found: string, expected: string): Error {
  return new Error(`a plot has ${found}; expected ${expected}; draw it another way`);
}
