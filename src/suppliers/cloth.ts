/**
 * Classes by which cloth of different houses is told alike.
 */

import { blendOf } from "../plant/cloth-kind.js";
import type { Pack, Stratum } from "./schema.js";

/** Share of one fibre from which cloth counts as that fibre alone. [-] */
const PURE = 0.95;

/** Ends of the classes of mass per area. [g/m²] */
const WEIGHTS = [0, 150, 250, Infinity] as const;

/** Class of what cannot be told. */
export const UNTOLD = "?";

/** Properties that a reference mix may set apart. */
export const DIMENSIONS = ["cloth", "weight", "coverage", "route"] as const;

/** A property. */
export type Dimension = (typeof DIMENSIONS)[number];

/** Classes of a stratum. */
export type Classes = Readonly<Record<Dimension, string>>;

/**
 * Class of a blend.
 *
 * @param blend - as in a ledger, `cotton 60 polyester 40`
 * @returns the fibre where it makes up 95 %, else the main fibre with `blend`
 */
export function clothOf(blend: string): string {
  const [first] = [...blendOf(blend)].sort(
    (a, b) => b.share - a.share || (a.fibre < b.fibre ? -1 : 1),
  );
  if (first === undefined) return UNTOLD;
  return first.share >= PURE ? first.fibre : `${first.fibre} blend`;
}

/**
 * Class of a band of mass per area.
 *
 * @param band - as in a stratum, `100-150`
 * @returns `0-150`, `150-250` or `250+`; `?` for strata that were joined
 */
export function weightOf(band: string): string {
  const from = Number(/^(\d+)-\d+$/.exec(band)?.[1] ?? NaN);
  for (let i = 0; i + 1 < WEIGHTS.length; i++) {
    const [low, high] = [WEIGHTS[i]!, WEIGHTS[i + 1]!];
    if (from >= low && from < high) return high === Infinity ? `${low}+` : `${low}-${high}`;
  }
  return UNTOLD;
}

/**
 * Class of a band of coverage.
 *
 * @param band - as in a stratum, `25-50`
 * @returns `0-50` or `50-100`; `?` where none was logged and for strata that were joined
 */
export function coverageOf(band: string): string {
  const from = Number(/^(\d+)-\d+$/.exec(band)?.[1] ?? NaN);
  if (!(from >= 0)) return UNTOLD;
  return from < 50 ? "0-50" : "50-100";
}

/**
 * Class of a route: pigment, or the class of dye.
 *
 * @param boundary - routes of the pack
 * @param route - name of the route in the house
 * @returns `pigment`, `reactive`, `acid`, `disperse`, or `dye` where its class is not said
 */
export function routeOf(boundary: Pack["boundary"], route: string): string {
  const found = boundary.routes.find((one) => one.route === route);
  if (found === undefined) return UNTOLD;
  return found.workflow === "pigment" ? "pigment" : (found.dye ?? "dye");
}

/**
 * Classes of a stratum.
 *
 * @param boundary - routes of the pack
 * @param stratum - the stratum
 * @returns its class in every property
 */
export function classesOf(
  boundary: Pack["boundary"],
  stratum: Pick<Stratum, "blend" | "weight" | "coverage" | "route">,
): Classes {
  return {
    cloth: clothOf(stratum.blend),
    weight: weightOf(stratum.weight),
    coverage: coverageOf(stratum.coverage),
    route: routeOf(boundary, stratum.route),
  };
}
