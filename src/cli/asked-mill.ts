/**
 * The mill as a command asks for it: what `--set` adds, less what its audience may not see.
 */

import type { Audience } from "../compare/claims/gates.js";
import type { Problem } from "../problems/problem.js";
import { plantFor } from "./audience.js";
import { withSets } from "./scenarios.js";
import { openMill, type Workspace } from "./workspace.js";

/** Options that say which mill. */
export interface AskedOptions {
  /** Plant file. */
  readonly plant: string;
  /** For whom; the mill itself when absent. */
  readonly audience?: Audience;
  /** Keys of the plant file set otherwise in a what-if, each as KEY=VALUE. */
  readonly set?: readonly string[];
}

/**
 * Opens a mill and makes it what is asked for.
 *
 * @param options - where it is, and what is asked
 * @returns the mill or its problems
 * @throws WrongWord when a key of `--set` is not known or a value cannot stand there
 */
export function openAsked(options: AskedOptions): {
  readonly mill?: Workspace;
  readonly problems: readonly Problem[];
} {
  const { mill, problems } = openMill(options);
  if (mill === undefined) return { problems };
  const plant = withSets(mill, options.plant, options.set ?? []);
  return { mill: { ...mill, plant: plantFor(plant, options.audience ?? "internal") }, problems };
}
