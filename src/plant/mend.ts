/**
 * Makes plain data fit a schema by taking out what does not, so that the rest can still be judged.
 */

import * as z from "zod";
import { pathOf, schemaAt } from "../factors/schema-problems.js";
import { type KeyPath, valueAt } from "../factors/yaml-text.js";

/** Data that fit, with what was taken out. */
export interface Mended<T> {
  /** The data; absent when nothing is left that fits. */
  readonly value?: T;
  /** Where something was at fault, left out or put in its place. */
  readonly refused: readonly KeyPath[];
}

/** What stands in for a value that may not be absent; nothing is said of it afterwards. */
const STAND_INS: readonly unknown[] = ["?", "1970-01-01", 1, {}, []];

/**
 * Takes out of plain data what a schema refuses. A key that must stand keeps a value that fits, or goes
 * with the thing it belongs to.
 *
 * @param schema - what the data may say
 * @param value - the data
 * @returns the rest, and every place that was refused
 */
export function mend<S extends z.ZodType>(schema: S, value: unknown): Mended<z.output<S>> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return { value: parsed.data, refused: [] };
  const copy = structuredClone(value);
  const refused = parsed.error.issues.flatMap((issue): readonly KeyPath[] => {
    const path = pathOf(issue);
    return issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...path, key]) : [path];
  });
  const taken = refused.flatMap((path) => takeOut(schema, copy, path));
  const again = schema.safeParse(copy);
  return { ...(again.success ? { value: again.data } : {}), refused: [...refused, ...taken] };
}

// Takes out the smallest thing around a path that can go, and says where that was.
function takeOut(schema: z.ZodType, whole: unknown, path: KeyPath): readonly KeyPath[] {
  for (let at = path; at.length > 0; at = at.slice(0, -1)) {
    const key = at.at(-1) ?? "";
    const around = valueAt(whole, at.slice(0, -1));
    if (typeof around !== "object" || around === null) continue;
    if (mayBeAbsent(schemaAt(schema, at.slice(0, -1)), key)) {
      Reflect.deleteProperty(around, key);
      return [at];
    }
    const wanted = schemaAt(schema, at);
    const standIn = STAND_INS.find((candidate) => wanted?.safeParse(candidate).success);
    if (standIn !== undefined) {
      Reflect.set(around, key, structuredClone(standIn));
      return [at];
    }
  }
  return [];
}

function mayBeAbsent(around: z.ZodType | undefined, key: string | number): boolean {
  if (around instanceof z.ZodRecord) return true;
  if (!(around instanceof z.ZodObject)) return false;
  const part = (around.shape as Readonly<Record<string, unknown>>)[key];
  return part === undefined || part instanceof z.ZodOptional;
}
