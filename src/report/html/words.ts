/** Words of the page that no block brings along. */
export interface HtmlWords {
  /** Leads past the contents. */
  readonly skip: string;
  /** Heading of the contents. */
  readonly contents: string;
  /** Heading of the traces. */
  readonly traces: string;
  /** What the traces are, in one or two sentences. */
  readonly tracesLead: string;
  /** Says what the section holds where no number has terms. */
  readonly tracesPlain: string;
  /** Stands in print in place of the traces. */
  readonly tracesPrinted: string;
  /** Names of the four provenances. */
  readonly provenance: {
    /** From a lot reading or a meter. */
    readonly measured: string;
    /** From a meter shared between lots. */
    readonly allocated: string;
    /** Worked out with the mill's own settings. */
    readonly modelled: string;
    /** Worked out with shipped defaults. */
    readonly default: string;
  };
  /** What a value is of its draws. */
  readonly of: { readonly median: string; readonly mean: string; readonly count: string };
  /** Names the 95 % interval, in front of its ends. */
  readonly interval: string;
  /** Names the places where a number stands. */
  readonly standsIn: string;
  /** Says how many numbers a part of the report shows first. */
  readonly many: (count: number) => string;
  /** Names the provenance of a number. */
  readonly comesFrom: string;
  /** Headings of the terms of a number. */
  readonly terms: {
    /** Caption. */
    readonly caption: string;
    /** Step of the route. */
    readonly step: string;
    /** Flow. */
    readonly flow: string;
    /** Amount times rate. */
    readonly product: string;
    /** Share. */
    readonly share: string;
    /** Settings and factors read. */
    readonly reads: string;
  };
  /** Says how many terms were left out. */
  readonly rest: (count: number) => string;
  /** Names the way from a note back to the text. */
  readonly back: (note: number) => string;
  /** Names a note for those who do not see its place. */
  readonly note: (note: number) => string;
}

/** English words. */
export const ENGLISH: HtmlWords = {
  skip: "Skip to the text",
  contents: "Contents",
  traces: "Numbers and where they come from",
  tracesLead:
    "Each number marked in the text leads here, where they are listed by the place they first stand in. A number is the sum of terms, and a term is an amount from the lots times a rate.",
  tracesPlain:
    "Each number marked in the text leads here, where they are listed by the place they first stand in.",
  tracesPrinted: "On screen each number of this report opens to the terms it is the sum of.",
  provenance: {
    measured: "measured",
    allocated: "allocated",
    modelled: "modelled",
    default: "default",
  },
  of: { median: "median of the draws", mean: "mean of the draws", count: "count" },
  interval: "95 % interval",
  standsIn: "Stands in",
  many: (count) => (count === 1 ? "1 number" : `${count} numbers`),
  comesFrom: "Provenance",
  terms: {
    caption: "Terms, largest share first",
    step: "Step and route",
    flow: "Flow",
    product: "Amount × rate",
    share: "Share",
    reads: "Settings and factors read",
  },
  rest: (count) => (count === 1 ? "One further term" : `${count} further terms together`),
  back: (note) => `Back to the text of note ${note}`,
  note: (note) => `Note ${note}`,
};
