/**
 * What works scenarios out beside the account, while that is drawn.
 */

import type { DrawnCorrection } from "../account/calibration.js";
import type { PlayedScenario, Scenarios, Stage } from "../compare/scenarios.js";

/** What the scenarios have in common, as plain data: house and factors are read again on the other side. */
export interface Setting extends Omit<Stage, "plant" | "factors" | "calibration"> {
  /** Corrections by meters; none when absent. */
  readonly corrections?: readonly DrawnCorrection[];
}

/** Scenarios worked out, in the order of the plant file and without the houses they belong to. */
export interface Played extends Omit<Scenarios, "played"> {
  /** What came out for each. */
  readonly played: readonly Omit<PlayedScenario, "scenario">[];
}

/** Works scenarios out at the same time. */
export interface Understudy {
  /** Says that there are scenarios, so that the mill can be opened there too. */
  readonly open: () => void;
  /**
   * Works them out.
   *
   * @param setting - lots, units, draws
   * @returns what came out; nothing when it has to be done here, where a fault can be told
   */
  readonly play: (setting: Setting) => Promise<Played | undefined>;
}
