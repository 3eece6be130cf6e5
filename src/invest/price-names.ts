/**
 * What prices of the investment file are called, and what each is paid for.
 */

import type { InvestText } from "./schema.js";

/** Names of prices in the file, the flow each belongs to and its unit. */
export const PRICED: readonly (readonly [
  keyof Omit<InvestText["prices"], "fuel" | "ink">,
  string,
  string,
  string,
])[] = [
  ["electricity", "electricity", "electricity", "kWh"],
  ["steam", "steam.bought", "bought steam", "kWh"],
  ["water", "water.withdrawn", "water", "m³"],
  ["labour", "machine.hours", "labour", "machine hour"],
  ["cloth", "cloth", "cloth that is rejected", "m²"],
  ["paper", "paper", "protecting paper", "m²"],
  ["demand", "demand", "peak demand", "kW and year"],
  ["carbon", "carbon", "carbon paid for", "t CO2e"],
  ["day", "day", "an order delivered a day sooner", "order and day"],
];

/** What a yearly line is paid for, as printed behind a currency. */
export const PER = {
  year: "year",
  "moved-m2": "m² moved",
  "moved-kg": "kg moved",
  "all-m2": "m²",
} as const;
