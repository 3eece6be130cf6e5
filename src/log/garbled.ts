/**
 * Text that was written in one encoding and read in another. It is pointed out, never mended: which letters
 * stood there is the exporter's to say.
 */

import type { Problem } from "../problems/problem.js";
import type { CsvRecord } from "./csv.js";
import { cellOf, type PlacedColumn } from "./layout.js";

/** What the bytes 0x80 to 0xBF of UTF-8 turn into under Windows-1252. */
const BEHIND = "€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ\u0080-\u00bf";

/** The same without what may stand behind a capital letter at the end of a word: dashes, quotes, spaces. */
const SELDOM = "€‚ƒ„†‡ˆ‰Š‹ŒŽ•˜™š›œžŸ\u0080-\u009f\u00a1-\u00aa\u00ac-\u00ba\u00bc-\u00bf";

/**
 * First bytes of letters beyond ASCII (Â and Ã for Western ones, Ä and Å for Central European and Turkish
 * ones, Î and Ï for Greek, Ð and Ñ for Cyrillic, â€ and â‚ for signs), controls that no text holds, and the
 * sign put in place of letters that were lost.
 */
const SIGNATURE = new RegExp(
  `[ÂÃ][${BEHIND}]|[ÄÅÎÏÐÑ][${SELDOM}]|â[€‚„][${BEHIND}]|ï»¿|[\u0080-\u009f\ufffd]`,
);

/**
 * Whether a text shows letters of UTF-8 read as Windows-1252, such as `GrÃ¼n`, or letters that were lost.
 *
 * @param text - the text
 * @returns true when it does
 * @see WHATWG Encoding Standard, index windows-1252
 */
export function isGarbled(text: string): boolean {
  return SIGNATURE.test(text);
}

/**
 * The first cell of a record with such a text.
 *
 * @param columns - columns to look at
 * @param record - the record
 * @returns column and value; undefined when there is none
 */
export function garbledCell(
  columns: readonly PlacedColumn[],
  record: CsvRecord,
): { readonly column: string; readonly value: string } | undefined {
  for (const placed of columns) {
    const value = cellOf(record, placed);
    if (isGarbled(value)) return { column: placed.heading, value };
  }
  return undefined;
}

/**
 * The warning about such a text.
 *
 * @param place - file, line, column and value of the first one
 * @param encoding - encoding the file was read in
 * @returns the warning
 */
export function garbledText(
  place: Required<Pick<Problem, "file" | "line" | "column" | "value">>,
  encoding: string,
): Problem {
  const isUtf8 = /^utf-?8$/i.test(encoding);
  return {
    code: "text-garbled",
    severity: "warning",
    ...place,
    expected: "letters as they were written, not those of another encoding",
    remedy: isUtf8
      ? "If the letters are right in the program that wrote the file, export it again as UTF-8; else name the encoding of the file with `encoding:` under `log:` in plant.yaml. Nothing was changed."
      : `Set \`encoding: utf-8\` under \`log:\` in plant.yaml, where it is ${encoding}. Nothing was changed.`,
  };
}
