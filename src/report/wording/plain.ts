/**
 * What a reader sees of a text, of Markdown or of HTML, each sign with its place in the file.
 */

import { asItStands, type Placed } from "./fold.js";

/** How a file is written. */
export type Markup = "text" | "markdown" | "html";

/** Elements inside a line; all others part what stands before from what stands behind. */
const INLINE =
  /^<\/?(?:a|abbr|b|bdi|bdo|cite|code|del|dfn|em|font|i|ins|kbd|mark|q|s|samp|small|span|strong|sub|sup|u|var|wbr)\b/i;

const SHOWN =
  /\b(?:alt|title|content|aria-label|placeholder|label)\s*=\s*(?:"([^"]*)"|'([^']*)')/gi;

const TAGS = /<!--[\s\S]*?(?:-->|$)|<(script|style)\b[\s\S]*?(?:<\/\1\s*>|$)|<\/?[a-z][^<>]*>/gi;

const ENTITIES = /&(?:#\d+|#x[\da-f]+|[a-z]+\d*);/gi;

const MARKDOWN =
  /\{\{[\s\S]*?\}\}|\{%[\s\S]*?%\}|\]\([^()\s]*(?:\s+"[^"]*")?\)|\\(?=[\p{P}\p{S}])|[*`~[\]]+|(?<![\p{L}\p{N}])_+(?=\S)|(?<=\S)_+(?![\p{L}\p{N}])|^[ \t]*(?:#{1,6}|>+|\|)[ \t]/gmu;

const NAMED: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
  nbsp: "\u00a0",
  shy: "\u00ad",
  ndash: "\u2013",
  mdash: "\u2014",
  rsquo: "\u2019",
  lsquo: "\u2018",
  szlig: "ß",
  inodot: "ı",
  imath: "ı",
  aelig: "æ",
  oelig: "œ",
  zwnj: "\u200c",
  zwj: "\u200d",
  hyphen: "-",
};

/**
 * Takes the marks out of a text.
 *
 * @param source - the file
 * @param markup - how it is written
 * @returns what a reader sees; values that a template fills in stand as the figure 0
 */
export function plainText(source: string, markup: Markup): Placed {
  const whole = asItStands(source);
  if (markup === "text") return whole;
  // Entities come second: attributes that are shown hold them too.
  const html = replaced(replaced(whole, TAGS, tagPiece), ENTITIES, entity);
  return markup === "html" ? html : replaced(html, MARKDOWN, (found) => markdownPiece(found));
}

/** What stands in place of a mark: a text, or pieces of the mark itself. */
type Piece = string | readonly { readonly text: string; readonly at: number }[];

function tagPiece(found: string, at: number): Piece {
  if (found.startsWith("<!--") || /^<(?:script|style)\b/i.test(found)) return "\n\n";
  const seen = [...found.matchAll(SHOWN)].flatMap((match) => {
    const text = match[1] ?? match[2] ?? "";
    return [
      { text: "\n\n", at: at + match.index },
      { text, at: at + match.index + match[0].length - 1 - text.length },
      { text: "\n\n", at: at + match.index },
    ];
  });
  if (seen.length > 0) return seen;
  return INLINE.test(found) ? "" : "\n\n";
}

function markdownPiece(found: string): Piece {
  if (found.startsWith("{{")) return "0";
  return /^[ \t]*(?:#|>|\|)/.test(found) ? " " : "";
}

function entity(found: string): string {
  const name = found.slice(1, -1);
  const code = /^#x/i.test(name)
    ? Number.parseInt(name.slice(2), 16)
    : name.startsWith("#")
      ? Number(name.slice(1))
      : NaN;
  if (code > 0 && code <= 0x10ffff) return String.fromCodePoint(code);
  const accented = /^([a-z])(?:acute|grave|circ|uml|cedil|tilde|ring|caron|breve)$/i.exec(name);
  return accented?.[1] ?? NAMED[name.toLowerCase()] ?? " ";
}

function replaced(
  placed: Placed,
  marks: RegExp,
  pieceOf: (found: string, at: number) => Piece,
): Placed {
  const { text } = placed;
  let made = "";
  const from: number[] = [];
  const to: number[] = [];
  const copy = (first: number, end: number): void => {
    made += text.slice(first, end);
    for (let i = first; i < end; i++) {
      from.push(placed.from[i] ?? 0);
      to.push(placed.to[i] ?? 0);
    }
  };
  const put = (units: string, first: number, last: number): void => {
    made += units;
    from.push(...Array<number>(units.length).fill(placed.from[first] ?? 0));
    to.push(...Array<number>(units.length).fill(placed.to[last] ?? 0));
  };
  let done = 0;
  for (const { 0: found, index } of text.matchAll(marks)) {
    copy(done, index);
    done = index + found.length;
    const piece = pieceOf(found, index);
    if (typeof piece === "string") put(piece, index, done - 1);
    else
      for (const { text: part, at } of piece) {
        if (text.startsWith(part, at)) copy(at, at + part.length);
        else put(part, at, at);
      }
  }
  copy(done, text.length);
  return { text: made, from, to };
}
