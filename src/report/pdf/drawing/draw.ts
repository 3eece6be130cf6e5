import type { Drawing, DrawingNode } from "../../document.js";
import { number, numbers, rgb } from "../operators.js";
import type { Tile } from "../tile.js";
import type { Attributes } from "./attributes.js";
import { isKnown, length, refused } from "./attributes.js";
import type { Ink } from "./ink.js";
import type { Lettering } from "./letters.js";
import { letterOperators } from "./letters.js";
import type { Matrix } from "./matrix.js";
import { compose, readTransform } from "./matrix.js";
import type { Paint } from "./paint.js";
import { INITIAL, readPaint } from "./paint.js";
import { outline } from "./shapes.js";

/** What a picture is drawn on. */
export interface Ground extends Lettering {
  /** Registers a pattern with the page and gives the name to select it by. */
  tile(tile: Tile): string;
}

type Element = Exclude<DrawingNode, string>;

interface Walk {
  readonly ground: Ground;
  /** Elements that others refer to, by id. */
  readonly named: ReadonlyMap<string, Element>;
  readonly written: string[];
}

/**
 * Draws a picture. Anything in it that would look different from what is written is refused.
 *
 * @param drawing - the picture
 * @param ground - faces and patterns of the page
 * @param map - from the picture's units to points on the page, counted from its lower left corner
 * @returns operators, in the picture's units with y downwards
 * @throws Error naming the element or attribute that cannot be drawn
 */
export function draw(drawing: Drawing, ground: Ground, map: Matrix): string {
  const named = new Map<string, Element>();
  const find = (node: DrawingNode): void => {
    if (typeof node === "string") return;
    const id = node.attributes["id"];
    if (id !== undefined) named.set(id, node);
    node.children.forEach(find);
  };
  drawing.children.forEach(find);
  const walk: Walk = { ground, named, written: [] };
  for (const child of drawing.children) visit(child, INITIAL, map, walk);
  return walk.written.join("\n");
}

function visit(node: DrawingNode, around: Paint, map: Matrix, walk: Walk): void {
  if (typeof node === "string") {
    if (node.trim() !== "")
      throw new Error(`a drawing has the text "${node}" outside a text element; put it into one`);
    return;
  }
  const { tag, attributes, children } = node;
  if (tag === "title" || tag === "desc" || tag === "defs") return;
  if (tag === "clipPath" || tag === "pattern") return;
  if (!isKnown(tag) || tag === "tspan")
    throw new Error(`a drawing has <${tag}>, which cannot be drawn; change the drawing`);
  const paint = readPaint(tag, attributes, around);
  const own = readTransform(attributes["transform"] ?? "");
  const moved = attributes["transform"] !== undefined;
  const clip = attributes["clip-path"];
  const enclosed = moved || (clip !== undefined && clip !== "none");
  const within = moved ? compose(map, own) : map;
  if (enclosed) walk.written.push("q");
  if (moved) walk.written.push(`${own.map(exact).join(" ")} cm`);
  if (clip !== undefined && clip !== "none") walk.written.push(clipping(clip, walk));
  if (tag === "g") {
    for (const child of children) visit(child, paint, within, walk);
  } else if (tag === "text") {
    walk.written.push(letterOperators(node, paint, walk.ground));
  } else {
    walk.written.push(painted(tag, outline(tag, attributes) ?? "", paint, within, walk));
  }
  if (enclosed) walk.written.push("Q");
}

// Angles and scales need more decimals than places do.
function exact(value: number): string {
  return value.toFixed(6).replace(/\.?0+$/, "");
}

