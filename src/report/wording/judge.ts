/**
 * Finds wordings that may not stand, and those that may because somebody proved them.
 */

import { type BanId, BANS } from "./bans.js";
import { asItStands, fold, type Placed } from "./fold.js";
import type { Language } from "./language.js";
import { patternsOf, WORDS } from "./patterns.js";

/** A phrase that may stand, word for word, because it is literally true. */
export interface AllowedPhrase {
  /** The phrase. */
  readonly text: string;
  /** Why it may stand. */
  readonly reason: string;
  /** Document that proves it. */
  readonly proof: string;
}

/** A wording that may not stand. */
export interface Finding {
  /** Which ban it falls under. */
  readonly ban: BanId;
  /** `refused`, or `warning` where it may stand beside a figure and its basis. */
  readonly level: "refused" | "warning";
  /** Language it was found in. */
  readonly language: Language;
  /** Where it begins in the source. [UTF-16 units] */
  readonly from: number;
  /** Where it ends in the source. [UTF-16 units] */
  readonly to: number;
}

/** What was found in a text. */
export interface Wording {
  /** Wordings that may not stand, in the order of the text. */
  readonly found: readonly Finding[];
  /** Wordings that would not stand without a proof, in the order of the text. */
  readonly allowed: readonly { readonly finding: Finding; readonly phrase: AllowedPhrase }[];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/**
 * Judges a text.
 *
 * @param text - the text, or what a reader sees of a file
 * @param languages - languages to read it as
 * @param phrases - phrases that may stand
 * @returns what was found; a place is named once, by its longest wording
 */
export function judgeWording(
  text: string | Placed,
  languages: readonly Language[],
  phrases: readonly AllowedPhrase[] = [],
): Wording {
  const placed = typeof text === "string" ? asItStands(text) : text;
  // A hyphen at the end of a line may belong to the word or not; both are read.
  const readings = /-\s*\n/.test(placed.text) ? [fold(placed), fold(placed, true)] : [fold(placed)];
  const proved = readings.flatMap((reading) =>
    phrases.flatMap((phrase) =>
      literal(reading, phrase.text).map((stretch) => ({ ...stretch, phrase })),
    ),
  );
  const all = readings.flatMap((reading) =>
    languages.flatMap((language) => foundIn(reading, language, languages)),
  );
  const found: Finding[] = [];
  const allowed: { finding: Finding; phrase: AllowedPhrase }[] = [];
  for (const finding of longest(all)) {
    const proof = proved.find((stretch) => holds(stretch, finding));
    if (proof === undefined) found.push(finding);
    else allowed.push({ finding, phrase: proof.phrase });
  }
  return { found, allowed };
}

function foundIn(
  reading: Placed,
  language: Language,
  languages: readonly Language[],
): readonly Finding[] {
  const { bans, comparing } = patternsOf(language);
  const { text } = reading;
  // A wording of one language may be spared in another: natural gas is gas natural.
  const free = languages.flatMap((one) => stretches(text, patternsOf(one).spared));
  const foreign = new Set(
    language === "en" ? languages.flatMap((one) => WORDS[one].notEnglish ?? []) : [],
  );
  const hits = bans.flatMap(([ban, pattern]) =>
    stretches(text, pattern)
      .filter((hit) => !foreign.has(text.slice(hit.from, hit.to)))
      .filter((hit) => !free.some((stretch) => holds(stretch, hit)))
      .map((hit) => ({ ban, ...hit })),
  );
  const bare = stretches(text, comparing)
    .filter((hit) => !standsOnFigures(text, hit, language))
    .map((hit) => ({ ban: "comparison" as const, ...hit }));
  return [...hits, ...bare].map(({ ban, from, to }) => ({
    ban,
    level: BANS[ban].level,
    language,
    from: reading.from[from] ?? 0,
    to: reading.to[to - 1] ?? 0,
  }));
}

// A figure and what it is compared with must both stand in the sentence of the comparison.
function standsOnFigures(text: string, hit: Stretch, language: Language): boolean {
  const before = text.slice(0, hit.from).split(/[.!?](?=\s)|\n/);
  const behind = text.slice(hit.from).split(/[.!?](?=\s|$)|\n/, 1);
  const sentence = `${before.at(-1) ?? ""}${behind[0] ?? ""}`;
  const figure = /\d/.test(sentence.replaceAll(/\bco2e?\b/g, ""));
  return figure && stretches(sentence, patternsOf(language).basis).length > 0;
}

function stretches(text: string, pattern: RegExp): readonly Stretch[] {
  return [...text.matchAll(pattern)].map(({ 0: words, index }) => ({
    from: index,
    to: index + words.length,
  }));
}

function holds(outer: Stretch, inner: Stretch): boolean {
  return outer.from <= inner.from && inner.to <= outer.to;
}

function literal(reading: Placed, phrase: string): readonly Stretch[] {
  const words = fold(asItStands(phrase.trim())).text;
  if (words === "") return [];
  const escaped = words.replaceAll(/[\\^$.*+?()[\]{}|/-]/g, "\\$&");
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])${escaped}(?![\\p{L}\\p{N}])`, "gu");
  return stretches(reading.text, pattern).map(({ from, to }) => ({
    from: reading.from[from] ?? 0,
    to: reading.to[to - 1] ?? 0,
  }));
}

// Refused before warned, long before short; what lies inside another is named with it.
function longest(all: readonly Finding[]): readonly Finding[] {
  const kept: Finding[] = [];
  const rank = ({ level }: Finding): number => (level === "refused" ? 0 : 1);
  const sorted = all.toSorted(
    (a, b) => rank(a) - rank(b) || b.to - b.from - (a.to - a.from) || a.from - b.from,
  );
  for (const finding of sorted) {
    if (!kept.some((one) => holds(one, finding))) kept.push(finding);
  }
  return kept.toSorted((a, b) => a.from - b.from || a.to - b.to);
}
