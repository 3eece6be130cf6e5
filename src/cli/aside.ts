/**
 * How many rows may be set aside.
 */

import type { FileCounts } from "../log/read-logs.js";
import { EXIT } from "./exit.js";

/** A limit on rows set aside. */
export type AsideLimit = { readonly rows: number } | { readonly share: number } | undefined;

/**
 * Reads `--max-aside`.
 *
 * @param text - `12` or `5%`
 * @returns the limit; undefined when none was given
 * @throws RangeError when it is neither
 */
export function asideLimit(text: string | undefined): AsideLimit {
  if (text === undefined) return undefined;
  const match = /^(\d+(?:\.\d+)?)(%?)$/.exec(text);
  if (match === null)
    throw new RangeError(`--max-aside takes a number such as 12 or 5%, not ${text}.`);
  const number = Number(match[1]);
  return match[2] === "%" ? { share: number / 100 } : { rows: number };
}

/**
 * Exit code after reading.
 *
 * @param files - counts
 * @param limit - the limit
 * @returns refused when no row is left, aside when the limit is passed, else done
 */
export function asideCode(files: readonly FileCounts[], limit: AsideLimit): number {
  let rows = 0;
  let aside = 0;
  let taken = 0;
  for (const file of files) {
    rows += file.rows;
    aside += file.setAside;
    taken += file.accepted + file.corrected;
  }
  if (taken === 0) return EXIT.refused;
  if (limit === undefined) return EXIT.done;
  const most = "rows" in limit ? limit.rows : limit.share * rows;
  return aside > most ? EXIT.aside : EXIT.done;
}
