/**
 * Pictures as text, to stand within a page.
 */

import type { Drawing, DrawingNode } from "./drawing.js";

/** What is said of a picture beside what is drawn. */
export interface SvgWords {
  /** Name within the page: a letter, then letters, digits and hyphens; no two pictures share one. */
  readonly id: string;
  /** Its title. */
  readonly title: string;
  /** What it shows, for those who do not see it; may be empty. */
  readonly description: string;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
};

/**
 * Writes a picture as an SVG element that needs nothing from outside: no style, no script, no link.
 *
 * @param drawing - the picture
 * @param words - its name, title and description
 * @returns the element; names in it start with that of the picture, so that several share a page
 * @throws Error when the name is not one, or an element or attribute has a name that SVG cannot have
 */
export function svgText(drawing: Drawing, words: SvgWords): string {
  const { id, title, description } = words;
  if (!/^[A-Za-z][A-Za-z0-9-]*$/.test(id)) {
    throw new Error(
      `a picture has the name "${id}"; expected a letter, then letters, digits and hyphens`,
    );
  }
  const said =
    `<title id="${id}-title">${escaped(title)}</title>` +
    (description === "" ? "" : `<desc id="${id}-desc">${escaped(description)}</desc>`);
  const labels = `${id}-title${description === "" ? "" : ` ${id}-desc`}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${drawing.width} ${drawing.height}"` +
    ` role="img" aria-labelledby="${labels}">` +
    said +
    drawing.children.map((child) => nodeText(child, id)).join("") +
    "</svg>"
  );
}

function nodeText(node: DrawingNode, id: string): string {
  if (typeof node === "string") return escaped(node);
  const { tag, attributes, children } = node;
  const written = Object.entries(attributes).map(
    ([name, value]) => ` ${checked(name)}="${escaped(ownName(name, value, id))}"`,
  );
  const start = `<${checked(tag)}${written.join("")}`;
  if (children.length === 0) return `${start}/>`;
  return `${start}>${children.map((child) => nodeText(child, id)).join("")}</${tag}>`;
}

function ownName(name: string, value: string, id: string): string {
  return name === "id" ? `${id}-${value}` : value.replace(/^url\(#/, `url(#${id}-`);
}

function checked(name: string): string {
  if (/^[A-Za-z][A-Za-z0-9-]*$/.test(name) && name !== "style" && !name.startsWith("on")) {
    return name;
  }
  throw new Error(`a picture has "${name}"; expected the name of a plain element or attribute`);
}

// Characters that no XML text may hold would make the whole page unreadable.
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, "\ufffd")
    .replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
}
