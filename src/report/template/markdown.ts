/**
 * Markdown as templates may use it, with directives on lines of their own:
 *
 *     ::place ID                    blocks made by code
 *     ::page                        the next heading starts a page in print
 *     :::box TITLE … :::            a box; `:::caution TITLE` warns
 *     :::lead … :::                 paragraphs set larger; `:::small` smaller
 *     :::table ID CAPTION … :::     one Markdown table with its id and caption
 *     [^ID] and [^ID]: TEXT         a reference to a note, and the note
 */

import type { MarkdownIt, StateBlock, StateInline } from "markdown-it";
import createMarkdown from "markdown-it";
import { withoutLines } from "./marks.js";

/** Types of the tokens that our own rules make. */
export const OWN = {
  /** A directive: `info` holds the text behind the colons, `markup` the colons. */
  directive: "directive",
  /** A reference to a note: `info` holds its id. */
  noteRef: "note_ref",
  /** A note: `info` holds its id; an inline token follows. */
  note: "note",
} as const;

const DIRECTIVE = /^(:{2,})(.*)$/;
const NOTE = /^\[\^([\w-]+)\]:[ \t]*(.*)$/;
const NOTE_REF = /\[\^([\w-]+)\]/y;

/**
 * Sets up the reader: no HTML, no bare addresses made into links, no letters exchanged for others.
 *
 * @returns a Markdown reader that knows our directives
 */
export function templateMarkdown(): MarkdownIt {
  const reader = createMarkdown({ html: false, linkify: false, typographer: false });
  const opensBlock = { alt: ["paragraph", "reference", "blockquote", "list", "table"] };
  reader.block.ruler.before("table", OWN.directive, directive, opensBlock);
  reader.block.ruler.before("reference", OWN.note, note, opensBlock);
  reader.inline.ruler.before("link", OWN.noteRef, noteRef);
  // Addresses are judged by whoever walks the tokens; the reader's own list would only hide some.
  reader.validateLink = () => true;
  return reader;
}

function lineAt(state: StateBlock, line: number): string {
  const start = (state.bMarks[line] ?? 0) + (state.tShift[line] ?? 0);
  return state.src.slice(start, state.eMarks[line]).trimEnd();
}

function directive(state: StateBlock, line: number, _end: number, silent: boolean): boolean {
  const found = DIRECTIVE.exec(withoutLines(lineAt(state, line)));
  if (found === null) return false;
  if (silent) return true;
  const [, colons = "", info = ""] = found;
  const token = state.push(OWN.directive, "", 0);
  token.markup = colons;
  token.info = info.trim();
  token.map = [line, line + 1];
  state.line = line + 1;
  return true;
}

function note(state: StateBlock, line: number, _end: number, silent: boolean): boolean {
  const found = NOTE.exec(lineAt(state, line));
  if (found === null) return false;
  if (silent) return true;
  const [, id = "", text = ""] = found;
  const token = state.push(OWN.note, "", 0);
  token.info = id;
  token.map = [line, line + 1];
  const inline = state.push("inline", "", 0);
  inline.content = text;
  inline.map = [line, line + 1];
  inline.children = [];
  state.line = line + 1;
  return true;
}

function noteRef(state: StateInline, silent: boolean): boolean {
  NOTE_REF.lastIndex = state.pos;
  const found = NOTE_REF.exec(state.src);
  if (found === null) return false;
  if (!silent) state.push(OWN.noteRef, "", 0).info = found[1] ?? "";
  state.pos += found[0].length;
  return true;
}
