/**
 * The letters and signs that the shipped typeface is cut down to.
 */

const range = (first: number, last: number): string =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index)).join(
    "",
  );

// The typeface has no soft hyphen, no \u0149 and no \u01c4: nobody writes them.
const present = (letters: string): string => letters.replace(/[\u00ad\u0149\u01c4]/g, "");

/** Western, northern, southern and eastern Europe, Türkiye; the Latin-1 signs among them. */
const LATIN = present(range(0x20, 0x7e) + range(0xa0, 0x17f));

/** What Romanian, Azerbaijani, Hausa and written-out Mandarin need beyond them. */
const LATIN_MORE = "ȘșȚțƏəƁƊƘƙɓɗǍǎǏǐǑǒǓǔǕǖǗǘǙǚǛǜ";

/** Modern Greek, with letters that serve as symbols. */
const GREEK = `${range(0x386, 0x3ce)}ϑϕϵ`.replace(/[\u038b\u038d\u03a2]/g, "");

/** Russian, Ukrainian, Belarusian, Bulgarian, Serbian and Macedonian. */
const CYRILLIC = `${range(0x400, 0x45f)}Ґґ`;

/** Blanks, dashes and quotation marks. */
const PUNCTUATION = `\u2009\u200a${range(0x2010, 0x2015)}${range(0x2018, 0x2022)}\u2026\u202f\u2030\u2032\u2033\u2039\u203a\u2044`;

/** Indices and exponents. */
const SMALL_DIGITS = `⁰⁴⁵⁶⁷⁸⁹⁺⁻⁼⁽⁾ⁿ${range(0x2080, 0x208e)}`;

/** Currencies beside those of Latin-1. */
const CURRENCIES = "€₤₩₫₦₱₴₸₹₺₼₽₾₿";

/** Signs of arithmetic and units, arrows, and the square that stands for what cannot be set. */
const SIGNS = "−×÷±≈≠≤≥∞√∑∏∂∆∫◊℃Ω℮№™←↑→↓↔↕■□▲▼●○";

/** What the page holds: its typeface travels inside every report, so its weight counts. */
export const PAGE_LETTERS = [
  LATIN,
  LATIN_MORE,
  GREEK,
  CYRILLIC,
  PUNCTUATION,
  SMALL_DIGITS,
  CURRENCIES,
  SIGNS,
].join("");

/** Further letters of Latin languages, Welsh and Vietnamese among them. */
const LATIN_REST = `${present(range(0x180, 0x24f))}${range(0x1e80, 0x1e85)}\u1e9e${range(0x1ea0, 0x1ef9)}`;

/** Accents written behind their letter. */
const ACCENTS = "\u0300\u0301\u0302\u0303\u0304\u0306\u0307\u0308\u030a\u030c\u0327\u0328";

/** What print holds: a PDF takes in only the letters it uses, so the file may offer more. */
export const PRINT_LETTERS = PAGE_LETTERS + LATIN_REST + ACCENTS;
