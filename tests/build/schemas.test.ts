import { describe, expect, it } from "vitest";
import { z } from "zod";
import { writeSchemas } from "../../src/build/schemas.js";
import type { SchemaEntry } from "../../src/build/schemas.js";

function written(...entries: readonly SchemaEntry[]): Map<string, unknown> {
  const files = new Map<string, unknown>();
  writeSchemas(entries, (name, text) => files.set(name, JSON.parse(text)));
  return files;
}

describe("writeSchemas", () => {
  it("writes JSON Schema 2020-12, in which defaults need not be given", () => {
    const schema = z.strictObject({ site: z.string(), draws: z.number().min(30).default(10_000) });
    expect(written({ name: "plant", schema })).toEqual(
      new Map([
        [
          "plant.schema.json",
          {
            $schema: "https://json-schema.org/draft/2020-12/schema",
            type: "object",
            properties: {
              site: { type: "string" },
              draws: { type: "number", minimum: 30, default: 10_000 },
            },
            required: ["site"],
            additionalProperties: false,
          },
        ],
      ]),
    );
  });

  it("refuses two schemas of one name, and what JSON Schema cannot say", () => {
    const entry = { name: "plant", schema: z.string() };
    expect(() => written(entry, entry)).toThrow('Two schemas are called "plant"');
    expect(() => written({ name: "day", schema: z.date() })).toThrow();
  });
});
