/**
 * Works a pack out anew from the sums, settings and factors inside, and holds what it states against that.
 */

import type { DrawKeep } from "../account/draws.js";
import type { Program } from "../account/program.js";
import { sentence } from "../problems/sentence.js";
import { differingPlaces } from "./differences.js";
import { factorSetOf } from "./factor-list.js";
import { boundaryOf } from "./make-pack.js";
import type { Pack } from "./schema.js";
import { type Part, plantOf, type WorkedOut, workOut } from "./work-out.js";

/** How a pack is worked out anew. */
export interface RecomputeSetting {
  /** Digest of this program. */
  readonly code: string;
  /** How much of it; all of it when left out. */
  readonly part?: Part | undefined;
  /** Keeps draws for other packs. */
  readonly keep?: DrawKeep | undefined;
}

/** A pack worked out anew. */
export interface Recomputed {
  /** A check each of boundary, figures, coverage and claims. */
  readonly checks: readonly Held[];
  /** Terms of all lots as they were printed; absent where they could not be worked out. */
  readonly printed?: Program;
}

/** A check on what a pack states. */
interface Held {
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
 * @param setting - how it is worked out
 * @returns a check each; figures that cannot be worked out fail with the reason
 */
export function recompute(pack: Pack, setting: RecomputeSetting): Recomputed {
  try {
    const factors = factorSetOf(pack);
    return recomputed(pack, setting, factors, plantOf(pack.plant, factors));
  } catch (error) {
    // Units or factors that do not fit stop the reader; who sealed the pack could read it.
    const why = error instanceof Error ? error.message : String(error);
    return {
      checks: [
        { id: "boundary", outcome: "fail", found: why, places: ["/pack/plant", "/pack/factors"] },
        ...unable(why),
      ],
    };
  }
}

function recomputed(
  pack: Pack,
  { code, part = "all", keep }: RecomputeSetting,
  factors: ReturnType<typeof factorSetOf>,
  plant: ReturnType<typeof plantOf>,
): Recomputed {
  if (plant.value === undefined) {
    const said = plant.problems.slice(0, 2).map(sentence).join(" ");
    return {
      checks: [
        { id: "boundary", outcome: "fail", found: said, places: ["/pack/plant"] },
        ...unable("the plant file inside cannot be read"),
      ],
    };
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
      part,
      keep,
    );
  } catch (error) {
    // Whatever it is, it was what the pack says that brought it about: who sealed it worked it out before.
    const why = error instanceof Error ? error.message : String(error);
    return { checks: [boundary, ...unable(why)] };
  }
  const other =
    code === pack.generator.code
      ? ""
      : "; the pack was made by another version of the program, which may work out otherwise";
  const figures = pack.figures.filter(({ side }) => part === "all" || side === "as-printed");
  const checks: readonly Held[] = [
    boundary,
    held(
      "figures",
      figures,
      worked.figures,
      "/pack/figures",
      `${figures.length} figures worked out again from sums, settings and factors inside`,
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
    part !== "all"
      ? { id: "claims", outcome: "not present", found: NOT_USED, places: [] }
      : pack.claims.length === 0
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
  return { checks, printed: worked.printed };
}

/** Said of claims where suppliers are set side by side. */
const NOT_USED =
  "no comparison uses claims or figures of both routes; `millrace verify` checks them";

function unable(why: string): readonly Held[] {
  return (["figures", "coverage", "claims"] as const).map((id) => ({
    id,
    outcome: "fail",
    found: `cannot be worked out: ${why}`,
    places: [`/pack/${id}`],
  }));
}

function held(
  id: Held["id"],
  there: unknown,
  made: unknown,
  at: string,
  words: string,
  other = "",
): Held {
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
