import { swingsOf } from "../../../src/account/swings.js";
import { composeDossier } from "../../../src/report/dossier/dossier.js";
import type { DossierInput } from "../../../src/report/dossier/input.js";
import { usesOf } from "../../../src/report/dossier/uses.js";
import type { Block, Cell, ReportDocument } from "../../../src/report/document.js";
import { textOf } from "../../../src/report/html/places.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { AS_OF, inputOf } from "../compose/small-mill.js";

const { program } = inputOf().account;

/** What a dossier on all shipped factors, in a mill of two routes, is made of. */
export const WHOLE: DossierInput = {
  factors: SHIPPED,
  shown: [...SHIPPED.factors.values()],
  uses: usesOf(program),
  indicators: program.indicators,
  swings: swingsOf(program, ["water", "cod", "energy", "co2-location"]),
  house: "Two Route Mill (invented)",
  date: AS_OF,
  version: "0.1.0",
};

/** A table of a document. */
export type Table = Extract<Block, { readonly kind: "table" }>;

/**
 * A dossier with some of its input changed.
 *
 * @param change - what is otherwise
 * @returns the document
 */
export function dossierWith(change: Partial<DossierInput> = {}): ReportDocument {
  return composeDossier({ ...WHOLE, ...change });
}

/**
 * Finds a table.
 *
 * @param blocks - blocks of a document
 * @param id - its id
 * @returns cells of each row as text; none when there is no such table
 */
export function rowsOf(blocks: readonly Block[], id: string): readonly (readonly string[])[] {
  const table = blocks.find((block): block is Table => block.kind === "table" && block.id === id);
  return (table?.rows ?? []).map((row) => row.map(({ runs }: Cell) => textOf(runs)));
}
