/**
 * Lays a change over what the plant file says so far.
 */

import * as z from "zod";
import { schemaAt } from "../factors/schema-problems.js";
import { type KeyPath, pathText } from "../factors/yaml-text.js";
import { type LaidOver, PlantFile, type PlantText } from "./schema.js";

/** Parts of the file that a change may name. */
const PARTS = ["sites", "routes", "counterparts"] as const;

/**
 * Lays a change over a plant file: mappings are merged key by key, everything else is put in place of what
 * stood there. A number with its ends is one thing, so the ends of the old one do not outlive it. Numbers
 * of the change carry their place in their source.
 *
 * @param before - the file with all earlier changes
 * @param change - the change; machines, sites and routes that are new in it are whole
 * @param placed - says where a key of the change stands
 * @returns the file as of the change
 */
export function mergeChange(
  before: PlantText,
  change: LaidOver,
  placed: (where: string) => string,
): PlantText {
  const laid = (path: KeyPath, old: unknown, given: unknown): unknown => {
    const schema = schemaAt(PlantFile, path);
    if (schema instanceof z.ZodUnion) return sourced(placed(pathText(path)), given);
    const mapping = schema instanceof z.ZodObject || schema instanceof z.ZodRecord;
    if (!mapping || !isMapping(given)) return given;
    const merged: Record<string, unknown> = isMapping(old) ? { ...old } : {};
    for (const [key, value] of Object.entries(given)) {
      if (value !== undefined) merged[key] = laid([...path, key], merged[key], value);
    }
    return merged;
  };
  const parts = PARTS.filter((part) => change[part] !== undefined);
  return PlantFile.parse({
    ...before,
    ...Object.fromEntries(parts.map((part) => [part, laid([part], before[part], change[part])])),
  });
}

// Unions of the schema are numbers, bare or with ends.
function sourced(place: string, given: unknown): unknown {
  if (!isMapping(given)) return { value: given, source: place };
  const source = given["source"];
  return { ...given, source: typeof source === "string" ? `${place}: ${source}` : place };
}

function isMapping(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
