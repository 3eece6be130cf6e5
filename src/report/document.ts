/**
 * The report as plain data. HTML, PDF and JSON are written from it, so all three say the same.
 * A bare number never stands in a text: it comes as a run that points to a figure.
 */

import type { TraceLine } from "../account/trace.js";
import type { Chart } from "../charts/chart.js";
import type { Drawing, DrawingNode } from "../charts/drawing.js";

export type { Drawing, DrawingNode };

/** A stretch of text in one style. */
export type Run =
  | { readonly kind: "text"; readonly text: string; readonly style?: "bold" | "italic" | "code" }
  | { readonly kind: "link"; readonly text: string; readonly href: string }
  | { readonly kind: "note-ref"; readonly note: string }
  | { readonly kind: "figure-ref"; readonly figure: string; readonly text: string };

/** One cell of a table. */
export interface Cell {
  /** What stands in it. */
  readonly runs: readonly Run[];
  /** Numbers are set flush right with aligned digits. */
  readonly align?: "left" | "right";
  /** Row headings and totals. */
  readonly strong?: boolean;
  /** Columns it spans; 1 when absent. */
  readonly span?: number;
}

/** Share of each provenance in the quantities of a page or figure; the four add up to 1. */
export interface ProvenanceShares {
  /** From a lot reading or a meter. */
  readonly measured: number;
  /** From a meter shared between lots. */
  readonly allocated: number;
  /** Worked out with the mill's own settings. */
  readonly modelled: number;
  /** Worked out with shipped defaults. */
  readonly default: number;
}

/** A piece of the report. */
export type Block =
  | {
      readonly kind: "heading";
      /** 1 for the title, 2 for chapters, 3 for sections. */
      readonly level: 1 | 2 | 3;
      readonly text: string;
      /** Target of links. */
      readonly id: string;
      /** Starts a page in print. */
      readonly newPage?: boolean;
    }
  | {
      readonly kind: "paragraph";
      readonly runs: readonly Run[];
      readonly tone?: "lead" | "dense" | "small";
    }
  | {
      readonly kind: "list";
      readonly ordered: boolean;
      readonly items: readonly (readonly Run[])[];
    }
  | {
      readonly kind: "table";
      readonly id: string;
      readonly caption: string;
      readonly head: readonly Cell[];
      readonly rows: readonly (readonly Cell[])[];
      /** Relative widths of the columns; equal when absent. */
      readonly widths?: readonly number[];
      /** Kept shut in HTML until opened, and set small in print: the data behind a chart. */
      readonly behind?: boolean;
    }
  | {
      readonly kind: "figure";
      readonly id: string;
      /** Number and title that states quantity and unit. */
      readonly title: string;
      /** What the picture shows, for those who do not see it. */
      readonly description: string;
      /** What is to be drawn; `drawCharts` puts the picture in its place. */
      readonly chart?: Chart;
      /** The picture; a figure that cannot be drawn has `missing` instead. */
      readonly drawing?: Drawing;
      /** The same picture for a narrow screen; pages of paper do without. */
      readonly narrow?: Drawing;
      /** Why there is no picture, and how to fill it. */
      readonly missing?: string;
    }
  | { readonly kind: "strip"; readonly words: string; readonly shares: ProvenanceShares }
  | {
      readonly kind: "box";
      readonly title: string;
      readonly tone: "plain" | "caution";
      readonly blocks: readonly Block[];
    }
  | {
      readonly kind: "notes";
      readonly notes: readonly { readonly id: string; readonly runs: readonly Run[] }[];
    };

/** A number of the report with everything that stands behind it. */
export interface Figure {
  /** Median, or the mean where `of` says so. */
  readonly value: number;
  /** Lower end of the 95 % interval; absent for counts. */
  readonly low?: number;
  /** Upper end of the 95 % interval; absent for counts. */
  readonly high?: number;
  /** Unit as printed. */
  readonly unit: string;
  /** Decimals printed. */
  readonly digits: number;
  /** What the value is of its draws. */
  readonly of: "median" | "mean" | "count";
  /** Shares of provenance, for quantities. */
  readonly provenance?: ProvenanceShares;
  /** How it came about, largest share first. */
  readonly terms?: readonly FigureTerm[];
  /** What the sum of the terms is divided by; absent where the figure is a total. */
  readonly over?: FigureUnits;
}

/** Reference units that a figure is divided by. */
export interface FigureUnits {
  /** Number of units. */
  readonly units: number;
  /** What they are, such as `accepted m²`. */
  readonly words: string;
  /** Unit of the terms before they are divided, such as `L`. */
  readonly unit: string;
}

/**
 * One line of a figure's trace; median and ends are per unit of amount, in the unit of `over`, not yet divided by
 * its reference units; in the figure's own unit where it is a total.
 */
export type FigureTerm = Omit<TraceLine, "mean">;

/** The whole report. */
export interface ReportDocument {
  /** Title, in the outline and the file's properties. */
  readonly title: string;
  /** Name of the print house. */
  readonly author: string;
  /** Language of the text, BCP 47. */
  readonly language: string;
  /** Date of the report, ISO 8601. */
  readonly date: string;
  /** Line at the foot of each page: digests, factor set, review status. */
  readonly footer: string;
  /** Body. */
  readonly blocks: readonly Block[];
  /** Numbers by id. */
  readonly figures: Readonly<Record<string, Figure>>;
}
