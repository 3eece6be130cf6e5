/** Small pieces of the page. */

import type { Block, Cell, Run } from "../../src/report/document.js";
import { numberCell, textCell } from "../../src/report/figure-desk.js";
import { digitsFor, formatInterval, formatNumber } from "../../src/report/format.js";
import type { Fabric } from "./hall.js";
import { type Practice, PRACTICES } from "./practice.js";
import type { Practised } from "./results.js";

/** Practices in print. */
export const PRACTICE_WORDS: Readonly<Record<Practice, string>> = {
  poor: "Poorly run",
  usual: "As usual",
  well: "Well run",
};

/**
 * A paragraph of plain text.
 *
 * @param text - the text
 * @param tone - lead or small
 * @returns the block
 */
export function paragraph(text: string, tone?: "lead" | "small"): Block {
  return { kind: "paragraph", runs: said(text), ...(tone === undefined ? {} : { tone }) };
}

/**
 * Plain text as runs.
 *
 * @param text - the text
 * @returns one run
 */
export function said(text: string): readonly Run[] {
  return [{ kind: "text", text }];
}

/**
 * Head of a table.
 *
 * @param left - columns of text
 * @param right - columns of numbers
 * @returns its cells
 */
export function head(left: readonly string[], right: readonly string[] = []): readonly Cell[] {
  return [...left.map((text) => textCell(text)), ...right.map((text) => numberCell(text))];
}

/**
 * A number with three digits that count.
 *
 * @param value - the number
 * @returns it in print
 */
export function three(value: number): string {
  return formatNumber(value, digitsFor(value));
}

/**
 * A published number, with the decimals it was published with.
 *
 * @param value - the number
 * @returns it in print
 */
export function asGiven(value: number): string {
  return formatNumber(value, (String(value).split(".")[1] ?? "").length);
}

/**
 * From one number to another, as one where they print alike.
 *
 * @param low - lower end
 * @param high - upper end
 * @returns such as `1.2 to 3.4`
 */
export function fromTo(low: number, high: number): string {
  const digits = digitsFor(high);
  const [lower, upper] = [formatNumber(low, digits), formatNumber(high, digits)];
  return lower === upper ? upper : formatInterval(low, high, digits);
}

/**
 * A number in all practices, and the usual one with its interval.
 *
 * @param practised - the number
 * @returns cells: poor, usual, well, 95 % interval
 */
export function practisedCells({ at, drawn }: Practised): readonly Cell[] {
  return [
    ...PRACTICES.map((practice) => numberCell(three(at[practice]))),
    numberCell(drawn === undefined ? "–" : fromTo(drawn.low, drawn.high)),
  ];
}

/**
 * Name of a fabric.
 *
 * @param fabric - the fabric
 * @returns such as `cotton, 140 g/m²`
 */
export function fabricWords({ fibre, gsm }: Fabric): string {
  return `${fibre}, ${gsm} g/m²`;
}

/**
 * First letter large.
 *
 * @param text - the text
 * @returns the same as a heading
 */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
