import type { Block, ReportDocument } from "../document.js";
import type { Paper } from "./paper.js";
import type { Pen } from "./pen.js";
import type { Tally } from "./printable.js";
import type { Tree } from "./tree.js";

/** A block of one kind. */
export type BlockOf<Kind extends Block["kind"]> = Extract<Block, { readonly kind: Kind }>;

/** Words of the page that no block brings along. */
export interface PdfWords {
  /** Title of a box that warns. */
  readonly caution: string;
  /** Title of the list of chapters. */
  readonly contents: string;
  /** Names of the four provenances. */
  readonly provenance: {
    /** From a lot reading or a meter. */
    readonly measured: string;
    /** From a meter shared between lots. */
    readonly allocated: string;
    /** Worked out with the mill's own settings. */
    readonly modelled: string;
    /** Worked out with shipped defaults. */
    readonly default: string;
  };
}

/** English words. */
export const ENGLISH: PdfWords = {
  caution: "Caution",
  contents: "Contents",
  provenance: {
    measured: "measured",
    allocated: "allocated",
    modelled: "modelled",
    default: "default",
  },
};

/** What every block needs at hand when it is set. */
export interface Desk {
  /** Pages, places and bookmarks. */
  readonly paper: Paper;
  /** Faces, letters and lines. */
  readonly pen: Pen;
  /** Structure of the text. */
  readonly tree: Tree;
  /** Words that no block brings along. */
  readonly words: PdfWords;
  /** Height of the column on an empty page. [pt] */
  readonly height: number;
  /** Characters that could not be set. */
  readonly replaced: Tally;
  /** Links and references that lead nowhere or may not be followed, as written. */
  readonly dead: Set<string>;
  /** Names of places in the file by the id of a block. */
  readonly places: ReadonlyMap<string, string>;
  /** Notes by id. */
  readonly notes: ReadonlyMap<string, NoteMark>;
  /** Notes whose mark has already been set once. */
  readonly marked: Set<string>;
}

/** How a note is referred to. */
export interface NoteMark {
  /** Number printed, from 1. */
  readonly number: number;
  /** Place of the note. */
  readonly place: string;
  /** Place of the first mark that refers to it. */
  readonly back: string;
}

/**
 * Numbers the notes and names every place that a link may lead to. Names are our own and of equal
 * length, since the file must list them in the order of their bytes.
 *
 * @param document - the report
 * @returns places by block id, notes by note id; the first of two equal ids counts
 */
export function findPlaces(document: ReportDocument): Pick<Desk, "places" | "notes"> {
  const places = new Map<string, string>();
  const notes = new Map<string, NoteMark>();
  let count = 0;
  const name = (): string => `p${String((count += 1)).padStart(6, "0")}`;
  for (const block of everyBlock(document.blocks)) {
    if ("id" in block && !places.has(block.id)) places.set(block.id, name());
    if (block.kind !== "notes") continue;
    for (const { id } of block.notes) {
      if (!notes.has(id)) notes.set(id, { number: notes.size + 1, place: name(), back: name() });
    }
  }
  return { places, notes };
}

function everyBlock(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) =>
    block.kind === "box" ? [block, ...everyBlock(block.blocks)] : [block],
  );
}
