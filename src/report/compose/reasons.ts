/**
 * Reasons for which rows were set aside or corrected, in words.
 */

const WORDS: Readonly<Record<string, string>> = {
  "constant-not-used": "a fixed value of the plant file is not used",
  "fibre-shares": "shares of the fibres do not add up to 100 %",
  "fibre-shares-scaled": "shares of the fibres were scaled to 100 %",
  "future-date": "the day lies after the day of the report",
  "limit-not-used": "a value below the limit of detection is not used",
  "log-empty": "the file is empty",
  "log-twice": "the same file was given twice",
  "lot-in-conflict": "rows of one lot differ",
  "lot-repeated": "the row equals an earlier one and was merged with it",
  "no-such-day": "no such day in the calendar",
  "not-a-number": "the cell holds no number",
  "off-step": "the value is not in the steps of its column",
  "out-of-range": "the value lies outside what is possible",
  "rejected-above-length": "more is rejected than was printed",
  "reprint-of-itself": "the reprint names itself as its original",
  "row-of-totals": "a row of totals",
  "row-width": "the row has more or fewer cells than headings",
  "text-garbled": "letters were garbled when the file was written",
  "unit-in-cell": "the unit stands in the cell",
  "unknown-fibre": "the fibre is not known",
  "unknown-route": "the route is not in the plant file",
  "unknown-site": "the site is not in the plant file",
  "unknown-unit": "the unit is not known",
};

/**
 * Words for a reason.
 *
 * @param code - code of a problem
 * @returns plain words; those the code is made of where it has no others
 */
export function reasonWords(code: string): string {
  const known = Object.hasOwn(WORDS, code) ? WORDS[code] : undefined;
  if (known !== undefined) return known;
  const positive = /^(.+)-not-positive$/.exec(code)?.[1];
  if (positive !== undefined) return `${positive.replaceAll("-", " ")} is not above zero`;
  const missing = /^missing-(.+)$/.exec(code)?.[1];
  if (missing !== undefined) return `${missing.replaceAll("-", " ")} is missing`;
  return code.replaceAll("-", " ");
}
