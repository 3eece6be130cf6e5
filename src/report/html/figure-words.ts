import type { Figure } from "../document.js";
import { formatInterval, formatNumber } from "../format.js";
import type { HtmlWords } from "./words.js";

const NO_BREAK = "\u00a0";

/**
 * Prints a figure's value with its unit.
 *
 * @param figure - the figure
 * @returns for instance `−41.3 L/kg`
 */
export function valueWords(figure: Figure): string {
  const value = formatNumber(figure.value, figure.digits);
  return figure.unit === "" ? value : `${value}${NO_BREAK}${figure.unit}`;
}

/**
 * Prints the interval of a figure.
 *
 * @param figure - the figure
 * @returns for instance `−48.0 to −35.1`; nothing where it has none
 */
export function intervalWords(figure: Figure): string | undefined {
  const { low, high, digits } = figure;
  return low === undefined || high === undefined ? undefined : formatInterval(low, high, digits);
}

/**
 * Says a figure in one line, as shown when it is pointed at.
 *
 * @param figure - the figure
 * @param words - words of the page
 * @returns value, unit, interval, and what the value is of its draws
 */
export function figureWords(figure: Figure, words: HtmlWords): string {
  const interval = intervalWords(figure);
  return [
    valueWords(figure),
    ...(interval === undefined ? [] : [`${words.interval} ${interval}`]),
    words.of[figure.of],
  ].join("; ");
}