function painted(tag: string, path: string, paint: Paint, map: Matrix, walk: Walk): string {
  if (path === "") return "";
  const fills = paint.fill !== "none" && tag !== "line";
  const strokes = paint.stroke !== "none" && paint.strokeWidth > 0;
  if (!fills && !strokes) return "";
  const pen = strokes
    ? `${ink(paint.stroke, "RG", map, walk)} ${number(paint.strokeWidth)} w ${paint.cap} J ${paint.join} j ${number(paint.mitreLimit)} M [${numbers(...paint.dashes)}] ${number(paint.dashOffset)} d `
    : "";
  const brush = fills ? `${ink(paint.fill, "rg", map, walk)} ` : "";
  const star = paint.evenOdd ? "*" : "";
  if (fills && strokes && paint.strokeFirst) return `${pen}${brush}${path} S ${path} f${star}`;
  return `${pen}${brush}${path} ${fills && strokes ? `B${star}` : fills ? `f${star}` : "S"}`;
}

function ink(value: Ink, operator: "rg" | "RG", map: Matrix, walk: Walk): string {
  if (value === "none") return "";
  if (typeof value === "string") return `${rgb(value)} ${operator}`;
  const pattern = walk.named.get(value.pattern);
  if (pattern?.tag !== "pattern")
    throw refused("fill", `url(#${value.pattern})`, "the id of a pattern in the same drawing");
  const name = walk.ground.tile(readPattern(pattern, map, walk));
  return operator === "rg" ? `/Pattern cs /${name} scn` : `/Pattern CS /${name} SCN`;
}

function readPattern({ attributes, children }: Element, map: Matrix, walk: Walk): Tile {
  const units = attributes["patternUnits"] ?? "objectBoundingBox";
  if (units !== "userSpaceOnUse") throw refused("patternUnits", units, "userSpaceOnUse");
  const size = [length(attributes, "width", 0), length(attributes, "height", 0)] as const;
  if (!(size[0] > 0 && size[1] > 0))
    throw refused("width", attributes["width"] ?? "", "a pattern with width and height above 0");
  const shift: Matrix = [1, 0, 0, 1, length(attributes, "x", 0), length(attributes, "y", 0)];
  const own = compose(readTransform(attributes["patternTransform"] ?? ""), shift);
  const inner: Walk = {
    ...walk,
    written: [],
    ground: { ...walk.ground, glyphs: noLetters, tile: noLetters },
  };
  const paint = readPaint("pattern", attributes, INITIAL);
  for (const child of children) visit(child, paint, [1, 0, 0, 1, 0, 0], inner);
  return { size, matrix: compose(map, own), operators: inner.written.join("\n") };
}

function noLetters(): never {
  throw new Error(
    "a drawing has letters or a pattern within a pattern; expected lines and shapes; change the drawing",
  );
}

function clipping(reference: string, walk: Walk): string {
  const id = /^url\(\s*["']?#([^"')]+)["']?\s*\)$/.exec(reference.trim())?.[1] ?? "";
  const clip = walk.named.get(id);
  if (clip?.tag !== "clipPath")
    throw refused("clip-path", reference, "url(#id) of a clipPath in the same drawing");
  const units = clip.attributes["clipPathUnits"] ?? "userSpaceOnUse";
  if (units !== "userSpaceOnUse") throw refused("clipPathUnits", units, "userSpaceOnUse");
  const shapes = clip.children.filter((child) => typeof child !== "string");
  const paths = shapes.map(({ tag, attributes }) => {
    refuseMoved(attributes);
    readPaint(tag, attributes, INITIAL);
    const path = outline(tag, attributes);
    if (path === undefined)
      throw new Error(`a drawing has <${tag}> in a clipPath; expected shapes; change the drawing`);
    return path;
  });
  refuseMoved(clip.attributes);
  // An empty clip path hides everything.
  const path = paths.filter((one) => one !== "").join(" ") || "0 0 0 0 re";
  return `${path} W n`;
}

function refuseMoved(attributes: Attributes): void {
  const moved = attributes["transform"] ?? attributes["clip-path"];
  if (moved !== undefined) throw refused("transform", moved, "a clipPath that stays where it is");
}
