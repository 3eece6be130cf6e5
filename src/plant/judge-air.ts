/**
 * Judges whether the air of every dryer can carry water out of its hall, by putting every route together.
 */

import type { FactorSet } from "../factors/factor.js";
import type { KeyPath } from "../factors/yaml-text.js";
import { DryExhaust } from "../steps/humidity-rise.js";
import { assembleArm } from "./assemble.js";
import { clothKind } from "./cloth-kind.js";
import type { Complaints } from "./complaints.js";
import type { Plant, PlantRoute } from "./plant.js";
import { lookupIn, MissingFactor } from "./quantities.js";
import { buildSite } from "./site.js";

const SETTING = "exhaust-humidity";

// Every value entered so far: which one a lot takes is told when lots are charged.
const NEWEST = { month: "9999-12", day: "9999-12-31" };

/**
 * Notes dryers whose exhaust is told hardly damper than their hall, once for each number at fault.
 *
 * @param complaints - where faults are noted
 * @param factors - factors in force
 * @param plant - the print house, without other faults
 */
export function judgeAir(complaints: Complaints, factors: FactorSet, plant: Plant): void {
  const noted = new Set<string>();
  for (const name of Object.keys(plant.sites)) {
    for (const route of Object.values(plant.routes)) {
      const fault = dryExhaust(plant, factors, name, route);
      if (fault === undefined) continue;
      const path = placeOf(plant, name, route, fault.role);
      if (noted.has(path.join("|"))) continue;
      noted.add(path.join("|"));
      complaints.say(
        path,
        "exhaust-too-dry",
        String(fault.value),
        `at least ${fault.least} kg of water per kg of dry air in the exhaust of step ${fault.role} (${route.name}), as the hall of site ${name} holds ${fault.hall} already`,
        "Correct `exhaust-humidity` of the machine, or `hall.temperature` and `hall.relative-humidity` of the site.",
      );
    }
  }
}

function dryExhaust(
  plant: Plant,
  factors: FactorSet,
  name: string,
  route: PlantRoute,
): DryExhaust | undefined {
  const text = plant.sites[name];
  if (text === undefined) return undefined;
  const lookup = lookupIn(factors, NEWEST.month, NEWEST.day);
  try {
    const site = buildSite(name, text, lookup);
    // Any cloth does: the air of a dryer does not hang on it.
    const kind = clothKind([{ fibre: "cotton", share: 1 }], ({ id }) => site.at(id));
    assembleArm(plant, site, lookup, factors, { route, other: undefined, own: true, kind });
  } catch (error) {
    if (error instanceof DryExhaust) return error;
    if (error instanceof MissingFactor) return undefined;
    throw error;
  }
  return undefined;
}

// Where the number at fault stands, or the machine that was given none.
function placeOf(plant: Plant, site: string, route: PlantRoute, role: string): KeyPath {
  const step = route.steps.find((one) => one.role === role);
  if (step?.settings[SETTING] !== undefined) {
    return ["routes", route.name, "settings", `${role}.${SETTING}`];
  }
  const machine = step?.machine ?? "";
  const found = plant.sites[site]?.machines[machine];
  if (found?.settings?.[SETTING] !== undefined) {
    return ["sites", site, "machines", machine, "settings", SETTING];
  }
  return ["sites", site, "machines", machine];
}
