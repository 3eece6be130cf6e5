/**
 * Bands of a map: round shares between which one tone stands, of one hue from light to dark.
 */

import { axisTicks } from "./axis-ticks.js";
import { formatNumber } from "./number-format.js";
import { fill, type Fill } from "./palette.js";

/** Bands wanted, about. */
const BANDS = 5;

/** Tones from nothing to most. */
const [LIGHT, DARK] = [
  [0xf3, 0xf5, 0xf8],
  [0x3a, 0x51, 0x74],
] as const;

/** A band of shares. */
export interface Band {
  /** Its lower edge; −∞ for the lowest. [%] */
  readonly from: number;
  /** Its edges in words. */
  readonly label: string;
  /** How it is filled. */
  readonly tone: Fill;
}

/**
 * Cuts shares into bands between round ones; zero is an edge where both signs occur.
 *
 * @param known - the shares [%]
 * @returns bands, the lowest first, each darker than the one before; none without shares
 */
export function bandsOf(known: readonly number[]): readonly Band[] {
  if (known.length === 0) return [];
  const [low, high] = [Math.min(...known, 0), Math.max(...known, 0)];
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const { values, digits } = axisTicks(low, Math.max(high, low + 1), BANDS);
  const edges = values.filter((value) => value > least && value < most);
  const print = (value: number): string => formatNumber(value, digits);
  return [undefined, ...edges].map((from, i): Band => {
    const to = edges[i];
    const label =
      from === undefined
        ? to === undefined
          ? `about ${print(least)} %`
          : `below ${print(to)} %`
        : to === undefined
          ? `${print(from)} % and more`
          : `${print(from)} to ${print(to)} %`;
    return { from: from ?? -Infinity, label, tone: toneOf(i, edges.length) };
  });
}

function toneOf(place: number, last: number): Fill {
  const share = last === 0 ? 0 : place / last;
  const hex = LIGHT.map((light, i) => Math.round(light + share * ((DARK[i] ?? 0) - light)))
    .map((part) => part.toString(16).padStart(2, "0"))
    .join("");
  return fill(`#${hex}`);
}

/**
 * Says whether shares lie on both sides of nothing.
 *
 * @param known - the shares
 * @returns whether there are some below and some above zero
 */
export function crossesZero(known: readonly number[]): boolean {
  return known.some((value) => value < 0) && known.some((value) => value > 0);
}
