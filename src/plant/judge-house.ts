/**
 * Judges what a plant file says as of one day: its routes, sites and counterparts.
 */

import type { FactorSet } from "../factors/factor.js";
import type { Complaints } from "./complaints.js";
import { judgeRoute } from "./judge-route.js";
import { judgeSite } from "./judge-site.js";
import type { Plant, PlantRoute } from "./plant.js";
import type { PlantText } from "./schema.js";

/**
 * Judges a plant file that has the right shape.
 *
 * @param complaints - where faults are noted
 * @param factors - factors in force
 * @param text - the file, or the file with the changes up to a day
 * @returns the print house; to be used only when no fault was noted
 */
export function judgeHouse(complaints: Complaints, factors: FactorSet, text: PlantText): Plant {
  const routes = Object.fromEntries(
    Object.entries(text.routes).map(([name, route]) => [
      name,
      judgeRoute({ complaints, factors, text }, name, route),
    ]),
  );
  for (const [name, site] of Object.entries(text.sites)) {
    judgeSite(complaints, factors, name, site);
  }
  judgeCounterparts(complaints, text, routes);
  return {
    house: text.house,
    gwp: text.gwp ?? "AR6",
    sites: text.sites,
    routes,
    counterparts: text.counterparts ?? {},
    text,
  };
}

function judgeCounterparts(
  complaints: Complaints,
  text: PlantText,
  routes: Readonly<Record<string, PlantRoute>>,
): void {
  const names = Object.keys(routes);
  // A route that was refused has no workflow to be relied on, and may be gone altogether.
  const refused = (route: string): boolean =>
    ["like", "workflow"].some((key) => complaints.refused(["routes", route, key]));
  for (const [from, to] of Object.entries(text.counterparts ?? {})) {
    const path = ["counterparts", from];
    for (const route of new Set([from, to])) {
      if (!names.includes(route) && !refused(route)) {
        complaints.unknown(path, route, "a route of this file", names);
      }
    }
    const workflow = routes[from]?.workflow;
    if (workflow === undefined || workflow !== routes[to]?.workflow) continue;
    if (refused(from) || refused(to)) continue;
    complaints.say(
      path,
      "counterpart-of-same-workflow",
      to,
      `a route of the other workflow: ${from} is a ${workflow} route itself`,
      "Name a route of the other workflow, or leave the line out.",
    );
  }
}
