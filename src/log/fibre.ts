import type { FibreShare } from "./lot.js";

/** Letter codes for fibres as used on labels (ISO 2076 and EU practice), from memory. */
const CODES: Readonly<Record<string, string>> = {
  co: "cotton",
  cv: "viscose",
  cmd: "modal",
  cly: "lyocell",
  li: "flax",
  linen: "flax",
  se: "silk",
  wo: "wool",
  pa: "polyamide",
  nylon: "polyamide",
  pes: "polyester",
  pan: "acrylic",
  ea: "elastane",
};

/** Shares may miss 100 % by this much before the row is set aside. [%] */
const SLACK = 0.5;

/** What became of a text of fibres. */
export type FibreReading =
  | { readonly blend: readonly FibreShare[]; readonly corrected: boolean }
  | { readonly unknown: string }
  | { readonly sum: number };

/**
 * Reads `cotton`, `cotton 60 polyester 40`, `60% CO / 40% PES`.
 *
 * @param text - as logged
 * @param known - fibres of the factor set
 * @returns shares adding to 1, largest first; or the word not known; or the sum that misses 100
 */
export function readFibre(text: string, known: ReadonlySet<string>): FibreReading {
  const tokens = text.toLowerCase().match(/\d+(?:[.,]\d+)?|\p{L}[\p{L}-]*/gu) ?? [];
  const words: string[] = [];
  const shares: number[] = [];
  for (const token of tokens) {
    if (/^\d/.test(token)) shares.push(Number(token.replace(",", ".")));
    else words.push(Object.hasOwn(CODES, token) ? (CODES[token] ?? token) : token);
  }
  const unknown = words.find((word) => !known.has(word));
  if (unknown !== undefined || words.length === 0) return { unknown: unknown ?? text };
  if (words.length === 1 && shares.length === 0) {
    return { blend: [{ fibre: words[0] ?? "", share: 1 }], corrected: false };
  }
  const sum = shares.reduce((total, share) => total + share, 0);
  if (shares.length !== words.length || !(Math.abs(sum - 100) <= SLACK)) return { sum };
  const merged = new Map<string, number>();
  words.forEach((word, i) => merged.set(word, (merged.get(word) ?? 0) + (shares[i] ?? 0) / sum));
  const blend = [...merged]
    .map(([fibre, share]) => ({ fibre, share }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share || (a.fibre < b.fibre ? -1 : 1));
  // Shares such as 33.3, 33.3 and 33.4 miss 100 in the last bit alone.
  return { blend, corrected: Math.abs(sum - 100) > 1e-9 };
}
