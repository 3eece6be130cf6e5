/**
 * Cells that were read and judged, as a lot.
 */

import type { FibreShare, Lot, LotKind } from "./lot.js";

/** Values by our column names, numbers in the unit of a lot. */
export type CellValues = Readonly<Record<string, string | number | undefined>>;

/**
 * Makes a lot.
 *
 * @param values - its cells; blank ones are absent
 * @param fibre - its blend
 * @param site - its site
 * @param place - where the row stands
 * @returns the lot
 */
export function lotOfCells(
  values: CellValues,
  fibre: readonly FibreShare[],
  site: string,
  place: Lot["place"],
): Lot {
  const reprintOf = textIn(values, "reprint_of");
  const kind = textIn(values, "kind") as LotKind | "";
  return {
    lot: textIn(values, "lot"),
    date: textIn(values, "date"),
    site,
    client: textIn(values, "client"),
    order: textIn(values, "order"),
    fabric: textIn(values, "fabric"),
    fibre,
    gsm: numberIn(values, "gsm") ?? NaN,
    width: numberIn(values, "width_m") ?? NaN,
    length: numberIn(values, "length_m") ?? NaN,
    rejected: numberIn(values, "rejected_m"),
    route: textIn(values, "route"),
    kind: kind === "" ? (reprintOf === "" ? "production" : "reprint") : kind,
    ink: numberIn(values, "ink_ml"),
    coverage: numberIn(values, "coverage_pct"),
    pickup: numberIn(values, "pickup_pct"),
    fixTemp: numberIn(values, "fix_temp_c"),
    dwell: numberIn(values, "dwell_s"),
    liquorRatio: numberIn(values, "liquor_ratio"),
    baths: numberIn(values, "baths"),
    speed: numberIn(values, "speed_m_min"),
    readings: {
      electricity: numberIn(values, "electricity_kwh"),
      water: numberIn(values, "water_l"),
      gas: numberIn(values, "gas_kwh"),
      steam: numberIn(values, "steam_kg"),
    },
    fastness: {
      rubDry: numberIn(values, "rub_dry"),
      rubWet: numberIn(values, "rub_wet"),
      wash: numberIn(values, "wash_fastness"),
    },
    reprintOf,
    note: textIn(values, "note"),
    place,
  };
}

/**
 * A text among the values.
 *
 * @param values - the values
 * @param name - our column
 * @returns the text, or an empty one
 */
export function textIn(values: CellValues, name: string): string {
  return String(values[name] ?? "");
}

/**
 * A number among the values.
 *
 * @param values - the values
 * @param name - our column
 * @returns the number; undefined when the cell is blank
 */
export function numberIn(values: CellValues, name: string): number | undefined {
  const value = values[name];
  return typeof value === "number" ? value : undefined;
}
