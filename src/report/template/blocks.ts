import type { Token } from "markdown-it";
import type { Block, Run } from "../document.js";
import type { Container } from "./containers.js";
import { closed, isContainer } from "./containers.js";
import { OWN } from "./markdown.js";
import type { Carried } from "./marks.js";
import { firstLine, plain } from "./marks.js";
import type { PartSource } from "./parts.js";
import { closing, headingOf, itemsOf, rowsOf } from "./parts.js";
import { runsOf } from "./runs.js";
import { TemplateError } from "./template-error.js";

/** A template as Markdown tokens, with what its marks and directives refer to. */
export interface TokenSource {
  /** Name of the template. */
  readonly name: string;
  /** Markdown with marks, from which the tokens were read. */
  readonly text: string;
  /** Values by the place that their marks name. */
  readonly carried: readonly Carried[];
  /** Blocks made by code, by the id under which `::place` finds them. */
  readonly placed: Readonly<Record<string, readonly Block[]>>;
}

/**
 * Turns Markdown tokens into blocks.
 *
 * @param tokens - tokens of the whole template
 * @param source - where they came from
 * @returns blocks in order
 * @throws TemplateError when a token, directive or id is unknown
 */
export function blocksOf(tokens: readonly Token[], source: TokenSource): readonly Block[] {
  const walk = new Walk(source, noteIds(tokens, source.placed));
  for (let index = 0; index < tokens.length; index += 1) index = walk.take(tokens, index);
  return walk.finish();
}

function noteIds(tokens: readonly Token[], placed: TokenSource["placed"]): ReadonlySet<string> {
  const inside = (blocks: readonly Block[]): readonly string[] =>
    blocks.flatMap((block) => {
      if (block.kind === "box") return inside(block.blocks);
      return block.kind === "notes" ? block.notes.map(({ id }) => id) : [];
    });
  return new Set([
    ...tokens.filter(({ type }) => type === OWN.note).map(({ info }) => info),
    ...inside(Object.values(placed).flat()),
  ]);
}

/** The way through the tokens: what is open, and what waits for the next block. */
class Walk {
  readonly #source: TokenSource;
  readonly #lines: readonly string[];
  readonly #parts: PartSource;
  readonly #blocks: Block[] = [];
  readonly #open: Container[] = [];
  readonly #ids = new Set<string>();
  #page = 0;

