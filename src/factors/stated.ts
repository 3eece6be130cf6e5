/**
 * What a file of factors states, with shared provenance filled in and tables laid out row by row.
 */

import type { Problem } from "../problems/problem.js";
import type { FactorText, ProvenanceText, SpreadText } from "./schema.js";
import { described, rowFactors } from "./table-rows.js";
import { type KeyPath, problemAt, type YamlText } from "./yaml-text.js";

/** One vintage as it is stated; what is undefined stands nowhere. */
export interface StatedValue {
  /** Where it stands in its file. */
  readonly path: KeyPath;
  /** Whether it is a row, whose numbers have no keys of their own. */
  readonly row: boolean;
  /** Central value. */
  readonly value: number;
  /** Spread as it is written. */
  readonly spread: SpreadText | undefined;
  /** Provenance, the nearest statement of each key. */
  readonly provenance: ProvenanceText;
}

/** One factor as it is stated. */
export interface StatedFactor {
  /** Id. */
  readonly id: string;
  /** Where it stands in its file. */
  readonly path: KeyPath;
  /** What it is. */
  readonly words: string | undefined;
  /** Unit. */
  readonly unit: string;
  /** What it is counted on. */
  readonly basis: string | undefined;
  /** Plausible values. */
  readonly plausible: readonly [number, number] | undefined;
  /** Vintages in the order of the file. */
  readonly values: readonly StatedValue[];
}

/** Factors of a file, and what is wrong with its rows. */
export interface Stated {
  /** Factors in the order of the file. */
  readonly factors: readonly StatedFactor[];
  /** Faults of rows: `table-columns`, `table-row`. */
  readonly problems: readonly Problem[];
}

/**
 * Lays out what a file states. The nearest statement of a key of provenance holds: value or row, then
 * table, then file.
 *
 * @param text - the file, let through by the schema
 * @param yaml - the same file, for lines
 * @returns its factors
 */
export function statedFactors(text: FactorText, yaml: YamlText): Stated {
  const problems: Problem[] = [];
  const factors: StatedFactor[] = Object.entries(text.factors ?? {}).map(([id, entry]) => {
    const path = ["factors", id];
    return {
      ...described(id, path, entry),
      values: entry.values.map(({ value, spread, ...own }, index) => ({
        path: [...path, "values", index],
        row: false,
        value,
        spread,
        provenance: { ...text.shared, ...own },
      })),
    };
  });
  for (const [index, table] of (text.tables ?? []).entries()) {
    const path = ["tables", index];
    factors.push(
      ...rowFactors(table, path, text.shared ?? {}, (at, fault) => {
        problems.push(problemAt(yaml, at, fault));
      }),
    );
  }
  return { factors, problems };
}
