/**
 * What may not be said, why, and what to write instead. The words themselves stand in a file a language.
 */

/**
 * How well the reason of a ban is known.
 *
 * - `read`: read in the text of the law or standard, or in an extract of it
 * - `second-hand`: read in a summary by others
 * - `memory`: not looked up
 * - `own`: our own rule
 */
export type ReasonMark = "read" | "second-hand" | "memory" | "own";

/** A law, standard or rule behind a ban. */
export interface Reason {
  /** Which, and where in it. */
  readonly source: string;
  /** How well it is known. */
  readonly mark: ReasonMark;
}

/** A kind of wording that may not stand, in every language. */
export interface Ban {
  /** `refused` may not stand; `warning` may where a figure and its basis stand beside it. */
  readonly level: "refused" | "warning";
  /** What is wrong with it, as a sentence. */
  readonly why: string;
  /** Laws and standards behind it. */
  readonly reasons: readonly Reason[];
  /** What to write in its place, as a sentence. */
  readonly instead: string;
}

const GENERIC: Reason = {
  source: "Directive (EU) 2024/825, annex: generic environmental claims",
  mark: "second-hand",
};
const VAGUE: Reason = { source: "ISO 14021:1999, 5.3", mark: "read" };
const BENEFIT: Reason = { source: "16 CFR 260.4", mark: "second-hand" };
const FRANCE: Reason = { source: "Code de l'environnement (France), L. 541-9-1", mark: "read" };
const OWN: Reason = { source: "rule of this tool", mark: "own" };

/** All bans by id. */
export const BANS = {
  vague: {
    level: "refused",
    why: "It praises the whole and can be held against nothing.",
    reasons: [VAGUE, GENERIC, BENEFIT, FRANCE],
    instead:
      "Name the quantity, both routes, the place and the period: litres per m², from … to ….",
  },
  sustainable: {
    level: "refused",
    why: "No method can show that it was reached.",
    reasons: [{ source: "ISO 14021:1999, 5.5", mark: "read" }, GENERIC],
    instead: "Say which quantity fell, by how much and against what.",
  },
  "climate-neutral": {
    level: "refused",
    why: "It rests on offsets or on a boundary that is not shown.",
    reasons: [
      { source: "Directive (EU) 2024/825, annex: claims based on offsets", mark: "second-hand" },
      { source: "Décret 2022-539 (France)", mark: "memory" },
      { source: "16 CFR 260.5", mark: "second-hand" },
    ],
    instead: "State scope 1 and 2 in g CO₂e per m² on both routes, with the boundary.",
  },
  "low-carbon": {
    level: "refused",
    why: "It names neither a figure nor what is lower.",
    reasons: [GENERIC],
    instead: "State g CO₂e per m² on both routes, location-based and market-based.",
  },
  "energy-efficient": {
    level: "refused",
    why: "The law counts it among generic claims.",
    reasons: [GENERIC],
    instead: "State final energy in kWh per m² on both routes, electricity apart.",
  },
  clean: {
    level: "refused",
    why: "It says that nothing is left behind, which no print route can show.",
    reasons: [VAGUE, BENEFIT],
    instead: "Name the load and its concentration, for instance COD in g/m² and mg/L.",
  },
  harmless: {
    level: "refused",
    why: "It promises that no harm is done, to anybody, by any way.",
    reasons: [VAGUE, { source: "16 CFR 260.10", mark: "second-hand" }],
    instead: "Name the substance, the laboratory, the value and the limit.",
  },
  "free-of": {
    level: "refused",
    why: "It holds only down to a trace, and what is left of the resource is hidden.",
    reasons: [
      { source: "ISO 14021:1999, 5.4", mark: "read" },
      { source: "16 CFR 260.9", mark: "second-hand" },
    ],
    instead: "Say which step is missing and how much is still used elsewhere.",
  },
  zero: {
    level: "refused",
    why: "Cleaning, make-ready and utilities always leave something.",
    reasons: [{ source: "ISO 14021:1999, 5.4", mark: "read" }, GENERIC],
    instead: "State what is left, in litres or grams per m².",
  },
  degradable: {
    level: "refused",
    why: "Without a test, a time and a place it says nothing, and France forbids it on goods.",
    reasons: [FRANCE, { source: "16 CFR 260.8", mark: "second-hand" }, GENERIC],
    instead: "Name the test, the laboratory and the result, for the substance tested.",
  },
  natural: {
    level: "refused",
    why: "Where a matter comes from says nothing about what it does.",
    reasons: [GENERIC, VAGUE],
    instead: "Name the matter and its share of the mass.",
  },
  conscious: {
    level: "refused",
    why: "It praises the maker and says nothing of the goods.",
    reasons: [GENERIC],
    instead: "Say what was done, when and where.",
  },
  best: {
    level: "refused",
    why: "It compares with all others, whom nobody has measured.",
    reasons: [
      { source: "ISO 14021, 6.3 (comparisons)", mark: "memory" },
      { source: "Green Claims Code 2021 (United Kingdom): fair comparisons", mark: "second-hand" },
    ],
    instead: "Compare with one named route or period, with both figures.",
  },
  guaranteed: {
    level: "refused",
    why: "A figure with an interval is no promise.",
    reasons: [OWN],
    instead: "Give the median and the interval.",
  },
  conformity: {
    level: "refused",
    why: "What the law asks of all is no merit of one, and nobody has certified it.",
    reasons: [
      {
        source: "Directive (EU) 2024/825, annex: legal requirements as a distinctive feature",
        mark: "second-hand",
      },
      { source: "ISO 14021, 5.7 (no endorsement implied)", mark: "second-hand" },
    ],
    instead: "Name the test report: laboratory, value, limit, date.",
  },
  footprint: {
    level: "refused",
    why: "A volume is no water footprint, and gate to gate is no footprint of a product.",
    reasons: [
      { source: "ISO 14046", mark: "second-hand" },
      { source: "ISO 14067", mark: "second-hand" },
    ],
    instead: "Write inventory of water, or partial result gate to gate.",
  },
  equivalent: {
    level: "refused",
    why: "Pools, cars and trees hide the figure and its doubt, and each rests on a figure of its own.",
    reasons: [OWN, { source: "16 CFR 260.3 (clear, not overstated)", mark: "read" }],
    instead: "Give the litres, kWh or grams as they are.",
  },
  seal: {
    level: "warning",
    why: "It sounds like the word of a third party.",
    reasons: [
      { source: "Directive (EU) 2024/825, annex: labels without a scheme", mark: "second-hand" },
      { source: "16 CFR 260.6", mark: "second-hand" },
    ],
    instead: "Name who certified what, by which scheme and until when, or leave it out.",
  },
  forecast: {
    level: "warning",
    why: "What will be saved may be said in public only with a detailed plan that is checked by others.",
    reasons: [{ source: "Directive (EU) 2024/825: future performance", mark: "second-hand" }],
    instead: "Say what was saved in a period that is over.",
  },
  "same-quality": {
    level: "warning",
    why: "Equal function has to be shown by grades.",
    reasons: [{ source: "ISO 14044: equal function of what is compared", mark: "memory" }],
    instead: "Print the fastness grades of both routes.",
  },
  comparison: {
    level: "warning",
    why: "It compares without a figure or without saying with what.",
    reasons: [
      { source: "16 CFR 260.3(d)", mark: "read" },
      { source: "ISO 14021, 6.3 (comparisons)", mark: "memory" },
    ],
    instead: "Put both figures and what is compared with into the same sentence.",
  },
} as const satisfies Readonly<Record<string, Ban>>;

/** A ban. */
export type BanId = keyof typeof BANS;
