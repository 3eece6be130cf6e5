import PDFDocument from "pdfkit";

/**
 * The PDF library behind one door. Its published types lag behind the release in use, so the part
 * that is used is written out here; nothing else in the tree imports it.
 */

/** An object of the file that others may point to. */
export interface KitRef {
  /** The dictionary; may be written to until `end`. */
  readonly data: Record<string, unknown>;
  /** Writes the object, with `chunk` as its stream when given. */
  end(chunk?: string): void;
}

/** Offsets and advances of one glyph. [1/1000 of the size] */
export interface KitPosition {
  /** Way to the next glyph, kerning included. */
  readonly xAdvance: number;
  /** Way to the next glyph by the font's own table. */
  readonly advanceWidth: number;
  /** Shift to the right of this glyph alone. */
  readonly xOffset: number;
  /** Shift upwards of this glyph alone. */
  readonly yOffset: number;
}

/** A font file once parsed. */
export interface KitTypeface {
  /** Whether it has a glyph for a character. */
  hasGlyphForCodePoint(codePoint: number): boolean;
}

/** Typographic features, switched on by name or each on or off. */
export type KitFeatures = readonly string[] | Readonly<Record<string, boolean>>;

/** A font opened for one file. */
export interface KitFont {
  /** Turns a text into glyphs; replaced, so that a word is laid out once in a process. */
  layoutRun: (text: string, features: KitFeatures) => object;
  /** Name among the page's resources. */
  readonly id: string;
  /** Height of the tallest letters above the line. [1/1000 of the size] */
  readonly ascender: number;
  /** Depth below the line, negative. [1/1000 of the size] */
  readonly descender: number;
  /** Height of the small letters. [1/1000 of the size] */
  readonly xHeight: number;
  /** The parsed font file. */
  readonly font: KitTypeface;
  /** Glyph numbers in hexadecimal, and where they stand. */
  encode(text: string, features: KitFeatures): [string[], KitPosition[]];
  /** The object that stands for the font. */
  ref(): KitRef;
}

/** Content on one page that belongs to an element of the structure. */
export interface KitContent {
  /** Where it stands. */
  readonly refs: readonly unknown[];
}

/** An element of the structure. */
export interface KitElement {
  /** Its dictionary, to be amended before the element is written. */
  readonly dictionary: KitRef;
  /** Puts a child at the end. */
  add(child: KitElement | KitContent): KitElement;
  /** Closes and writes it. */
  end(): void;
}

/** A bookmark. */
export interface KitOutline {
  /** Its dictionary. */
  readonly outlineData: Record<string, unknown>;
  /** Puts a bookmark below this one, leading to the page being written. */
  addItem(
    title: string,
    options: {
      readonly top: number;
      readonly left: number;
      readonly zoom: number;
      readonly fit: false;
    },
  ): KitOutline;
}

/** A page. */
export interface KitPage {
  /** Fonts among its resources. */
  readonly fonts: Record<string, KitRef>;
  /** Patterns among its resources. */
  readonly patterns: Record<string, KitRef>;
}

/** What a link carries besides its place and target. */
export interface KitLinkOptions {
  /** Element that takes the link in. */
  readonly structParent: KitElement;
  /** What is read out, as a string object, which the library tells from a name. */
  readonly Contents: object;
}

/** A file being written. */
export interface Kit {
  /** Page being written. */
  readonly page: KitPage;
  /** Root of the bookmarks. */
  readonly outline: KitOutline;
  /** The catalogue. */
  readonly _root: KitRef;
  /** Font chosen last. */
  readonly _font: KitFont;
  /** Writes the metadata packet; replaced, since the library does not escape what it puts in. */
  _addInfo: () => void;
  on(event: "data", listener: (chunk: Uint8Array) => void): unknown;
  on(event: "end", listener: () => void): unknown;
  on(event: "error", listener: (fault: Error) => void): unknown;
  registerFont(name: string, from: Uint8Array | KitTypeface): unknown;
  font(name: string): unknown;
  addPage(): unknown;
  addContent(operators: string): unknown;
  appendXML(xml: string): void;
  ref(data: Record<string, unknown>): KitRef;
  struct(type: string, options?: Readonly<Record<string, unknown>>): KitElement;
  addStructure(element: KitElement): unknown;
  getStructTreeRoot(): KitRef;
  markStructureContent(type: string): KitContent;
  markContent(type: string, options: Readonly<Record<string, unknown>>): unknown;
  endMarkedContent(): unknown;
  addNamedDestination(name: string, fit: "XYZ", left: number, top: number, zoom: null): void;
  link(x: number, y: number, w: number, h: number, url: string, options: KitLinkOptions): unknown;
  goTo(x: number, y: number, w: number, h: number, name: string, options: KitLinkOptions): unknown;
  file(bytes: Uint8Array, options: Readonly<Record<string, unknown>>): unknown;
  end(): void;
}

/** Settings of a file that cannot be changed once it is open. */
export interface KitOptions {
  /** Language, BCP 47. */
  readonly language: string;
  /** Width and height of the pages. [pt] */
  readonly size: readonly [number, number];
  /** Entries of the information dictionary. */
  readonly info: Readonly<Record<string, string | Date>>;
}

const open = PDFDocument as unknown as new (options: Readonly<Record<string, unknown>>) => Kit;

/**
 * Opens a tagged PDF 1.7 file with the PDF/A-3a marks and no font of its own.
 *
 * @param options - language, size of the pages, information
 * @returns the file, with no page yet
 */
export function openKit(options: KitOptions): Kit {
  const kit = new open({
    pdfVersion: "1.7",
    subset: "PDF/A-3a",
    tagged: true,
    displayTitle: true,
    autoFirstPage: false,
    font: null,
    margin: 0,
    lang: options.language,
    size: options.size,
    info: options.info,
  });
  // The root of a tree of names or numbers has no limits (ISO 32000-1 7.9.6); the library writes some.
  const names = (kit._root.data["Names"] as KitRef).data["Dests"] as { limits: boolean };
  const parents = kit.getStructTreeRoot().data["ParentTree"] as { limits: boolean };
  names.limits = false;
  parents.limits = false;
  return kit;
}
