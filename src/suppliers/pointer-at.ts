/**
 * Where in JSON a character stands.
 */

import { pointerPart } from "./canonical.js";

interface Open {
  /** Keys so far; a list counts. */
  key: string | number;
  readonly isList: boolean;
}

/**
 * Place of a character in JSON, as far as the text can be read.
 *
 * @param text - JSON, whole or broken
 * @param at - place of the character
 * @returns JSON pointer of the value it belongs to; `/` for the whole
 */
export function pointerAt(text: string, at: number): string {
  const open: Open[] = [];
  for (let i = 0; i < Math.min(at, text.length); i++) {
    const sign = text[i];
    const top = open.at(-1);
    if (sign === "{" || sign === "[")
      open.push({ key: sign === "[" ? 0 : "", isList: sign === "[" });
    else if (sign === "}" || sign === "]") open.pop();
    else if (sign === "," && top?.isList === true) top.key = Number(top.key) + 1;
    else if (sign === '"') {
      let end = i + 1;
      while (end < text.length && text[end] !== '"') end += text[end] === "\\" ? 2 : 1;
      if (top?.isList === false && /^\s*:/.test(text.slice(end + 1, end + 40)))
        top.key = text.slice(i + 1, end);
      i = end;
    }
  }
  const parts = open.map(({ key }) => String(key)).filter((key) => key !== "");
  return parts.length === 0 ? "/" : parts.map((part) => `/${pointerPart(part)}`).join("");
}
