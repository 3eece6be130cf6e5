/**
 * How a dossier prints names, numbers and shares.
 */

import type { Indicator, IndicatorId } from "../../account/indicators.js";
import type { Factor } from "../../factors/factor.js";
import { formatPercent } from "../format.js";

/** Share of the squared swings below which a factor is said to carry next to nothing. */
export const LEAST = 0.0005;

/**
 * Anchor of a factor's page.
 *
 * @param id - id of the factor
 * @returns the anchor
 */
export function factorAnchor(id: string): string {
  return `factor-${id.replaceAll(/[^A-Za-z0-9]+/g, "-")}`;
}

/**
 * Prints a share of the squared swings.
 *
 * @param share - from 0 to 1
 * @returns a percentage; a dash where it is next to nothing
 */
export function printedShare(share: number): string {
  return share < LEAST ? "–" : formatPercent(share, share < 0.0995 ? 1 : 0);
}

/**
 * Words of an indicator as they are printed.
 *
 * @param id - the indicator
 * @param indicators - indicators of the mill
 * @returns plain words
 */
export function indicatorWords(
  id: IndicatorId,
  indicators: ReadonlyMap<IndicatorId, Indicator>,
): string {
  return (indicators.get(id)?.words ?? id).replace("CO2", "CO₂");
}

/**
 * Unit of a factor as printed.
 *
 * @param factor - the factor
 * @returns the unit; nothing for a bare ratio
 */
export function unitOf(factor: Factor): string {
  return factor.unit === "1" ? "" : factor.unit;
}

/**
 * Prints a number as it is stated, but for the noise of conversions.
 *
 * @param value - the number
 * @returns up to nine digits
 */
export function full(value: number): string {
  return plain(Number(value.toPrecision(9)));
}

/**
 * Prints a number that was worked out.
 *
 * @param value - the number
 * @returns up to three digits
 */
export function short(value: number): string {
  return plain(Number(value.toPrecision(3)));
}

function plain(value: number): string {
  return String(value).replace("-", "−");
}
