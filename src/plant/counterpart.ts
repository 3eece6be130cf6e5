/**
 * The route a lot would have taken in the other workflow.
 */

import type { Plant, PlantRoute } from "./plant.js";
import type { Share } from "./cloth-kind.js";
import { DYE_OF_FIBRE } from "./shipped-routes.js";

/** Main fibre must reach this share to decide the route of a blend. [-] */
const MAIN_SHARE = 0.6;

/** The two arms of a lot, or why it has none. */
export type Arms =
  | {
      /** Pigment arm. */
      readonly pigment: PlantRoute;
      /** Dye arm. */
      readonly dye: PlantRoute;
      /** One dye class colours only part of the blend. */
      readonly partial: boolean;
    }
  | { readonly without: "fibre" | "blend" | "route" };

/**
 * Chooses the arms of a lot by its own route and fibre: cellulosics go with reactive, silk, wool and
 * polyamide with acid, polyester with disperse dye; the pigment counterpart is the calender unless the
 * plant file says otherwise.
 *
 * @param plant - the print house
 * @param route - the route the lot took
 * @param blend - its fibres
 * @returns both arms, or the reason why there is no counterpart: never a guess
 */
export function armsOf(plant: Plant, route: PlantRoute, blend: readonly Share[]): Arms {
  const named = plant.counterparts[route.name];
  const partial = blend.length > 1;
  if (named !== undefined) {
    const other = plant.routes[named];
    if (other === undefined) return { without: "route" };
    return route.workflow === "pigment"
      ? { pigment: route, dye: other, partial }
      : { pigment: other, dye: route, partial };
  }
  const routes = Object.values(plant.routes);
  if (route.workflow === "dye") {
    const pigments = routes.filter((candidate) => candidate.workflow === "pigment");
    const calender = pigments.find((candidate) =>
      candidate.steps.some((step) => step.kind === "calender"),
    );
    const pigment = calender ?? pigments[0];
    return pigment === undefined ? { without: "route" } : { pigment, dye: route, partial };
  }
  const main = blend[0];
  if (main === undefined || main.share < MAIN_SHARE - 1e-9) return { without: "blend" };
  const dyeClass = DYE_OF_FIBRE[main.fibre];
  if (dyeClass === undefined) return { without: "fibre" };
  const dye = routes.find(
    (candidate) => candidate.workflow === "dye" && candidate.dye === dyeClass,
  );
  return dye === undefined ? { without: "route" } : { pigment: route, dye, partial };
}
