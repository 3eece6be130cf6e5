import type { Kit, KitElement } from "./kit.js";
import type { Link } from "./link.js";
import type { Pen } from "./pen.js";
import { plainText } from "./printable.js";

/** The structure of the file: what each stretch of a page is, in the order it is read. */
export class Tree {
  /** Element that holds all others. */
  readonly root: KitElement;

  readonly #kit: Kit;
  readonly #pen: Pen;
  readonly #notes: { id: string; element: KitElement }[] = [];
  #marked: KitElement | undefined;
  #link: { target: Link; element: KitElement } | undefined;

  /**
   * Starts the structure.
   *
   * @param kit - the file
   * @param pen - what writes on its pages
   */
  constructor(kit: Kit, pen: Pen) {
    this.#kit = kit;
    this.#pen = pen;
    this.root = kit.struct("Document");
    kit.addStructure(this.root);
  }

  /**
   * Makes an element of the structure below another one.
   *
   * @param type - standard type: `P`, `Table`, `TH`
   * @param parent - element above
   * @param attributes - attribute dictionary, with its owner under `O`
   * @param alt - what is read out in its place
   * @returns the element
   */
  element(
    type: string,
    parent: KitElement,
    attributes?: Readonly<Record<string, unknown>>,
    alt?: string,
  ): KitElement {
    const element = this.#kit.struct(type, alt === undefined ? {} : { alt: plainText(alt) });
    if (attributes) element.dictionary.data["A"] = attributes;
    parent.add(element);
    return element;
  }

  /**
   * Gives a note its name, under which the structure lists it.
   *
   * @param element - the note
   * @param id - a name of its own, in plain letters
   */
  nameNote(element: KitElement, id: string): void {
    element.dictionary.data["ID"] = stringObject(id);
    this.#notes.push({ id, element });
  }

  /**
   * Begins a stretch: what is written from here on belongs to an element.
   *
   * @param element - the element
   */
  mark(element: KitElement): void {
    if (this.#marked === element) return;
    this.unmark();
    this.#begin(element);
  }

  /**
   * Begins a stretch that is a link; stretches with the same target in a row are one link.
   *
   * @param parent - element around it
   * @param target - where it leads
   */
  markLink(parent: KitElement, target: Link): void {
    if (this.#link?.target === target) return;
    this.unmark();
    const outer = target.reference === true ? this.element("Reference", parent) : parent;
    const element = this.element("Link", outer);
    this.#begin(element);
    this.#link = { target, element };
  }

  /**
   * Makes a rectangle of the page lead where the open link leads.
   *
   * @param x - left edge [pt]
   * @param y - upper edge [pt]
   * @param width - width [pt]
   * @param height - height [pt]
   */
  linkArea(x: number, y: number, width: number, height: number): void {
    if (!this.#link) return;
    const { target, element } = this.#link;
    const options = { structParent: element, Contents: stringObject(plainText(target.says)) };
    if ("place" in target.to) this.#kit.goTo(x, y, width, height, target.to.place, options);
    else this.#kit.link(x, y, width, height, target.to.address, options);
  }

  /**
   * Draws what is not part of the text: running lines, frames, repeated headings.
   *
   * @param type - what it serves
   * @param draw - draws it
   */
  artifact(type: "Pagination" | "Layout", draw: () => void): void {
    this.unmark();
    this.#kit.markContent("Artifact", { type });
    draw();
    this.#pen.flush();
    this.#kit.endMarkedContent();
  }

  /** Ends the stretch that is open, as has to be done before a page ends. */
  unmark(): void {
    if (this.#marked) {
      this.#pen.flush();
      this.#kit.endMarkedContent();
    }
    this.#marked = undefined;
    // A link is written with the page it is closed on, so it may not stay open.
    this.#link?.element.end();
    this.#link = undefined;
  }

  /** Lists the notes by name. */
  finish(): void {
    if (this.#notes.length === 0) return;
    const names = this.#notes
      .toSorted((a, b) => (a.id < b.id ? -1 : 1))
      .flatMap(({ id, element }) => [stringObject(id), element.dictionary]);
    this.#kit.getStructTreeRoot().data["IDTree"] = { Names: names };
  }

  #begin(element: KitElement): void {
    element.add(this.#kit.markStructureContent(String(element.dictionary.data["S"])));
    this.#marked = element;
  }
}

// The library writes primitive strings as names and string objects as strings.
function stringObject(text: string): object {
  return Object(text) as object;
}
