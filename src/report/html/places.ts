import type { Block, ReportDocument, Run } from "../document.js";

/** How a note is referred to. */
export interface NoteMark {
  /** Number printed, from 1. */
  readonly number: number;
  /** Anchor of the note. */
  readonly anchor: string;
  /** Anchor of the first mark that refers to it. */
  readonly back: string;
}

/** A place of the text in which a figure stands. */
export interface Mention {
  /** Chapter or table, by its heading or caption. */
  readonly part: string;
  /** Anchor of the chapter or table. */
  readonly anchor: string;
  /** Where in it: row and column, or the words around the figure. */
  readonly spot: string;
}

/** A figure that the text shows. */
export interface Shown {
  /** Anchor of its trace. */
  readonly anchor: string;
  /** Where it stands, each spot once, in order. */
  readonly mentions: readonly Mention[];
}

/** Every place in the page that something leads to. */
export interface Places {
  /** Anchors by the block that stands there. */
  readonly anchors: ReadonlyMap<Block, string>;
  /** Anchors by block id; of two equal ids the first counts. */
  readonly byId: ReadonlyMap<string, string>;
  /** Names of pictures by the block that holds them; ids inside a picture begin with its name. */
  readonly pictures: ReadonlyMap<Block, string>;
  /** Notes by id. */
  readonly notes: ReadonlyMap<string, NoteMark>;
  /** Figures by id, in the order in which they are first shown. */
  readonly shown: ReadonlyMap<string, Shown>;
}

/** Anchors of the page's own parts. */
export const PAGE_ANCHORS = {
  text: "page-text",
  contents: "page-contents",
  numbers: "page-numbers",
} as const;

/**
 * Names every place of the page that a link may lead to, numbers the notes, and notes where each
 * figure stands.
 *
 * @param document - the report
 * @returns anchors without blanks or signs, no two alike
 */
export function findPlaces(document: ReportDocument): Places {
  const used = new Set<string>(Object.values(PAGE_ANCHORS));
  const unused = (wanted: string): string => {
    const plain = wanted.replace(/[^A-Za-z0-9_.-]+/g, "_") || "_";
    let free = plain;
    for (let count = 2; used.has(free); count += 1) free = `${plain}-${count}`;
    used.add(free);
    return free;
  };
  const blocks = flat(document.blocks);
  const anchors = new Map<Block, string>();
  const byId = new Map<string, string>();
  for (const block of blocks) {
    if (!("id" in block)) continue;
    const anchor = unused(block.id);
    anchors.set(block, anchor);
    if (!byId.has(block.id)) byId.set(block.id, anchor);
  }
  const pictures = new Map<Block, string>();
  for (const block of blocks) {
    if (block.kind === "figure") pictures.set(block, unused(`picture-${pictures.size + 1}`));
  }
  const notes = new Map<string, NoteMark>();
  for (const { id } of blocks.flatMap((block) => (block.kind === "notes" ? block.notes : []))) {
    if (notes.has(id)) continue;
    const number = notes.size + 1;
    notes.set(id, { number, anchor: unused(`note-${id}`), back: unused(`ref-${id}`) });
  }
  const shown = new Map<string, { anchor: string; mentions: Mention[] }>();
  for (const { figure, mention } of mentions(document, blocks, anchors)) {
    const entry = shown.get(figure) ?? { anchor: unused(`fig-${figure}`), mentions: [] };
    shown.set(figure, entry);
    if (!entry.mentions.some((known) => isSame(known, mention))) entry.mentions.push(mention);
  }
  return { anchors, byId, pictures, notes, shown };
}

function isSame(one: Mention, other: Mention): boolean {
  return one.anchor === other.anchor && one.spot === other.spot;
}

function flat(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) =>
    block.kind === "box" ? [block, ...flat(block.blocks)] : [block],
  );
}

interface Found {
  readonly figure: string;
  readonly mention: Mention;
}

function mentions(
  document: ReportDocument,
  blocks: readonly Block[],
  anchors: ReadonlyMap<Block, string>,
): readonly Found[] {
  let here = { part: document.title, anchor: PAGE_ANCHORS.text as string };
  return blocks.flatMap((block): readonly Found[] => {
    switch (block.kind) {
      case "heading":
        here = { part: block.text, anchor: anchors.get(block) ?? here.anchor };
        return [];
      case "paragraph":
        return inText(block.runs, here);
      case "list":
        return block.items.flatMap((item) => inText(item, here));
      case "notes":
        return block.notes.flatMap(({ runs }) => inText(runs, here));
      case "table":
        return inTable(block, { part: block.caption, anchor: anchors.get(block) ?? here.anchor });
      case "figure":
      case "strip":
      case "box":
        return [];
    }
  });
}

function inTable(
  table: Extract<Block, { kind: "table" }>,
  part: Pick<Mention, "part" | "anchor">,
): readonly Found[] {
  return [table.head, ...table.rows].flatMap((row) =>
    row.flatMap((cell, column) => {
      const heads = [row[0], table.head[column]].filter((head) => head !== cell);
      const names = heads.map((head) => textOf(head?.runs ?? [])).filter((name) => name !== "");
      const mention = { ...part, spot: names.join(" \u00b7 ") };
      return cell.runs.flatMap((run) =>
        run.kind === "figure-ref" ? [{ figure: run.figure, mention }] : [],
      );
    }),
  );
}

/** Most letters shown on either side of a figure. */
const AROUND = 24;

function inText(runs: readonly Run[], part: Pick<Mention, "part" | "anchor">): readonly Found[] {
  return runs.flatMap((run, index) => {
    if (run.kind !== "figure-ref") return [];
    const before = textOf(runs.slice(0, index));
    const after = textOf(runs.slice(index + 1));
    const start =
      before.length > AROUND ? before.slice(-AROUND).replace(/^\S*\s/, "\u2026 ") : before;
    const end = after.length > AROUND ? after.slice(0, AROUND).replace(/\s\S*$/, " \u2026") : after;
    return [{ figure: run.figure, mention: { ...part, spot: start + run.text + end } }];
  });
}

/**
 * Reads runs as plain text.
 *
 * @param runs - text as the report holds it
 * @returns its letters without marks of notes
 */
export function textOf(runs: readonly Run[]): string {
  return runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");
}
