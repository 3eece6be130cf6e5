/**
 * The doubt about a mean, as a shape and its parameters. How it is drawn stands in `distributions.ts`.
 */

/** No doubt: a definition, a count or a value held still. */
export interface Fixed {
  /** Discriminant. */
  readonly shape: "fixed";
  /** The value. */
  readonly value: number;
}

/** Normal, given by its mean and standard deviation, cut at the physical limits. */
export interface Normal {
  /** Discriminant. */
  readonly shape: "normal";
  /** Mean and median. */
  readonly value: number;
  /** Standard deviation. */
  readonly sd: number;
  /** Physical limits. */
  readonly limits: readonly [number, number];
}

/** Lognormal, given by its median and geometric standard deviation, cut at the physical limits. */
export interface Lognormal {
  /** Discriminant. */
  readonly shape: "lognormal";
  /** Median. */
  readonly value: number;
  /** Geometric standard deviation, above 1. */
  readonly gsd: number;
  /** Physical limits. */
  readonly limits: readonly [number, number];
}

/** Triangular, uniform or beta-PERT between two ends, with the most likely value. */
export interface Bounded {
  /** Discriminant. `uniform` takes no notice of `value` but prints it. */
  readonly shape: "triangular" | "uniform" | "pert";
  /** Lower end. */
  readonly low: number;
  /** Most likely value. */
  readonly value: number;
  /** Upper end. */
  readonly high: number;
}

/** Doubt about a mean. */
export type Spread = Fixed | Normal | Lognormal | Bounded;
