/**
 * Where the numbers of each chapter and table come from, and how to ask for more: the last answer to
 * "says who". Figures that open have a trace of their own; this is for all others.
 */

import type { Block, Cell, Run } from "../document.js";
import { textCell } from "../figure-desk.js";
import { ORIGINS, type Origin } from "./origin-list.js";

/** Id of the table. */
const TABLE = "origins";

/**
 * The table before the report is there; {@link withOrigins} fills it.
 *
 * @returns a table without rows
 */
export function originTable(): Block {
  return {
    kind: "table",
    id: TABLE,
    caption:
      "Where numbers come from that do not open by themselves, and the command that shows more. All of it is worked out from the log, the plant file, the factors and the seed named at the foot of the page.",
    behind: true,
    head: ["In", "From", "Ask"].map((text) => textCell(text)),
    rows: [],
    widths: [2.4, 4.2, 2.6],
  };
}

/**
 * Fills the table of origins with a row for each origin and links to the chapters and tables that have it.
 *
 * @param blocks - blocks of the report
 * @returns the same blocks, with rows in the table of origins
 */
export function withOrigins(blocks: readonly Block[]): readonly Block[] {
  const places = new Map<Origin, Place[]>();
  for (const place of placesOf(blocks)) {
    const origin = originOf(place.id);
    if (origin !== undefined) places.set(origin, [...(places.get(origin) ?? []), place]);
  }
  const rows = [...places].map(([origin, of]) => row(of, origin));
  return blocks.map((block) =>
    block.kind === "table" && block.id === TABLE ? { ...block, rows } : block,
  );
}

/**
 * Origin of the numbers of a place.
 *
 * @param id - id of a heading or table
 * @returns where they come from; undefined when nobody has said
 */
export function originOf(id: string): Origin | undefined {
  return ORIGINS.find(({ at }) => at.test(id));
}

/** A heading or table with numbers under it. */
export interface Place {
  /** Its id. */
  readonly id: string;
  /** Its words. */
  readonly name: string;
}

/**
 * Headings and tables of a report that print numbers other than those that open.
 *
 * @param blocks - blocks of the report
 * @returns places in the order of reading, each once
 */
export function placesOf(blocks: readonly Block[]): readonly Place[] {
  const found = new Map<string, Place>();
  let here: Place = { id: "", name: "" };
  const note = (place: Place): void => {
    if (!found.has(place.id)) found.set(place.id, place);
  };
  const look = (block: Block): void => {
    switch (block.kind) {
      case "heading":
        here = { id: block.id, name: block.text };
        return;
      case "paragraph":
        if (holdsNumber(block.runs)) note(here);
        return;
      case "list":
        if (block.items.some(holdsNumber)) note(here);
        return;
      case "table":
        if (block.id !== TABLE && block.rows.flat().some(({ runs }) => holdsNumber(runs)))
          note({ id: block.id, name: block.caption });
        return;
      case "box":
        block.blocks.forEach(look);
        return;
      case "figure":
      case "strip":
      case "notes":
    }
  };
  blocks.forEach(look);
  return [...found.values()];
}

function holdsNumber(runs: readonly Run[]): boolean {
  return runs.some((run) => run.kind === "text" && /\d/.test(run.text));
}

function row(places: readonly Place[], { from, ask }: Origin): readonly Cell[] {
  return [
    {
      runs: places.flatMap(({ id, name }, index): readonly Run[] => [
        ...(index === 0 ? [] : [{ kind: "text" as const, text: "; " }]),
        { kind: "link", text: shortened(name), href: `#${id}` },
      ]),
    },
    textCell(from),
    ask === undefined
      ? textCell("–")
      : { runs: [{ kind: "text", text: `millrace ${ask}`, style: "code" }] },
  ];
}

// A caption goes on with its conditions after the first clause.
function shortened(name: string): string {
  return name.replace(/(?:[,;:] |\. |\.$|:$).*$/s, "");
}
