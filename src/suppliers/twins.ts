/**
 * One house under two names. Which of the two names is its own cannot be told from the packs, so neither is
 * compared until somebody says.
 */

import type { Candidate } from "./candidate.js";
import type { Refused } from "./gate.js";

/**
 * Finds suppliers whose lots and settings are the same, whatever they are called and whatever their months and
 * meters are said to be.
 *
 * @param able - suppliers that could be worked out
 * @returns all of them, each with the names of the others; order and file name say nothing
 */
export function twinsAmong(
  able: readonly Pick<Candidate, "alias" | "evidence">[],
): readonly Refused[] {
  return able.flatMap(({ alias, evidence }): readonly Refused[] => {
    const others = able
      .filter((one) => one.evidence === evidence && one.alias !== alias)
      .map((one) => one.alias)
      .sort();
    return others.length === 0
      ? []
      : [
          {
            alias,
            cause: "twin",
            why: `its lots and settings are those of ${others.join(", ")} too; all of them stay out until it is known whose they are`,
            places: [],
          },
        ];
  });
}