  constructor(source: TokenSource, notes: ReadonlySet<string>) {
    this.#source = source;
    this.#lines = source.text.split("\n");
    this.#parts = {
      fail: (complaint, token) => this.#fail(complaint, this.#lineOf(token)),
      runs: (token): readonly Run[] =>
        runsOf(token.children ?? [], {
          carried: source.carried,
          notes,
          fail: (complaint, line) => this.#fail(complaint, line ?? this.#lineOf(token)),
        }),
    };
  }

  /**
   * Takes the block that begins at a token.
   *
   * @param tokens - all tokens
   * @param index - index of the token
   * @returns index of the block's last token
   */
  take(tokens: readonly Token[], index: number): number {
    const token = tokens[index]!;
    const { fail, runs } = this.#parts;
    if (this.#page > 0 && token.type !== "heading_open") {
      fail("::page stands before a heading", token);
    }
    switch (token.type) {
      case OWN.directive:
        this.#direct(token);
        return index;
      case "heading_open":
        this.#head(token, tokens[index + 1]!);
        return index + 2;
      case "paragraph_open": {
        const text = runs(tokens[index + 1]!);
        if (text.length > 0) this.#add({ kind: "paragraph", runs: text });
        return index + 2;
      }
      case "bullet_list_open":
      case "ordered_list_open": {
        const end = closing(tokens, index);
        const items = itemsOf(tokens.slice(index + 1, end), this.#parts);
        this.#add({ kind: "list", ordered: token.type === "ordered_list_open", items });
        return end;
      }
      case "table_open": {
        if (this.#open.at(-1)?.name !== "table") {
          fail("a table stands between :::table ID CAPTION and :::", token);
        }
        const end = closing(tokens, index);
        const [head = [], ...rows] = rowsOf(tokens.slice(index + 1, end), this.#parts);
        this.#add({ kind: "table", id: "", caption: "", head, rows });
        return end;
      }
      case OWN.note: {
        const blocks = this.#open.at(-1)?.blocks ?? this.#blocks;
        const last = blocks.at(-1);
        const before = last?.kind === "notes" ? last.notes : [];
        if (last?.kind === "notes") blocks.pop();
        const note = { id: token.info, runs: runs(tokens[index + 1]!) };
        this.#add({ kind: "notes", notes: [...before, note] });
        return index + 1;
      }
      default: {
        const name = token.type.replace(/_open$/, "");
        return fail(`"${name}" cannot be printed in a report`, token);
      }
    }
  }

  /**
   * Ends the way.
   *
   * @returns all blocks
   */
  finish(): readonly Block[] {
    if (this.#page > 0) this.#fail("::page stands before a heading", this.#page);
    const open = this.#open.at(-1);
    if (open) this.#fail(`the :::${open.name} opened here is never closed`, open.line);
    return this.#blocks;
  }

  #add(block: Block): void {
    (this.#open.at(-1)?.blocks ?? this.#blocks).push(block);
  }

  #head(token: Token, inline: Token): void {
    const level = Number(token.tag.slice(1));
    if (!token.markup.startsWith("#") || (level !== 1 && level !== 2 && level !== 3)) {
      return this.#parts.fail("a heading begins with one to three #", token);
    }
    const { text, id } = headingOf(inline, this.#parts);
    const newPage = this.#page > 0 ? { newPage: true } : {};
    this.#add({ kind: "heading", level, text, id: this.#unused(id), ...newPage });
    this.#page = 0;
  }

  #unused(id: string): string {
    const wanted = id === "" ? "section" : id;
    let free = wanted;
    for (let count = 2; this.#ids.has(free); count += 1) free = `${wanted}-${count}`;
    this.#ids.add(free);
    return free;
  }

  #direct(token: Token): void {
    const line = this.#lineOf(token);
    const info = plain(token.info, this.#source.carried);
    const [, word = "", argument = ""] = /^(\S*)\s*(.*)$/.exec(info) ?? [];
    const fail = (complaint: string): never => this.#fail(complaint, line);
    if (token.level > 0) fail("a directive stands on a line of its own, outside lists");
    if (token.markup === ":::" && info === "") {
      const container = this.#open.pop() ?? fail("there is no open ::: to close");
      const opened = (complaint: string): never => this.#fail(complaint, container.line);
      for (const block of closed(container, opened)) this.#add(block);
    } else if (token.markup === ":::" && isContainer(word)) {
      this.#open.push({ name: word, argument, line, blocks: [] });
    } else if (token.markup === "::" && info === "page") {
      this.#page = line;
    } else if (token.markup === "::" && word === "place") {
      // Only what the template itself names: a value may not choose what is shown.
      const { placed } = this.#source;
      const found =
        info === token.info && Object.hasOwn(placed, argument) ? placed[argument] : undefined;
      const known = Object.keys(placed).sort().join(", ") || "nothing";
      for (const block of found ?? fail(`there is no "${argument}" to place; known: ${known}`)) {
        this.#add(block);
      }
    } else {
      fail(`unknown directive "${token.markup}${info}"`);
    }
  }

  // The line whose number the token carries, else the one after the last that carries one.
  #lineOf(token: Token): number {
    const [start, end] = token.map ?? [0, 0];
    const own = firstLine(this.#lines.slice(start, Math.max(end, start + 1)).join("\n"));
    if (own !== undefined) return own;
    const before = this.#lines.slice(0, start).findLast((line) => firstLine(line) !== undefined);
    return before === undefined ? 1 : (firstLine(before) ?? 0) + 1;
  }

  #fail(complaint: string, line: number): never {
    throw new TemplateError(this.#source.name, line, complaint);
  }
}
