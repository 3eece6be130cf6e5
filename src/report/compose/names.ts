/**
 * Words of a report for steps, carriers and indicators.
 */

import type { IndicatorId } from "../../account/indicators.js";

const ROLES: Readonly<Record<string, string>> = {
  pretreat: "pad pre-treatment",
  "pretreat-dry": "dry after pad",
  print: "print, belt and heads",
  fix: "heat fixation",
  steam: "steam",
  wash: "wash range",
  squeeze: "squeeze",
  dry: "dry after wash",
  stored: "store",
  store: "store",
  finish: "finish pad",
  "finish-dry": "finish stenter",
  "finish-store": "store after finish",
};

/**
 * Words for a step.
 *
 * @param role - its role
 * @returns plain words
 */
export function stepWords(role: string): string {
  return ROLES[role] ?? role;
}

/**
 * Words for a carrier.
 *
 * @param flow - flow at the fence
 * @returns plain words
 */
export function carrierWords(flow: string): string {
  if (flow === "steam.bought") return "bought steam";
  if (flow.startsWith("bought.")) return `${flow.slice("bought.".length)} at a partner`;
  return flow.replace(/^fuel\./, "").replaceAll("-", " ");
}

/** Unit of an indicator as printed, and the factor from the account's unit. */
export interface PrintUnit {
  /** As printed. */
  readonly unit: string;
  /** Printed value per value of the account. */
  readonly scale: number;
}

const PER_UNIT: Readonly<Partial<Record<IndicatorId, PrintUnit>>> = {
  "co2-location": { unit: "g CO₂e", scale: 1000 },
  "co2-market": { unit: "g CO₂e", scale: 1000 },
  "scope-1": { unit: "g CO₂e", scale: 1000 },
  "scope-2-location": { unit: "g CO₂e", scale: 1000 },
  "scope-2-market": { unit: "g CO₂e", scale: 1000 },
  ink: { unit: "mL", scale: 1000 },
  paper: { unit: "m²", scale: 1 },
  hours: { unit: "s", scale: 3600 },
  labour: { unit: "s", scale: 3600 },
  formaldehyde: { unit: "mg", scale: 1000 },
};

const TOTAL: Readonly<Partial<Record<IndicatorId, PrintUnit>>> = {
  water: { unit: "m³", scale: 1e-3 },
  evaporated: { unit: "m³", scale: 1e-3 },
  discharged: { unit: "m³", scale: 1e-3 },
  consumed: { unit: "m³", scale: 1e-3 },
  cod: { unit: "kg", scale: 1e-3 },
  nitrogen: { unit: "kg", scale: 1e-3 },
  salt: { unit: "kg", scale: 1e-3 },
  energy: { unit: "MWh", scale: 1e-3 },
  electricity: { unit: "MWh", scale: 1e-3 },
  heat: { unit: "MWh", scale: 1e-3 },
  "co2-location": { unit: "t CO₂e", scale: 1e-3 },
  "co2-market": { unit: "t CO₂e", scale: 1e-3 },
  "scope-1": { unit: "t CO₂e", scale: 1e-3 },
  "scope-2-location": { unit: "t CO₂e", scale: 1e-3 },
  "scope-2-market": { unit: "t CO₂e", scale: 1e-3 },
  paper: { unit: "m²", scale: 1 },
};

/**
 * Unit in which an indicator is printed.
 *
 * @param id - the indicator
 * @param unit - its unit in the account
 * @param suffix - reference unit as printed, empty for totals
 * @returns unit and scale
 */
export function printUnit(id: IndicatorId, unit: string, suffix: string): PrintUnit {
  const found = (suffix === "" ? TOTAL : PER_UNIT)[id] ?? {
    unit: unit.replace("CO2", "CO₂"),
    scale: 1,
  };
  return suffix === "" ? found : { unit: `${found.unit}/${suffix}`, scale: found.scale };
}
