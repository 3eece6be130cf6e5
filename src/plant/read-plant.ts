/**
 * Reads a plant file and ties its routes to its machines; names every fault in one run.
 */

import type { FactorSet } from "../factors/factor.js";
import { judgeBy } from "../factors/schema-problems.js";
import { readYaml, type TextFile } from "../factors/yaml-text.js";
import type { Judged } from "../problems/problem.js";
import { Complaints } from "./complaints.js";
import { judgeRoute } from "./judge-route.js";
import { judgeSite } from "./judge-site.js";
import type { Plant, PlantRoute } from "./plant.js";
import { PlantFile, type PlantText } from "./schema.js";

/**
 * Reads the plant file. What its schema does not allow is said first; names and numbers are judged once the
 * file has the right shape.
 *
 * @param file - the file
 * @param factors - factors in force, for limits and known names
 * @returns the plant, or every fault with its line, in the order of the file
 */
export function readPlant(file: TextFile, factors: FactorSet): Judged<Plant> {
  const yaml = readYaml(file);
  if (yaml.value === undefined) return { problems: yaml.problems };
  const { value: text, problems } = judgeBy(PlantFile, yaml.value);
  if (text === undefined) return { problems };
  const complaints = new Complaints(yaml.value);
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
  if (complaints.problems.length > 0) return { problems: complaints.problems };
  return {
    value: {
      house: text.house,
      gwp: text.gwp ?? "AR6",
      sites: text.sites,
      routes,
      counterparts: text.counterparts ?? {},
      text,
    },
    problems: [],
  };
}

function judgeCounterparts(
  complaints: Complaints,
  text: PlantText,
  routes: Readonly<Record<string, PlantRoute>>,
): void {
  const names = Object.keys(routes);
  for (const [from, to] of Object.entries(text.counterparts ?? {})) {
    const path = ["counterparts", from];
    for (const route of new Set([from, to])) {
      if (!names.includes(route)) complaints.unknown(path, route, "a route of this file", names);
    }
    const workflow = routes[from]?.workflow;
    if (workflow !== undefined && workflow === routes[to]?.workflow) {
      complaints.say(
        path,
        "counterpart-of-same-workflow",
        to,
        `a route of the other workflow: ${from} is a ${workflow} route itself`,
        "Name a route of the other workflow, or leave the line out.",
      );
    }
  }
}
