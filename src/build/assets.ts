// Makes what ships beside the compiled code: typeface and JSON Schemas. Run as
// `node dist/build/assets.js` after the compiler.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { makeFonts } from "./fonts.js";
import type { SchemaEntry } from "./schemas.js";
import { writeSchemas } from "./schemas.js";

/** Files that users write, each with the schema that checks it. */
const SCHEMAS: readonly SchemaEntry[] = [];

const TYPEFACE = dirname(
  createRequire(import.meta.url).resolve("@expo-google-fonts/inter/package.json"),
);

function folder(name: string): (file: string, content: string | Uint8Array) => void {
  const path = fileURLToPath(new URL(`../${name}/`, import.meta.url));
  mkdirSync(path, { recursive: true });
  return (file, content) => writeFileSync(join(path, file), content);
}

await makeFonts((path) => readFileSync(join(TYPEFACE, path)), folder("fonts"));
writeSchemas(SCHEMAS, folder("schemas"));
