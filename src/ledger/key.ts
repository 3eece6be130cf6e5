/**
 * What lots are grouped by: everything a rate may depend on, and everything a report is broken down by.
 */

import type { Lot } from "../log/lot.js";
import { blendText } from "../plant/cloth-kind.js";
import type { Workflow } from "../plant/shipped-routes.js";

/** Key of a group of lots. */
export interface LedgerKey {
  /** Site. */
  readonly site: string;
  /** Month, `2026-03`. */
  readonly month: string;
  /** Client. */
  readonly client: string;
  /** Fabric. */
  readonly fabric: string;
  /** Blend as one word. */
  readonly blend: string;
  /** Band of mass per area, `100-150`. [g/m²] */
  readonly weight: string;
  /** Band of coverage, `25-50`, or `?` when neither coverage is logged. [%] */
  readonly coverage: string;
  /** Route the lots took. */
  readonly route: string;
  /** Pigment arm, empty when there is no counterpart. */
  readonly pigment: string;
  /** Dye arm, empty when there is no counterpart. */
  readonly dye: string;
  /** Workflow the lots took. */
  readonly own: Workflow;
  /** production, reprint or overhead. */
  readonly kind: string;
  /** First day of the newest change of the plant file in force; empty for the file without its changes. */
  readonly settings: string;
}

/** Names of the routes of both arms, empty when there is no counterpart. */
export interface ArmNames {
  /** Pigment arm. */
  readonly pigment: string;
  /** Dye arm. */
  readonly dye: string;
}

const FIELDS = [
  "site",
  "month",
  "client",
  "fabric",
  "blend",
  "weight",
  "coverage",
  "route",
  "pigment",
  "dye",
  "own",
  "kind",
  "settings",
] as const;

/** Separates the fields of a key's text; it cannot stand in a cell that was read. */
const SEPARATOR = "\u001f";

/** Step between bands of mass per area. [g/m²] */
const WEIGHT_STEP = 50;

/**
 * Key of a lot.
 *
 * @param lot - the lot
 * @param own - workflow of its route
 * @param arms - names of both arms
 * @param settings - first day of the newest change in force
 * @returns the key
 */
export function keyOf(lot: Lot, own: Workflow, arms: ArmNames, settings = ""): LedgerKey {
  const band = Math.floor(lot.gsm / WEIGHT_STEP) * WEIGHT_STEP;
  const quarter =
    lot.coverage === undefined ? undefined : Math.min(3, Math.floor(lot.coverage * 4));
  return {
    site: lot.site,
    month: lot.date.slice(0, 7),
    client: lot.client,
    fabric: lot.fabric,
    blend: blendText(lot.fibre),
    weight: `${band}-${band + WEIGHT_STEP}`,
    coverage: quarter === undefined ? "?" : `${quarter * 25}-${quarter * 25 + 25}`,
    route: lot.route,
    pigment: arms.pigment,
    dye: arms.dye,
    own,
    kind: lot.kind,
    settings,
  };
}

/**
 * Key as one text, for maps and files.
 *
 * @param key - the key
 * @returns its fields in a fixed order
 */
export function keyText(key: LedgerKey): string {
  return FIELDS.map((field) => key[field].replaceAll(SEPARATOR, " ")).join(SEPARATOR);
}

/**
 * Reads a key back.
 *
 * @param text - as made by `keyText`
 * @returns the key
 */
export function keyFrom(text: string): LedgerKey {
  const parts = text.split(SEPARATOR);
  const part = (field: keyof LedgerKey): string => parts[FIELDS.indexOf(field)] ?? "";
  return {
    site: part("site"),
    month: part("month"),
    client: part("client"),
    fabric: part("fabric"),
    blend: part("blend"),
    weight: part("weight"),
    coverage: part("coverage"),
    route: part("route"),
    pigment: part("pigment"),
    dye: part("dye"),
    own: part("own") === "dye" ? "dye" : "pigment",
    kind: part("kind"),
    settings: part("settings"),
  };
}
