import type { DrawingNode } from "../../document.js";
import type { Face, FaceName, Setting } from "../faces.js";
import { number, numbers, rgb } from "../operators.js";
import type { Tally } from "../printable.js";
import { printable } from "../printable.js";
import type { Attributes } from "./attributes.js";
import { length, refused } from "./attributes.js";
import type { Paint } from "./paint.js";
import { readPaint } from "./paint.js";

/** What letters are written on. */
export interface Lettering {
  /** Faces by name. */
  readonly faces: Readonly<Record<FaceName, Face>>;
  /** Counts characters that cannot be set. */
  readonly replaced: Tally;
  /** Text operators for use between BT and ET. */
  glyphs(face: Face, size: number, matrix: string, setting: Setting): string;
}

interface Letters {
  readonly paint: Paint;
  readonly face: Face;
  readonly setting: Setting;
  /** Starts at a place of its own. */
  readonly x: number | undefined;
  readonly y: number | undefined;
  /** Shift from where it would start. */
  readonly dx: number;
  readonly dy: number;
}

/**
 * Writes a text element: halos first, letters over them.
 *
 * @param node - the text element
 * @param paint - its look
 * @param lettering - faces
 * @returns operators
 * @throws Error naming what cannot be drawn
 */
export function letterOperators(
  node: Exclude<DrawingNode, string>,
  paint: Paint,
  lettering: Lettering,
): string {
  const halos: string[] = [];
  const fills: string[] = [];
  const over: string[] = [];
  let [x, y] = [0, 0];
  for (const chunk of chunks(collect(node, paint, lettering))) {
    const first = chunk[0];
    if (!first) continue;
    x = first.x ?? x;
    y = first.y ?? y;
    const whole = chunk.reduce(
      (sum, { setting, paint: { fontSize }, dx }) => sum + setting.width * fontSize + dx,
      0,
    );
    const { anchor } = first.paint;
    x -= anchor === "middle" ? whole / 2 : anchor === "end" ? whole : 0;
    for (const { paint: look, face, setting, dx, dy } of chunk) {
      x += dx;
      y += dy;
      const { fontSize: size, fill, stroke } = look;
      const matrix = `1 0 0 -1 ${numbers(x, y + hang(face, look))}`;
      x += setting.width * size;
      if (setting.parts.length === 0) continue;
      const glyphs = lettering.glyphs(face, size, matrix, setting);
      if (typeof fill === "object" || typeof stroke === "object") {
        throw refused("fill", "url(#…)", "a plain colour for letters");
      }
      if (stroke !== "none" && look.strokeWidth > 0) {
        const pen = `${rgb(stroke)} RG ${number(look.strokeWidth)} w ${look.join} j [] 0 d`;
        (look.strokeFirst ? halos : over).push(`${pen} 1 Tr ${glyphs} 0 Tr`);
      }
      if (fill !== "none") fills.push(`${rgb(fill)} rg ${glyphs}`);
    }
  }
  const all = [...halos, ...fills, ...over];
  return all.length > 0 ? `BT ${all.join(" ")} ET` : "";
}

// From the line given to the line the letters stand on.
function hang(face: Face, { baseline, fontSize }: Paint): number {
  switch (baseline) {
    case "alphabetic":
      return 0;
    case "middle":
      return (face.xHeight / 2) * fontSize;
    case "central":
      return ((face.ascent + face.descent) / 2) * fontSize;
    case "hanging":
      return 0.8 * face.ascent * fontSize;
    case "top":
      return face.ascent * fontSize;
    case "bottom":
      return face.descent * fontSize;
  }
}

function collect(
  node: Exclude<DrawingNode, string>,
  paint: Paint,
  lettering: Lettering,
): readonly Letters[] {
  const found: Letters[] = [];
  // A shift given before any letter holds for the first one.
  let place: Pick<Letters, "x" | "y" | "dx" | "dy"> = { x: undefined, y: undefined, dx: 0, dy: 0 };
  const enter = (attributes: Attributes, look: Paint): void => {
    const em = look.fontSize;
    const at = (name: string): number | undefined =>
      attributes[name] === undefined ? undefined : length(attributes, name, 0, em);
    place = {
      x: at("x") ?? place.x,
      y: at("y") ?? place.y,
      dx: place.dx + (at("dx") ?? 0),
      dy: place.dy + (at("dy") ?? 0),
    };
  };
  const visit = (child: DrawingNode, look: Paint): void => {
    if (typeof child === "string") {
      const face = lettering.faces[look.heavy ? "semibold" : look.italic ? "italic" : "regular"];
      const text = printable(child, face.has, lettering.replaced);
      if (text === "") return;
      found.push({ paint: look, face, setting: face.set(text, look.digits), ...place });
      place = { x: undefined, y: undefined, dx: 0, dy: 0 };
      return;
    }
    if (child.tag === "title" || child.tag === "desc") return;
    if (child.tag !== "tspan")
      throw new Error(`a drawing has <${child.tag}> in a text; expected tspan; change the drawing`);
    const own = readPaint("tspan", child.attributes, look);
    enter(child.attributes, own);
    for (const inner of child.children) visit(inner, own);
  };
  enter(node.attributes, paint);
  for (const child of node.children) visit(child, paint);
  return found;
}

// Letters are anchored together from one place of their own to the next.
function chunks(letters: readonly Letters[]): readonly (readonly Letters[])[] {
  const found: Letters[][] = [];
  for (const letter of letters) {
    const open = found.at(-1);
    if (open && letter.x === undefined && letter.y === undefined) open.push(letter);
    else found.push([letter]);
  }
  return found;
}
