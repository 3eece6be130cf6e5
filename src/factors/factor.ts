import type { Spread } from "../numbers/spread.js";

/** Five scores from 1 (measured, here, now) to 5 (guessed, elsewhere, long ago). */
export interface Quality {
  /** How the value was come by. */
  readonly reliability: number;
  /** How many sites and how long. */
  readonly completeness: number;
  /** Years between the value and its use. */
  readonly time: number;
  /** Distance between the place of the value and of its use. */
  readonly place: number;
  /** Likeness of the machine and process. */
  readonly technology: number;
}

/** One vintage of a factor. */
export interface FactorValue {
  /** First day it holds for, ISO 8601. */
  readonly from: string;
  /** Day it entered the set, ISO 8601; reports dated earlier take no notice of it. */
  readonly entered: string;
  /** Central value with its doubt, limits applied. */
  readonly spread: Spread;
  /** Key of the source in sources.yaml. */
  readonly source: string;
  /** Table, page or section. */
  readonly page: string | undefined;
  /** Year of the data. */
  readonly year: number;
  /** Place the data are from. */
  readonly region: string;
  /** Scores; they make the spread when no interval was given. */
  readonly quality: Quality;
  /** What a user should know before relying on it. */
  readonly note: string | undefined;
}

/** A documented value with its vintages. */
export interface Factor {
  /** Id: family and name, `stenter.exhaust-humidity`. */
  readonly id: string;
  /** Unit. */
  readonly unit: string;
  /** What it is, in plain words. */
  readonly words: string;
  /** What the value is counted on, where it matters: `net calorific value`, `combustion`, `life cycle`. */
  readonly basis: string | undefined;
  /** A value outside is taken for a unit slip and refused. */
  readonly plausible: readonly [number, number];
  /** Vintages, newest first. */
  readonly values: readonly FactorValue[];
  /** Whether a file of the user overruled the shipped one. */
  readonly overruled: boolean;
}

/** Where values were read. */
export interface Source {
  /** Who wrote it. */
  readonly author: string;
  /** What it is called. */
  readonly title: string;
  /** Who published it. */
  readonly publisher: string | undefined;
  /** Year of publication. */
  readonly year: number | undefined;
  /** Where it can be found. */
  readonly where: string | undefined;
  /** `memory`, `common practice`, `own estimate`, or the day somebody opened it. */
  readonly read: string;
  /** Licence of open data, with the attribution it asks for. */
  readonly licence: string | undefined;
}

/** All factors in force, and their sources. */
export interface FactorSet {
  /** Factors by id. */
  readonly factors: ReadonlyMap<string, Factor>;
  /** Sources by key. */
  readonly sources: ReadonlyMap<string, Source>;
  /** SHA-256 of all factor files, in hexadecimal. */
  readonly digest: string;
}
