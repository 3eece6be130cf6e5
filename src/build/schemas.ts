import { z } from "zod";

/** A kind of file that users write. */
export interface SchemaEntry {
  /** Name of the file without its ending, such as `plant`. */
  readonly name: string;
  /** What the file may hold. */
  readonly schema: z.ZodType;
}

/**
 * Writes JSON Schemas for the files users write, so that their editors complete and check them.
 *
 * @param entries - kinds of files
 * @param write - takes each schema as text by the name of its file
 * @throws Error when two entries have one name, or a schema cannot be written as JSON Schema
 * @see JSON Schema, draft 2020-12
 */
export function writeSchemas(
  entries: readonly SchemaEntry[],
  write: (name: string, text: string) => void,
): void {
  const names = new Set<string>();
  for (const { name, schema } of entries) {
    if (names.has(name)) throw new Error(`Two schemas are called "${name}".`);
    names.add(name);
    // What may be left out of a file, and is filled in on reading, is optional for an editor.
    const json = z.toJSONSchema(schema, { target: "draft-2020-12", io: "input" });
    write(`${name}.schema.json`, `${JSON.stringify(json, undefined, 2)}\n`);
  }
}
