/**
 * Judges plain data by a schema, and says each fault with file, line and key path.
 *
 * What was expected is said in the words of the schema itself: describe every leaf with a noun phrase.
 */

import * as z from "zod";
import type { Judged, Problem } from "../problems/problem.js";
import { nearest } from "./nearest.js";
import { type KeyPath, pathText, problemAt, valueAt, type YamlText } from "./yaml-text.js";

/**
 * Judges a YAML file by a schema.
 *
 * @param schema - what the file may say; objects strict, leaves described
 * @param yaml - the file
 * @returns what it says, or every fault: `unknown-key`, `missing-key`, `wrong-value`
 */
export function judgeBy<S extends z.ZodType>(schema: S, yaml: YamlText): Judged<z.output<S>> {
  const parsed = schema.safeParse(yaml.value);
  if (parsed.success) return { value: parsed.data, problems: [] };
  const { issues } = parsed.error;
  // A key that was misspelt is not missing as well.
  const meant = new Set(issues.flatMap((issue) => meantBy(issue, schema)).map(pathText));
  return {
    problems: issues
      .flatMap((issue) => problemsOf(issue, schema, yaml))
      .filter(({ code, key }) => code !== "missing-key" || !meant.has(key ?? "")),
  };
}

// Where the keys should stand that unknown ones come close to.
function meantBy(issue: z.core.$ZodIssue, schema: z.ZodType): readonly KeyPath[] {
  if (issue.code !== "unrecognized_keys") return [];
  const path = pathOf(issue);
  const known = keysOf(schemaAt(schema, path));
  return issue.keys.flatMap((key) => {
    const near = nearest(key, known);
    return near === undefined ? [] : [[...path, near]];
  });
}

/**
 * Path of an issue in the words of this house.
 *
 * @param issue - what a schema found
 * @returns keys and places
 */
export function pathOf(issue: Pick<z.core.$ZodIssue, "path">): KeyPath {
  return issue.path.map((step) => (typeof step === "number" ? step : String(step)));
}

function problemsOf(issue: z.core.$ZodIssue, schema: z.ZodType, yaml: YamlText): Problem[] {
  const path = pathOf(issue);
  if (issue.code === "unrecognized_keys") {
    const known = keysOf(schemaAt(schema, path));
    return issue.keys.map((key) => unknownKey(yaml, [...path, key], key, known));
  }
  const value = valueAt(yaml.value, path);
  const expected = wordsAt(schema, path) ?? "a value that this key can have";
  if (value === undefined && path.length > 0) {
    const key = String(path.at(-1));
    const remedy = "Add the key.";
    return [
      problemAt(yaml, path, { code: "missing-key", expected: `${key}: ${expected}`, remedy }),
    ];
  }
  if (issue.code === "invalid_key") {
    const expectedKey = keyWords(schemaAt(schema, path.slice(0, -1)));
    const key = String(path.at(-1));
    return [
      problemAt(yaml, path, {
        code: "unknown-key",
        value: key,
        expected: expectedKey,
        remedy: "Correct the key.",
      }),
    ];
  }
  return [
    problemAt(yaml, path, {
      code: "wrong-value",
      value: shown(value),
      expected,
      remedy: "Correct the value.",
    }),
  ];
}

function unknownKey(yaml: YamlText, path: KeyPath, key: string, known: readonly string[]): Problem {
  const meant = nearest(key, known);
  return problemAt(yaml, path, {
    code: "unknown-key",
    value: key,
    expected: `one of ${known.join(", ")}`,
    remedy: meant === undefined ? "Leave the key out." : `Write ${meant} if that was meant.`,
  });
}

/**
 * Part of a schema that a path leads to.
 *
 * @param schema - the whole
 * @param path - keys and places
 * @returns the part, or undefined where the schema knows no such key
 */
export function schemaAt(schema: unknown, path: KeyPath): z.ZodType | undefined {
  let at = bare(schema);
  for (const step of path) {
    if (at instanceof z.ZodObject) at = bare((at.shape as Record<string, unknown>)[step]);
    else if (at instanceof z.ZodRecord) at = bare(at.valueType);
    else if (at instanceof z.ZodArray) at = bare(at.element);
    else return undefined;
  }
  return at;
}

// Words of the value itself, or else those of the key that it may stand under.
function wordsAt(schema: z.ZodType, path: KeyPath): string | undefined {
  const around = schemaAt(schema, path.slice(0, -1));
  const key = String(path.at(-1));
  const part =
    around instanceof z.ZodObject
      ? (around.shape as Readonly<Record<string, z.ZodType | undefined>>)[key]
      : undefined;
  return schemaAt(schema, path)?.description ?? part?.description;
}

function bare(schema: unknown): z.ZodType | undefined {
  let at = schema;
  while (at instanceof z.ZodOptional || at instanceof z.ZodNullable) at = at.unwrap();
  return at instanceof z.ZodType ? at : undefined;
}

function keysOf(schema: z.ZodType | undefined): readonly string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : [];
}

function keyWords(schema: z.ZodType | undefined): string {
  const key = schema instanceof z.ZodRecord ? bare(schema.keyType) : undefined;
  return key?.description ?? "a key this mapping can have";
}

function shown(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value);
}
