/**
 * Cautions on safety and law. Those that apply to the routes shown are always printed.
 */

/** What in a report calls for a caution. */
export type CautionTopic =
  | "calender"
  | "thermal-oil"
  | "steam"
  | "stenter"
  | "pigment-curing"
  | "finished-goods-eu"
  | "effluent"
  | "urea"
  | "energy-change"
  | "all"
  | "forecast";

/**
 * How well the facts of a caution are known.
 *
 * - `read`: read in the law or the official text itself
 * - `second-hand`: read in a summary by others; to be looked up before it is relied on
 * - `practice`: common practice of the trade, no source
 * - `own`: our own rule
 */
export type SourceMark = "read" | "second-hand" | "practice" | "own";

/** A caution in print. */
export interface Caution {
  /** What calls for it; `all` stands in every report. */
  readonly when: CautionTopic;
  /** What is printed. */
  readonly text: string;
  /** How well its facts are known. */
  readonly mark: SourceMark;
  /** Where its facts were read; absent where no source is needed. */
  readonly source?: string;
}

/** All cautions, in the order of print. A topic with facts of different standing has two. */
export const CAUTIONS: readonly Caution[] = [
  {
    when: "calender",
    text: "Heated rollers burn, and the nip draws in hands and sleeves. Guards, interlocks, emergency stops and a lock-out routine are needed before anyone works on the machine.",
    mark: "read",
    source: "29 CFR 1910.262 (textiles), for plants in the United States",
  },
  {
    when: "thermal-oil",
    text: "Thermal oil is often run above its flash point, and ageing lowers the flash point further. A leak can form a mist that ignites. Have the explosion risk assessed and the oil tested at set intervals.",
    mark: "second-hand",
    source: "a paper of a chemical engineers' society",
  },
  {
    when: "steam",
    text: "Boilers, steamers and steam lines are pressure equipment: inspection by law, safety valves, treated feed water, trained operators. Taking a boiler out of use or choosing a smaller one is a matter for a competent engineer.",
    mark: "practice",
  },
  {
    when: "stenter",
    text: "Lint, oil and binder settle in exhaust ducts and can burn. Ducts have to be cleaned and ovens purged before firing.",
    mark: "practice",
  },
  {
    when: "pigment-curing",
    text: "Curing can give off formaldehyde, other organic compounds and ammonia, depending on binder and fixer. Measure the exhaust and the air of the hall before saying anything about them.",
    mark: "practice",
  },
  {
    when: "pigment-curing",
    text: "In the European Union the BAT conclusions for textiles set the emission levels on which permits rest; existing plants have until the end of 2026.",
    mark: "read",
    source: "Implementing Decision (EU) 2022/2508; a notice of the German environment ministry",
  },
  {
    when: "pigment-curing",
    text: "Limits for the air at the workplace apply beside them; in the United States 0.75 ppm formaldehyde over eight hours and 2 ppm over a short time.",
    mark: "second-hand",
    source: "summaries of the United States limit",
  },
  {
    when: "finished-goods-eu",
    text: "Since 6 August 2026 goods other than wood and furniture may give off no more than 0.080 mg of formaldehyde per cubic metre in the European Union (REACH, Annex XVII, entry 77); clothing has limits for further substances (entry 72). Check value and exceptions for each product.",
    mark: "second-hand",
    source: "summaries of REACH, Annex XVII",
  },
  {
    when: "effluent",
    text: "Discharge only as the permit allows. Less water can make the effluent stronger: where water falls more than the load, a limit on concentration can be passed although the load falls. Tell the authority before a process is changed.",
    mark: "practice",
  },
  {
    when: "urea",
    text: "Urea brings nitrogen into the effluent and gives off ammonia in hot steps. Both have to be checked.",
    mark: "practice",
  },
  {
    when: "energy-change",
    text: "A new electrical or gas load may need a larger supply, and a check of explosion and fire protection and of the ventilation.",
    mark: "practice",
  },
  {
    when: "forecast",
    text: "Figures about the future are estimates for decisions inside the company. They are not for advertising or for clients.",
    mark: "own",
  },
  {
    when: "all",
    text: "This is an indicative calculation from data that the user supplied. It is no legal, financial, engineering or safety advice, and it is not certified. A licensed engineer, the permit authority and counsel decide before anyone acts on it or publishes it.",
    mark: "own",
  },
];

/**
 * Picks the cautions for a report.
 *
 * @param topics - what the report shows
 * @returns those that apply, and the one of every report at the end
 */
export function cautionsFor(topics: Iterable<CautionTopic>): readonly Caution[] {
  const wanted = new Set<CautionTopic>([...topics, "all"]);
  return CAUTIONS.filter(({ when }) => wanted.has(when));
}
