import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { create, type Font } from "fontkit";
import { expect, vi } from "vitest";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import type { Drawing, DrawingElement, DrawingNode } from "../../src/charts/drawing.js";

const require = createRequire(import.meta.url);

function face(file: string): Font {
  const font = create(readFileSync(require.resolve(`@expo-google-fonts/inter/${file}`)));
  if (!("layout" in font)) throw new Error(`${file} is a collection`);
  return font;
}

const FACES = {
  "400": face("400Regular/Inter_400Regular.ttf"),
  "600": face("600SemiBold/Inter_600SemiBold.ttf"),
};

/** Length of a text as the face itself sets it. */
export function setWidth(text: string, size: number, weight: "400" | "600" = "400"): number {
  const font = FACES[weight];
  return (font.layout(text).advanceWidth / font.unitsPerEm) * size;
}

/** A text of a picture and the room it takes on the sheet. */
export interface SetText {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly strong: boolean;
}

interface Around {
  readonly size: number;
  readonly weight: "400" | "600";
  readonly anchor: string;
  readonly map: (x: number, y: number) => readonly [number, number];
}

function within(element: DrawingElement, around: Around): Around {
  const { attributes } = element;
  let { map } = around;
  for (const [, name, list = ""] of (attributes["transform"] ?? "").matchAll(
    /(translate|rotate)\(([^)]*)\)/g,
  )) {
    const [a = 0, b = 0] = list.split(",").map(Number);
    const outer = map;
    const turn = (a * Math.PI) / 180;
    map =
      name === "translate"
        ? (x, y) => outer(x + a, y + b)
        : (x, y) =>
            outer(x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn));
  }
  return {
    size: Number(attributes["font-size"] ?? around.size),
    weight: attributes["font-weight"] === "600" ? "600" : around.weight,
    anchor: attributes["text-anchor"] ?? around.anchor,
    map,
  };
}

function textOf(node: DrawingNode): string {
  return typeof node === "string" ? node : node.children.map(textOf).join("");
}

/** All texts of a picture in drawing order, measured with the face itself. */
export function texts(drawing: Drawing): readonly SetText[] {
  const found: SetText[] = [];
  const visit = (node: DrawingNode, outer: Around): void => {
    if (typeof node === "string") return;
    const around = within(node, outer);
    if (node.tag !== "text") {
      for (const child of node.children) visit(child, around);
      return;
    }
    const text = textOf(node);
    const width = setWidth(text, around.size, around.weight);
    const start = { middle: -width / 2, end: -width }[around.anchor] ?? 0;
    const x = Number(node.attributes["x"] ?? 0) + start;
    const y = Number(node.attributes["y"] ?? 0);
    const corners = [
      around.map(x, y - 0.73 * around.size),
      around.map(x + width, y + 0.05 * around.size),
    ];
    const [across, down] = [corners.map(([at]) => at), corners.map(([, at]) => at)];
    found.push({
      text,
      left: Math.min(...across),
      right: Math.max(...across),
      top: Math.min(...down),
      bottom: Math.max(...down),
      strong: around.weight === "600",
    });
  };
  const sheet: Around = { size: 16, weight: "400", anchor: "start", map: (x, y) => [x, y] };
  for (const child of drawing.children) visit(child, sheet);
  return found;
}

/** All elements of one kind, wherever they stand. */
export function elements(drawing: Drawing, tag: string): readonly DrawingElement[] {
  const found: DrawingElement[] = [];
  const visit = (node: DrawingNode): void => {
    if (typeof node === "string") return;
    if (node.tag === tag) found.push(node);
    node.children.forEach(visit);
  };
  drawing.children.forEach(visit);
  return found;
}

/** Reads a number among the attributes. */
export function at(element: DrawingElement | undefined, name: string): number {
  return Number(element?.attributes[name] ?? Number.NaN);
}

/** Rectangles with a fill of that colour, from left to right and top to bottom. */
export function bars(drawing: Drawing, fill: string): readonly DrawingElement[] {
  return elements(drawing, "rect")
    .filter((rect) => rect.attributes["fill"] === fill && at(rect, "height") > 14)
    .sort((a, b) => at(a, "y") - at(b, "y") || at(a, "x") - at(b, "x"));
}

// Texts that touch by less than this are set tight, not on top of each other.
const TOUCH = 0.5;

function overlaps(all: readonly SetText[]): string[] {
  return all.flatMap((one, index) =>
    all
      .slice(index + 1)
      .filter(
        (other) =>
          Math.min(one.right, other.right) - Math.max(one.left, other.left) > TOUCH &&
          Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > TOUCH,
      )
      .map((other) => `"${one.text}" on "${other.text}"`),
  );
}

function outside(drawing: Drawing): string[] {
  const { width, height } = drawing;
  const letters = texts(drawing)
    .filter(
      ({ left, right, top, bottom }) => left < 0 || right > width || top < 0 || bottom > height,
    )
    .map(({ text }) => `"${text}"`);
  const areas = elements(drawing, "rect")
    .filter((rect) => {
      const [x, y] = [at(rect, "x"), at(rect, "y")];
      const [right, bottom] = [x + at(rect, "width"), y + at(rect, "height")];
      return x < -3 || right > width + 3 || y < 0 || bottom > height;
    })
    .map((rect) => JSON.stringify(rect.attributes));
  return [...letters, ...areas];
}

/**
 * Draws a picture twice, the second time without any help in languages and time zones, and checks
 * what every picture owes its reader.
 */
export function sound(draw: () => Drawing): Drawing {
  const drawing = draw();
  expect(drawingFaults(drawing)).toEqual([]);
  expect(outside(drawing)).toEqual([]);
  expect(overlaps(texts(drawing))).toEqual([]);

  const refuse = (): never => {
    throw new Error("a picture asked the machine for its language or its clock");
  };
  const helpers = [
    vi.spyOn(Number.prototype, "toLocaleString").mockImplementation(refuse),
    vi.spyOn(Date.prototype, "toLocaleString").mockImplementation(refuse),
    vi.spyOn(Date.prototype, "getTimezoneOffset").mockImplementation(refuse),
    vi.spyOn(Intl, "NumberFormat").mockImplementation(refuse),
    vi.spyOn(Intl, "DateTimeFormat").mockImplementation(refuse),
    vi.spyOn(Math, "random").mockImplementation(refuse),
    vi.spyOn(Date, "now").mockImplementation(refuse),
  ];
  try {
    expect(draw()).toEqual(drawing);
  } finally {
    for (const helper of helpers) helper.mockRestore();
  }
  return drawing;
}
