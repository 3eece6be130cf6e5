import { collect } from "./collect.js";
import type { Kit, KitOutline } from "./kit.js";
import { openKit } from "./kit.js";
import type { PdfFonts } from "./pen.js";
import { Pen } from "./pen.js";
import { plainText } from "./printable.js";
import type { Properties } from "./properties.js";
import { metadata } from "./properties.js";
import { PAGE } from "./sheet.js";
import { Tree } from "./tree.js";

/** The file as a row of pages, with the places that bookmarks and links lead to. */
export class Paper {
  /** Writes on the page. */
  readonly pen: Pen;
  /** Says what is written. */
  readonly tree: Tree;

  readonly #kit: Kit;
  readonly #bytes: Promise<Uint8Array>;

  /**
   * Opens a file without a page.
   *
   * @param properties - what the file says of itself
   * @param fonts - the typeface
   */
  constructor(properties: Properties, fonts: PdfFonts) {
    const { information, xml } = metadata(properties);
    this.#kit = openKit({
      language: properties.language,
      size: [PAGE.width, PAGE.height],
      info: information,
    });
    this.#kit._addInfo = () => {
      this.#kit.appendXML(xml);
    };
    this.#bytes = collect(this.#kit);
    this.pen = new Pen(this.#kit, fonts);
    this.tree = new Tree(this.#kit, this.pen);
  }

  /** Starts a page. */
  turn(): void {
    this.#kit.addPage();
  }

  /** Finishes the page: what is open is closed, lines and frames are drawn. */
  finishPage(): void {
    this.tree.unmark();
    const ornaments = this.pen.takeOrnaments();
    if (ornaments !== "") {
      this.tree.artifact("Layout", () => {
        this.pen.op(ornaments);
      });
    }
  }

  /**
   * Names a place on the page.
   *
   * @param name - name that links lead to
   * @param y - its height, from the top of the page [pt]
   */
  place(name: string, y: number): void {
    this.#kit.addNamedDestination(name, "XYZ", 0, y, null);
  }

  /**
   * Puts a bookmark that leads to the page being written.
   *
   * @param title - what it says
   * @param y - height on the page, from the top [pt]
   * @param parent - bookmark above it; none at the top of the list
   * @returns the bookmark
   */
  bookmark(title: string, y: number, parent?: KitOutline): KitOutline {
    const above = parent ?? this.#kit.outline;
    // The library counts `left` from the right edge.
    const made = above.addItem(plainText(title), { top: y, left: PAGE.width, zoom: 0, fit: false });
    const shown = Number(above.outlineData["Count"] ?? 0);
    // Below the top bookmarks start folded, which the format writes as a negative count.
    above.outlineData["Count"] = parent ? shown - 1 : shown + 1;
    return made;
  }

  /**
   * Puts a file into this one, as the data it was made from.
   *
   * @param name - file name
   * @param bytes - content
   * @param mediaType - such as `application/json`
   * @param date - when it was made
   */
  attach(name: string, bytes: Uint8Array, mediaType: string, date: Date): void {
    this.#kit.file(bytes, {
      name: plainText(name),
      type: mediaType,
      relationship: "Data",
      creationDate: date,
      modifiedDate: date,
    });
  }

  /**
   * Writes the rest.
   *
   * @returns the bytes of the whole file
   */
  close(): Promise<Uint8Array> {
    this.tree.finish();
    this.#kit.end();
    return this.#bytes;
  }
}
