import type { Colour } from "../sheet.js";
import { COLOURS } from "../sheet.js";
import { refused } from "./attributes.js";

/** What an area or line is painted with: nothing, a colour, or a pattern by its name. */
export type Ink = "none" | Colour | { readonly pattern: string };

/**
 * Reads what an area or line is painted with.
 *
 * @param name - attribute
 * @param value - as written
 * @param current - meaning of `currentColor`
 * @returns nothing, a colour or a pattern
 * @throws Error when it is something else
 */
export function readInk(name: string, value: string, current: Colour): Ink {
  const text = value.trim();
  if (text === "none" || text === "transparent") return "none";
  const reference = /^url\(\s*["']?#([^"')]+)["']?\s*\)$/.exec(text)?.[1];
  return reference === undefined ? readColour(name, text, current) : { pattern: reference };
}

/**
 * Reads an opaque colour.
 *
 * @param name - attribute
 * @param value - as written
 * @param current - meaning of `currentColor`
 * @returns six hexadecimal digits
 * @throws Error when it is something else
 */
export function readColour(name: string, value: string, current: Colour): Colour {
  const text = value.trim().toLowerCase();
  if (/^#[0-9a-f]{6}$/.test(text)) return text as Colour;
  if (/^#[0-9a-f]{3}$/.test(text)) return `#${text.slice(1).replace(/./g, "$&$&")}`;
  if (text === "currentcolor") return current;
  if (text === "white") return COLOURS.white;
  if (text === "black") return "#000000";
  const parts = /^rgb\(\s*(\d+)\s*[,\s]\s*(\d+)\s*[,\s]\s*(\d+)\s*\)$/
    .exec(text)
    ?.slice(1)
    .map(Number);
  if (parts?.every((part) => part <= 255)) {
    return `#${parts.map((part) => part.toString(16).padStart(2, "0")).join("")}`;
  }
  throw refused(
    name,
    value,
    "six hexadecimal digits, rgb(r, g, b), white, black, none or url(#id)",
  );
}
