/**
 * The log's own columns: what each holds, in which unit and range. The one table from which headings are
 * matched, cells are decoded and messages are made.
 */

import type { Target } from "../units/unit-table.js";

/** How a cell is read. */
export type ColumnKind = "text" | "number" | "date" | "fibre" | "site" | "route" | "kind";

/** A column. */
export interface Column {
  /** Our heading. */
  readonly name: string;
  /** How its cells are read. */
  readonly kind: ColumnKind;
  /** Whether a log without it is refused. */
  readonly required: boolean;
  /** What it holds, in plain words. */
  readonly words: string;
  /** Unit of its numbers as logged. */
  readonly unit?: string;
  /** Unit they are converted to when a mapping gives another one. */
  readonly target?: Target;
  /** From the logged unit to the unit of a lot. */
  readonly scale?: number;
  /** Range of its numbers in the logged unit, ends included. */
  readonly range?: readonly [number, number];
  /** Whether the lower end itself is refused. */
  readonly above?: boolean;
  /** Step its numbers come in. */
  readonly step?: number;
  /**
   * Whether it is a reading that the model does without. A limit such as `<10` then leaves the reading out and
   * keeps the row; elsewhere the row is set aside.
   */
  readonly reading?: boolean;
}

const text = (name: string, words: string, required = false): Column => ({
  name,
  kind: "text",
  required,
  words,
});

const number = (
  name: string,
  words: string,
  unit: string,
  range: readonly [number, number],
  more: Partial<Column> = {},
): Column => ({ name, kind: "number", required: false, words, unit, range, ...more });

/** All columns, in the order of our own logs. */
export const COLUMNS: readonly Column[] = [
  text("lot", "name of the lot", true),
  { name: "date", kind: "date", required: true, words: "day it was printed" },
  { name: "site", kind: "site", required: false, words: "site" },
  text("client", "client"),
  text("order", "order"),
  text("fabric", "fabric as the mill calls it"),
  { name: "fibre", kind: "fibre", required: true, words: "fibres and shares" },
  number("gsm", "mass per area", "g/m²", [10, 1500], { required: true, target: "g/m2" }),
  number("width_m", "width of the cloth", "m", [0.2, 5.5], { required: true, target: "m" }),
  number("length_m", "length of the lot", "m", [0, 200000], {
    required: true,
    target: "m",
    above: true,
  }),
  number("rejected_m", "length not of first quality", "m", [0, 200000], { target: "m" }),
  { name: "route", kind: "route", required: true, words: "route of the plant file" },
  { name: "kind", kind: "kind", required: false, words: "production, reprint or overhead" },
  number("ink_ml", "ink used", "mL", [0, 1e8], { target: "L", scale: 1e-3 }),
  number("coverage_pct", "share of the printed area under full laydown", "%", [0, 100], {
    target: "1",
    scale: 0.01,
  }),
  number("pickup_pct", "pick-up of the first pad", "%", [10, 200], { target: "1", scale: 0.01 }),
  number("fix_temp_c", "cloth temperature at fixation", "°C", [80, 230]),
  number("dwell_s", "time at fixation temperature", "s", [1, 3600], { target: "s" }),
  number("liquor_ratio", "fresh water of a bath or of the wash", "L/kg", [0.5, 300], {
    target: "L/kg",
  }),
  number("baths", "number of baths", "1", [1, 20], { step: 1 }),
  number("speed_m_min", "speed of the fixing machine", "m/min", [0.5, 200], { target: "m/min" }),
  number("electricity_kwh", "electricity of the lot", "kWh", [0, 1e7], {
    target: "kWh",
    reading: true,
  }),
  number("water_l", "water of the lot", "L", [0, 1e9], { target: "L", reading: true }),
  number("gas_kwh", "gas of the lot", "kWh", [0, 1e7], { target: "kWh", reading: true }),
  number("steam_kg", "steam of the lot", "kg", [0, 1e7], { target: "kg", reading: true }),
  number("rub_dry", "dry rub fastness", "grade", [1, 5], { step: 0.5, reading: true }),
  number("rub_wet", "wet rub fastness", "grade", [1, 5], { step: 0.5, reading: true }),
  number("wash_fastness", "wash fastness", "grade", [1, 5], { step: 0.5, reading: true }),
  text("reprint_of", "lot that this one replaces"),
  text("note", "note"),
];

/** Columns by name. */
export const COLUMN_BY_NAME: ReadonlyMap<string, Column> = new Map(
  COLUMNS.map((column) => [column.name, column]),
);
