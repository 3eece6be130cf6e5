/**
 * Headings, lists and tables out of Markdown tokens.
 */

import type { Token } from "markdown-it";
import type { Cell, Run } from "../document.js";

/** What is needed to turn tokens into parts of blocks. */
export interface PartSource {
  /** Turns an inline token into runs. */
  readonly runs: (token: Token) => readonly Run[];
  /** Raises a fault at a token. */
  readonly fail: (complaint: string, token: Token) => never;
}

/**
 * Finds the token that closes another.
 *
 * @param tokens - all tokens
 * @param open - index of the token that opens
 * @returns index of the token that closes it
 */
export function closing(tokens: readonly Token[], open: number): number {
  const { type, level } = tokens[open]!;
  const wanted = type.replace(/_open$/, "_close");
  return tokens.findIndex(
    (token, index) => index > open && token.type === wanted && token.level === level,
  );
}

/**
 * Reads a heading: plain text, and its id in braces where links lead to it: `## Water {#water}`.
 *
 * @param inline - the heading's text
 * @param source - runs and the way to complain
 * @returns text and id; without braces the id is made of the text, and may be empty
 */
export function headingOf(
  inline: Token,
  source: PartSource,
): { readonly text: string; readonly id: string } {
  const words = source
    .runs(inline)
    .map((run) =>
      run.kind === "text" ? run.text : source.fail(`a heading is plain text`, inline),
    );
  const [, text = "", id] = /^(.*?)(?:\s*\{#([\w.-]+)\})?$/s.exec(words.join("")) ?? [];
  if (text === "") source.fail("a heading needs words", inline);
  return { text, id: id ?? slug(text) };
}

function slug(text: string): string {
  return text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}+/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}

/**
 * Reads the items of a list, one line of text each.
 *
 * @param tokens - tokens between the list's opening and its end
 * @param source - runs and the way to complain
 * @returns runs of each item
 */
export function itemsOf(tokens: readonly Token[], source: PartSource): readonly (readonly Run[])[] {
  const items: (readonly Run[])[] = [];
  let index = 0;
  while (index < tokens.length) {
    const open = tokens[index]!;
    const end = closing(tokens, index);
    const inside = tokens.slice(index + 1, end);
    const [paragraph, inline, close] = inside;
    if (inside.length !== 3 || paragraph?.type !== "paragraph_open" || !inline || !close) {
      return source.fail("an item of a list is one paragraph, without lists in it", open);
    }
    items.push(source.runs(inline));
    index = end + 1;
  }
  return items;
}

/**
 * Reads the rows of a table. A cell all in bold is a row heading or total.
 *
 * @param tokens - tokens between the table's opening and its end
 * @param source - runs and the way to complain
 * @returns cells of each row, the head first
 */
export function rowsOf(tokens: readonly Token[], source: PartSource): readonly (readonly Cell[])[] {
  const rows: Cell[][] = [];
  tokens.forEach((token, index) => {
    if (token.type === "tr_open") rows.push([]);
    if (token.type !== "th_open" && token.type !== "td_open") return;
    const runs = source.runs(tokens[index + 1]!);
    const strong =
      runs.length > 0 && runs.every((run) => run.kind === "text" && run.style === "bold");
    rows.at(-1)?.push({
      runs: strong ? runs.map(unstyled) : runs,
      ...(String(token.attrGet("style") ?? "").includes("right")
        ? { align: "right" as const }
        : {}),
      ...(strong ? { strong } : {}),
    });
  });
  return rows;
}

function unstyled(run: Run): Run {
  return run.kind === "text" ? { kind: "text", text: run.text } : run;
}
