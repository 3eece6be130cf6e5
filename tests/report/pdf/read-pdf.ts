import type { PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { OPS, getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** An object of the file by its number. */
interface RefProxy {
  num: number;
  gen: number;
}

/** An element of the structure as a reader sees it. */
export interface ReadElement {
  readonly role: string;
  readonly alt?: string;
  readonly children: readonly ReadElement[];
}

/** A page as a reader sees it. */
export interface ReadPage {
  /** Texts in the order they were written, with their places from the lower left corner. */
  readonly texts: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    /** Size of the letters. [pt] */
    readonly height: number;
  }[];
  /** All texts on one line. */
  readonly text: string;
  /** Links: an address, or the name of a place. */
  readonly links: readonly { readonly url?: string; readonly place?: string }[];
  /** Structure of the page. */
  readonly root: ReadElement;
  /** Painting operators that stand outside every mark. */
  readonly unmarked: number;
  /** Names of the fonts used. */
  readonly fonts: readonly string[];
}

/** A bookmark as a reader sees it. */
export interface ReadBookmark {
  readonly title: string;
  readonly page: number;
  readonly items: readonly ReadBookmark[];
}

/** A file as a reader sees it. */
export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  readonly bookmarks: readonly ReadBookmark[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly xmp: string;
  readonly attachments: Readonly<Record<string, Uint8Array>>;
  readonly marked: boolean;
  /** Names of places with the number of the page they stand on. */
  readonly places: ReadonlyMap<string, number>;
}

const PAINTS = new Set([OPS.showText, OPS.constructPath, OPS.stroke, OPS.fill, OPS.shadingFill]);

interface RawElement {
  readonly role?: string;
  readonly type?: string;
  readonly alt?: string;
  readonly children?: readonly RawElement[];
}

interface RawBookmark {
  readonly title: string;
  readonly dest: readonly [RefProxy];
  readonly items: readonly RawBookmark[];
}

/** Reads a file with a reader that knows nothing of how it was written. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const file = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    pages.push(await readPage(await file.getPage(number)));
  }
  const pageOf = async (target: RefProxy): Promise<number> => (await file.getPageIndex(target)) + 1;
  const places = new Map<string, number>();
  const destinations = (await file.getDestinations()) as unknown as Record<
    string,
    readonly [RefProxy]
  >;
  for (const [name, [target]] of Object.entries(destinations)) {
    places.set(name, await pageOf(target));
  }
  const readItems = async (items: readonly RawBookmark[]): Promise<readonly ReadBookmark[]> => {
    const read: ReadBookmark[] = [];
    for (const { title, dest, items: below } of items) {
      read.push({ title, page: await pageOf(dest[0]), items: await readItems(below) });
    }
    return read;
  };
  const { info, metadata } = await file.getMetadata();
  const attachments = (await file.getAttachments()) as Record<
    string,
    { readonly filename: string; readonly content: Uint8Array }
  > | null;
  const mark = (await file.getMarkInfo()) as { readonly Marked: boolean } | null;
  const result: ReadPdf = {
    pages,
    places,
    bookmarks: await readItems(
      ((await file.getOutline()) as unknown as RawBookmark[] | null) ?? [],
    ),
    info: info as Record<string, unknown>,
    xmp: String((metadata as { getRaw(): unknown }).getRaw()),
    attachments: Object.fromEntries(
      Object.values(attachments ?? {}).map(({ filename, content }) => [filename, content]),
    ),
    marked: mark?.Marked === true,
  };
  await task.destroy();
  return result;
}

/** Reads the texts of each page of a file that says nothing of its structure. */
export async function readTexts(bytes: Uint8Array): Promise<readonly (readonly string[])[]> {
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 });
  const file = await task.promise;
  const pages: (readonly string[])[] = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const { items } = await (await file.getPage(number)).getTextContent();
    pages.push(items.flatMap((item) => ("str" in item ? [item.str.trim()] : [])));
  }
  await task.destroy();
  return pages;
}

async function readPage(page: PDFPageProxy): Promise<ReadPage> {
  const { items } = await page.getTextContent();
  const texts = items.flatMap((item) => {
    if (!("str" in item)) return [];
    const [a = 0, b = 0, , , x, y] = item.transform as readonly number[];
    return [{ text: item.str, x: x ?? 0, y: y ?? 0, width: item.width, height: Math.hypot(a, b) }];
  });
  const annotations = (await page.getAnnotations()) as readonly {
    readonly subtype: string;
    readonly url?: string;
    readonly dest?: string;
  }[];
  const { fnArray, argsArray } = await page.getOperatorList();
  const fonts = new Set<string>();
  let depth = 0;
  let unmarked = 0;
  fnArray.forEach((operator, index) => {
    if (operator === OPS.beginMarkedContent || operator === OPS.beginMarkedContentProps) depth += 1;
    else if (operator === OPS.endMarkedContent) depth -= 1;
    else if (PAINTS.has(operator) && depth === 0) unmarked += 1;
    if (operator !== OPS.setFont) return;
    const [id] = argsArray[index] as readonly [string];
    fonts.add((page.commonObjs.get(id) as { readonly name: string }).name);
  });
  return {
    texts,
    text: texts.map(({ text }) => text).join(""),
    links: annotations
      .filter(({ subtype }) => subtype === "Link")
      .map(({ url, dest }) => ({
        ...(url === undefined ? {} : { url }),
        ...(dest === undefined ? {} : { place: dest }),
      })),
    root: readElement(await page.getStructTree()),
    unmarked,
    fonts: [...fonts].toSorted(),
  };
}

function readElement({ role, alt, children }: RawElement): ReadElement {
  return {
    role: role ?? "",
    ...(alt === undefined ? {} : { alt }),
    // Leaves are pieces of the page, not elements.
    children: (children ?? []).filter(({ type }) => type === undefined).map(readElement),
  };
}

/** All elements of a role within an element, itself included. */
export function elements(root: ReadElement, role: string): readonly ReadElement[] {
  const below = root.children.flatMap((child) => elements(child, role));
  return root.role === role ? [root, ...below] : below;
}
