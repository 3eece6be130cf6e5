/**
 * Works a pack out anew from the sums, settings and factors inside, and holds what it states against that.
 */

import { sentence } from "../problems/sentence.js";
import { differingPlaces } from "./differences.js";
import { factorSetOf } from "./factor-list.js";
import { boundaryOf } from "./make-pack.js";
import type { Pack } from "./schema.js";
import { plantOf, type WorkedOut, workOut } from "./work-out.js";

/** A check on what a pack states. */
export interface Recomputed {
  /** Which. */
  readonly id: "boundary" | "figures" | "coverage" | "claims";
  /** Outcome. */
  readonly outcome: "pass" | "fail" | "not present";
  /** What was found. */
  readonly found: string;
  /** Places that do not fit, as JSON pointers. */
  readonly places: readonly string[];
}

/**
 * Checks boundary, figures, coverage and claims.
 *
 * @param pack - the pack
 * @param code - digest of this program
 * @returns a check each; figures that cannot be worked out fail with the reason
 */
export function recompute(pack: Pack, code: string): readonly Recomputed[] {
  try {
    const factors = factorSetOf(pack);
    return recomputed(pack, code, factors, plantOf(pack.plant, factors));
  } catch (error) {
    // Units or factors that do not fit stop the reader; who sealed the pack could read it.
    const why = error instanceof Error ? error.message : String(error);
    return [
      { id: "boundary", outcome: "fail", found: why, places: ["/pack/plant", "/pack/factors"] },
      ...unable(why),
    ];
  }
}

function recomputed(
  pack: Pack,
  code: string,
  factors: ReturnType<typeof factorSetOf>,
  plant: ReturnType<typeof plantOf>,
): readonly Recomputed[] {
  if (plant.value === undefined) {
    const said = plant.problems.slice(0, 2).map(sentence).join(" ");
    return [
      { id: "boundary", outcome: "fail", found: said, places: ["/pack/plant"] },
      ...unable("the plant file inside cannot be read"),
    ];
  }
  const routes = [...new Set(pack.strata.map(({ route }) => route))];
  const boundary = held(
    "boundary",
    pack.boundary.routes,
    boundaryOf(plant.value, routes),
    "/pack/boundary/routes",
    `steps of ${routes.length} routes as the plant file inside has them`,
  );
  let worked: WorkedOut;
  try {
    worked = workOut(
      pack,
      plant.value,
      factors,
      pack.claims.map(({ id }) => id),
    );
  } catch (error) {
    // Whatever it is, it was what the pack says that brought it about: who sealed it worked it out before.
    return [boundary, ...unable(error instanceof Error ? error.message : String(error))];
  }
  const other =
    code === pack.generator.code
      ? ""
      : "; the pack was made by another version of the program, which may work out otherwise";
  return [
    boundary,
    held(
      "figures",
      pack.figures,
      worked.figures,
      "/pack/figures",
      `${pack.figures.length} figures worked out again from sums, settings and factors inside`,
      other,
    ),
    held(
      "coverage",
      pack.coverage,
      worked.coverage,
      "/pack/coverage",
      "shares follow from the settings inside",
      other,
    ),
    pack.claims.length === 0
      ? { id: "claims", outcome: "not present", found: "the pack makes no claims", places: [] }
      : held(
          "claims",
          pack.claims,
          worked.claims,
          "/pack/claims",
          `${pack.claims.length} claims judged again by the policy inside, ${pack.policy.version}`,
          other,
        ),
  ];
}

function unable(why: string): readonly Recomputed[] {
  return (["figures", "coverage", "claims"] as const).map((id) => ({
    id,
    outcome: "fail",
    found: `cannot be worked out: ${why}`,
    places: [`/pack/${id}`],
  }));
}

function held(
  id: Recomputed["id"],
  there: unknown,
  made: unknown,
  at: string,
  words: string,
  other = "",
): Recomputed {
  const places = differingPlaces(there, made, at);
  return places.length === 0
    ? { id, outcome: "pass", found: words, places }
    : {
        id,
        outcome: "fail",
        found: `${places.length} ${places.length === 1 ? "value does" : "values do"} not follow from the rest of the pack${other}`,
        places,
      };
}
