/**
 * Tables of factors that differ by name and numbers only.
 */

import type { COLUMNS, ProvenanceText, TableText } from "./schema.js";
import type { StatedFactor, StatedValue } from "./stated.js";
import type { Fault, KeyPath } from "./yaml-text.js";

type Column = (typeof COLUMNS)[number];

type Complain = (at: KeyPath, fault: Fault) => void;

/**
 * Lays out a table: rows of one name are the vintages of one factor.
 *
 * @param table - the table, let through by the schema
 * @param path - where it stands in its file
 * @param shared - provenance given for the whole file
 * @param complain - told of every fault: `table-columns`, `table-row`
 * @returns factors in the order of their first rows
 */
export function rowFactors(
  table: TableText,
  path: KeyPath,
  shared: ProvenanceText,
  complain: Complain,
): StatedFactor[] {
  const { columns } = table;
  const absent = (["name", "value"] as const).find((column) => !columns.includes(column));
  if (absent !== undefined || new Set(columns).size < columns.length) {
    complain([...path, "columns"], COLUMN_FAULT);
    return [];
  }
  const byName = new Map<string, StatedFactor & { readonly values: StatedValue[] }>();
  for (const [index, cells] of table.rows.entries()) {
    const at = [...path, "rows", index];
    const row = readRow(columns, cells, at, complain);
    const name = row?.name;
    if (row === undefined || name === undefined) continue;
    const value = rowValue(table, row, at, shared);
    const factor = byName.get(name);
    if (factor !== undefined) factor.values.push(value);
    else {
      const words = table.words?.replaceAll("*", row.words ?? name);
      byName.set(name, {
        ...described(table.id.replaceAll("*", name), at, { ...table, words }),
        values: [value],
      });
    }
  }
  return [...byName.values()];
}

/** What a text says of a factor besides its values. */
interface Described {
  readonly words?: string | undefined;
  readonly unit: string;
  readonly basis?: string | undefined;
  readonly plausible?: readonly number[] | undefined;
}

/**
 * A factor without its values.
 *
 * @param id - its id
 * @param path - where it stands
 * @param text - what is said of it
 * @returns its description
 */
export function described(
  id: string,
  path: KeyPath,
  text: Described,
): Omit<StatedFactor, "values"> {
  const [low, high] = text.plausible ?? [];
  return {
    id,
    path,
    words: text.words,
    unit: text.unit,
    basis: text.basis,
    plausible: low === undefined || high === undefined ? undefined : [low, high],
  };
}

interface Row {
  readonly name?: string;
  readonly words?: string;
  readonly from?: string;
  readonly year?: number;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly page?: string;
  readonly note?: string;
}

const CELLS: Readonly<Record<Column, { readonly is: RegExp; readonly words: string }>> = {
  name: { is: /^[A-Za-z0-9-]+$/, words: "a name of letters, digits and hyphens" },
  words: { is: /./, words: "a text" },
  from: { is: /^\d{4}-\d{2}-\d{2}$/, words: "a day such as 2026-11-25" },
  year: { is: /^\d{4}$/, words: "a year such as 2026" },
  value: { is: /^/, words: "a number" },
  low: { is: /^/, words: "a number" },
  high: { is: /^/, words: "a number" },
  page: { is: /./, words: "a text" },
  note: { is: /./, words: "a text" },
};

const NUMBERS: readonly Column[] = ["value", "low", "high", "year"];

function readRow(
  columns: readonly Column[],
  cells: readonly (string | number)[],
  at: KeyPath,
  complain: Complain,
): Row | undefined {
  const row: Partial<Record<Column, string | number>> = {};
  const faults: [where: KeyPath, value: string, expected: string][] = [];
  if (cells.length > columns.length) {
    faults.push([at, `${cells.length} cells`, `${columns.length}, one for each column`]);
  }
  for (const [index, column] of columns.entries()) {
    const cell = cells[index];
    if (cell === undefined || cell === "") continue;
    const { is, words } = CELLS[column];
    const kind = NUMBERS.includes(column) ? "number" : "string";
    if (typeof cell === kind && is.test(String(cell))) row[column] = cell;
    else faults.push([[...at, index], String(cell), `${words} under ${column}`]);
  }
  if (faults.length === 0) {
    for (const column of ["name", "value"] as const) {
      if (row[column] === undefined) faults.push([at, "no cell", `a cell under ${column}`]);
    }
  }
  for (const [where, value, expected] of faults) {
    complain(where, { code: "table-row", value, expected, remedy: "Correct the row." });
  }
  return faults.length === 0 ? (row as Row) : undefined;
}

function rowValue(table: TableText, row: Row, path: KeyPath, shared: ProvenanceText): StatedValue {
  const { from, entered, source, page, year, region, quality, note } = table;
  const own: ProvenanceText = { from, entered, source, page, year, region, quality, note };
  // A year alone says from when on a value holds: its first day.
  const start = row.from ?? (row.year === undefined ? undefined : `${row.year}-01-01`);
  const merged = merge(shared, own, {
    from: start,
    page: row.page,
    year: row.year,
    note: row.note,
  });
  const place = merged.region?.replaceAll("*", row.words ?? row.name ?? "");
  const ends =
    row.low === undefined && row.high === undefined ? {} : { low: row.low, high: row.high };
  return {
    path,
    row: true,
    value: row.value ?? Number.NaN,
    spread: table.spread === undefined ? undefined : { ...table.spread, ...ends },
    provenance: merge(merged, { region: place }),
  };
}

// Later statements win, but only where they say something.
function merge(...statements: readonly ProvenanceText[]): ProvenanceText {
  return Object.fromEntries(
    statements.flatMap((statement) =>
      Object.entries(statement).filter(([, said]) => said !== undefined),
    ),
  );
}

const COLUMN_FAULT: Fault = {
  code: "table-columns",
  expected: "name and value among the columns, each column once",
  remedy: "Correct the headings.",
};
