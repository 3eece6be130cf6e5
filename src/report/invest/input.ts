/**
 * What an investment report is made of.
 */

import type { Findings } from "../../invest/findings.js";
import type { ScheduleYear } from "../../invest/measures.js";
import type { Difference } from "../../invest/two-files.js";
import type { ReadInvest } from "../../invest/read-invest.js";
import type { Problem } from "../../problems/problem.js";
import type { CautionTopic } from "../cautions.js";

/** Area printed in a month. */
export interface PrintedMonth {
  /** Month, as `2026-03`. */
  readonly month: string;
  /** Area of lots on dye routes. [m²] */
  readonly dye: number;
  /** Of it the area that the rules let move, by their shares. [m²] */
  readonly mayMove: number;
  /** Area of lots on pigment routes. [m²] */
  readonly pigment: number;
}

/** Everything an investment report says. */
export interface InvestInput {
  /** Name of the print house. */
  readonly house: string;
  /** The file. */
  readonly file: ReadInvest["text"];
  /** What was found. */
  readonly findings: Findings;
  /** Prices on which the plant file says otherwise, with the worth of the project if that held. */
  readonly differences: readonly (Difference & { readonly worth: number })[];
  /** Name of the plant file. */
  readonly plantFile: string;
  /** First and last day of the log. */
  readonly days: readonly [string, string];
  /** Lots counted. */
  readonly lots: number;
  /** Share of the printed area without counterpart, left out. [-] */
  readonly leftOut: number;
  /** Months in order. */
  readonly months: readonly PrintedMonth[];
  /** Schedules to the cent, by option. */
  readonly schedules: ReadonlyMap<string, readonly ScheduleYear[]>;
  /** Warnings of the file. */
  readonly warnings: readonly Problem[];
  /** Cautions that apply. */
  readonly topics: readonly CautionTopic[];
  /** Digests by name of the input. */
  readonly digests: Readonly<Record<string, string>>;
  /** Day of the report. */
  readonly date: string;
  /** Seed. */
  readonly seed: number;
  /** Version of the tool. */
  readonly version: string;
}
