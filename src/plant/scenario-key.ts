/**
 * Finds what a dotted key of the plant file names, where names of the file may hold dots of their own.
 */

import * as z from "zod";
import { schemaAt } from "../factors/schema-problems.js";
import { type KeyPath, valueAt } from "../factors/yaml-text.js";
import { type PlantText, ScenarioFile } from "./schema.js";

/** Where a key leads, or the word at which it leads nowhere. */
export type FoundKey =
  | { readonly path: KeyPath }
  | {
      /** The word that is not known. */
      readonly word: string;
      /** What it was looked for under. */
      readonly under: KeyPath;
      /** Words that are known there. */
      readonly known: readonly string[];
    };

/**
 * Finds a key that a scenario may name. Settings and choices may be named without the word `settings` or
 * `choices` before them, as `sites.main.boiler.efficiency`.
 *
 * @param text - the plant file, for the names in it
 * @param key - the key, such as `sites.main.settings.boiler.efficiency`
 * @param value - what it is given: words are choices, all else are settings
 * @returns the path in a scenario, or the first word that leads nowhere
 */
export function findKey(text: PlantText, key: string, value: unknown): FoundKey {
  return find(text, typeof value === "string" ? "choices" : "settings", [], key);
}

function find(
  text: PlantText,
  lenient: "choices" | "settings",
  path: KeyPath,
  rest: string,
): FoundKey {
  if (rest === "") return { path };
  const schema = schemaAt(ScenarioFile, path);
  const word = rest.split(".")[0] ?? "";
  const after = (name: string): string => rest.slice(name.length + 1);
  if (schema instanceof z.ZodRecord) {
    const inner = schemaAt(schema, [""]);
    // What stands under a name of the mill's own is a thing with keys; all else goes by any name.
    if (!(inner instanceof z.ZodObject)) return { path: [...path, rest] };
    const there = valueAt(text, path);
    const known = typeof there === "object" && there !== null ? Object.keys(there) : [];
    const name = known
      .filter((one) => rest === one || rest.startsWith(`${one}.`))
      .sort((a, b) => b.length - a.length)[0];
    if (name === undefined) return { word, under: path, known };
    return find(text, lenient, [...path, name], after(name));
  }
  // What a scenario says of itself changes nothing.
  const known = (schema instanceof z.ZodObject ? Object.keys(schema.shape) : []).filter(
    (one) => one !== "note",
  );
  const strict: FoundKey = known.includes(word)
    ? find(text, lenient, [...path, word], after(word))
    : { word, under: path, known };
  // Names of settings hold a dot but for those of a machine, which knows itself whose they are. A slip in a
  // name of the mill's own is none of them.
  const named = schemaAt(ScenarioFile, [...path, word]) instanceof z.ZodRecord;
  const may = known.includes(lenient) && !named && (rest.includes(".") || known.includes("kind"));
  return "path" in strict || !may ? strict : { path: [...path, lenient, rest] };
}
