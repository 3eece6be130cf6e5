/**
 * How a number is printed: a true minus sign, a thin blank between thousands, a point before the
 * decimals, whatever the machine's own language is.
 */

import { InputError } from "../problems/input-error.js";

const MINUS = "\u2212";
const THIN_BLANK = "\u202f";

/** From here on digits can no longer be written one by one. */
const TOO_LARGE = 1e21;

/**
 * Prints a number: `−12 345.6`.
 *
 * @param value - the number
 * @param digits - decimals; negative ones round to tens, hundreds and so on
 * @returns the number in print; what rounds to nothing has no sign
 * @throws {@link InputError} when the number is not finite, or too large to be written out
 */
export function formatNumber(value: number, digits: number): string {
  const size = Math.abs(value);
  if (!(size < TOO_LARGE)) {
    throw new InputError(
      "printed number",
      value,
      "expected a finite number; say in words what is not known",
    );
  }
  const place = 10 ** Math.max(0, -digits);
  const written = (Math.round(size / place) * place).toFixed(0);
  const [whole = "", decimals] = (digits < 0 ? written : size.toFixed(digits)).split(".");
  const groups: string[] = [];
  for (let end = whole.length; end > 0; end -= 3) {
    groups.unshift(whole.slice(Math.max(0, end - 3), end));
  }
  const sign = value < 0 && /[1-9]/.test(whole + (decimals ?? "")) ? MINUS : "";
  const printed = sign + groups.join(THIN_BLANK);
  return decimals === undefined ? printed : `${printed}.${decimals}`;
}

/**
 * Prints a change with its sign, plus as well as minus; a change that rounds to nothing has none.
 *
 * @param value - the change
 * @param digits - decimals
 * @returns such as `+3.2` or `−0.4`
 * @throws {@link InputError} as {@link formatNumber}
 */
export function formatChange(value: number, digits: number): string {
  const printed = formatNumber(value, digits);
  return value > 0 && /[1-9]/.test(printed) ? `+${printed}` : printed;
}
