/**
 * Says what a scenario changes, line by line.
 */

import * as z from "zod";
import { schemaAt } from "../factors/schema-problems.js";
import { type KeyPath, pathText, valueAt } from "../factors/yaml-text.js";
import { PlantFile, type PlantText, type ScenarioText } from "./schema.js";

const FINISH = {
  pigment: "soft finish on every pigment route",
  dye: "soft finish on every dye route",
  every: "soft finish on every route",
} as const;

/**
 * What a scenario changes.
 *
 * @param before - the file with its changes
 * @param says - what the scenario says
 * @returns one line for each key, such as `sites.main.place: NOR instead of PRT`; none where nothing changes
 */
export function differsFrom(before: PlantText, says: ScenarioText): readonly string[] {
  const { sites, routes, counterparts, instead, finish, rejects = 1 } = says;
  const byArm = typeof rejects === "number" ? [["", rejects] as const] : Object.entries(rejects);
  return [
    ...linesOf(before, ["sites"], sites),
    ...linesOf(before, ["routes"], routes),
    ...linesOf(before, ["counterparts"], counterparts),
    ...Object.entries(instead ?? {}).map(([from, to]) => `${to} instead of ${from} for every lot`),
    ...(finish === undefined ? [] : [FINISH[finish]]),
    ...byArm
      .filter(([, times]) => times !== 1)
      .map(([arm, times]) => `rejects${arm === "" ? "" : ` on ${arm}`}: ${times} times as logged`),
  ];
}

function linesOf(before: PlantText, path: KeyPath, given: unknown): readonly string[] {
  if (given === undefined) return [];
  const old = valueAt(before, path);
  const schema = schemaAt(PlantFile, path);
  const mapping = schema instanceof z.ZodObject || schema instanceof z.ZodRecord;
  if (mapping && isMapping(given)) {
    if (old === undefined && isNamed(path)) return [`${pathText(path)}: new`];
    return Object.entries(given).flatMap(([key, value]) => linesOf(before, [...path, key], value));
  }
  const [now, then] = [shown(given), shown(old)];
  if (now === then) return [];
  const but = old === undefined ? ", where the file gives none" : ` instead of ${then}`;
  return [`${pathText(path)}: ${now}${but}`];
}

// Sites, machines and routes go by names of the mill's own.
function isNamed(path: KeyPath): boolean {
  if (path.length === 2) return path[0] !== "counterparts";
  return path.length === 4 && path[2] === "machines";
}

function shown(value: unknown): string {
  if (!isMapping(value)) return typeof value === "string" ? value : JSON.stringify(value);
  const { value: middle, low, high } = value;
  const number = JSON.stringify(middle);
  return low === undefined
    ? number
    : `${number} (${JSON.stringify(low)} to ${JSON.stringify(high)})`;
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
