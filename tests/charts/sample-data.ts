import type { RoutePart, RouteTotal } from "../../src/charts/stacked-steps.js";

/** Names of the two routes of the sample mill. */
export const NAMES = { dye: "Reactive dye, steam and wash", pigment: "Pigment, heat fixation" };

/** A name that no column can hold in one line. */
export const LONG =
  "wash-off of unfixed dye, alkali and auxiliaries on the open-width range with counter-flow";

/** A word that cannot be broken at a blank. */
export const UNBROKEN = "Baumwollpolyesterdoppelgewebeausgangsmaterialbezeichnung";

/** Totals of both routes that the parts add up to, with an interval of a fifth to either side. */
export function totalsOf(parts: readonly RoutePart[]): Record<"dye" | "pigment", RouteTotal> {
  const total = (route: "dye" | "pigment"): RouteTotal => {
    const value = parts.reduce((sum, part) => sum + part[route], 0);
    return { name: NAMES[route], total: { value, low: value * 0.8, high: value * 1.2 } };
  };
  return { dye: total("dye"), pigment: total("pigment") };
}

/** Numbers from 0 to 1 that look drawn by chance and are the same each time. */
export function chances(count: number): readonly number[] {
  return Array.from({ length: count }, (_, index) => ((index * 0.6180339887 + 0.37) % 1) * 0.998);
}
