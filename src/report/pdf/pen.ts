import type { Face, FaceName, Setting } from "./faces.js";
import { openFace } from "./faces.js";
import type { Kit, KitRef, KitTypeface } from "./kit.js";
import { number, numbers, rgb } from "./operators.js";
import type { Colour } from "./sheet.js";
import type { Tile } from "./tile.js";
import { writeTile } from "./tile.js";

/** A typeface in three faces, each the bytes of a TrueType file. */
export interface PdfFonts {
  /** Running text. */
  readonly regular: Uint8Array;
  /** Headings, totals. */
  readonly semibold: Uint8Array;
  /** Emphasis. */
  readonly italic: Uint8Array;
}

/** Font files parsed, so that a second report of one process does not parse them again. */
const PARSED = new WeakMap<Uint8Array, KitTypeface>();

/** Writes letters and lines on the page, in points from its upper left corner, y downwards. */
export class Pen {
  /** Faces by name. */
  readonly faces: Readonly<Record<FaceName, Face>>;

  readonly #kit: Kit;
  readonly #tiles = new Map<string, { name: string; ref: KitRef }>();
  #operators: string[] = [];
  #ornaments: string[] = [];

  /**
   * Opens the faces.
   *
   * @param kit - the file
   * @param fonts - the typeface
   */
  constructor(kit: Kit, fonts: PdfFonts) {
    this.#kit = kit;
    const open = (name: FaceName): Face => {
      const bytes = fonts[name];
      kit.registerFont(name, PARSED.get(bytes) ?? bytes);
      kit.font(name);
      PARSED.set(bytes, kit._font.font);
      return openFace(kit._font);
    };
    this.faces = { regular: open("regular"), semibold: open("semibold"), italic: open("italic") };
  }

  /**
   * Writes drawing operators.
   *
   * @param operators - operators that leave the graphics state as it was, or are undone later
   */
  op(operators: string): void {
    this.#operators.push(operators);
  }

  /**
   * Sets a text.
   *
   * @param face - face
   * @param size - size of the letters [pt]
   * @param x - left end [pt]
   * @param y - line the letters stand on [pt]
   * @param setting - the text in this face
   * @param colour - colour
   */
  text(face: Face, size: number, x: number, y: number, setting: Setting, colour: Colour): void {
    const glyphs = this.glyphs(face, size, `1 0 0 -1 ${numbers(x, y)}`, setting);
    this.op(`BT ${rgb(colour)} rg ${glyphs} ET`);
  }

  /**
   * Words a text for use between BT and ET.
   *
   * @param face - face
   * @param size - size of the letters
   * @param matrix - the six numbers of the text matrix
   * @param setting - the text in this face
   * @returns operators
   */
  glyphs(face: Face, size: number, matrix: string, setting: Setting): string {
    this.#kit.page.fonts[face.id] ??= face.font.ref();
    const shown = setting.parts.map(({ items, rise }) =>
      rise === 0 ? `[${items}] TJ` : `${number(rise * size)} Ts [${items}] TJ 0 Ts`,
    );
    return `/${face.id} ${number(size)} Tf ${matrix} Tm ${shown.join(" ")}`;
  }

  /**
   * Registers a pattern with the page.
   *
   * @param tile - the pattern
   * @returns the name to select it by
   */
  tile(tile: Tile): string {
    const key = JSON.stringify(tile);
    let known = this.#tiles.get(key);
    if (!known) {
      known = { name: `T${this.#tiles.size + 1}`, ref: writeTile(this.#kit, tile) };
      this.#tiles.set(key, known);
    }
    this.#kit.page.patterns[known.name] = known.ref;
    return known.name;
  }

  /**
   * Keeps operators for the end of the page, as decoration that is not read out.
   *
   * @param operators - operators; what they change is undone
   */
  ornament(operators: string): void {
    this.#ornaments.push(`q ${operators} Q`);
  }

  /**
   * Keeps a line for the end of the page.
   *
   * @param from - one end [pt]
   * @param to - the other end [pt]
   * @param weight - weight [pt]
   * @param colour - colour
   */
  rule(
    from: readonly [number, number],
    to: readonly [number, number],
    weight: number,
    colour: Colour,
  ): void {
    this.ornament(
      `${rgb(colour)} RG ${number(weight)} w ${numbers(...from)} m ${numbers(...to)} l S`,
    );
  }

  /**
   * Hands over the decoration of the page, of which there is none afterwards.
   *
   * @returns operators
   */
  takeOrnaments(): string {
    const ornaments = this.#ornaments.join("\n");
    this.#ornaments = [];
    return ornaments;
  }

  /** Sends what was written to the page. */
  flush(): void {
    if (this.#operators.length > 0) this.#kit.addContent(this.#operators.join("\n"));
    this.#operators = [];
  }
}
