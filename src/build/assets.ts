// Makes what ships beside the compiled code: typeface and JSON Schemas. Run as
// `node dist/build/assets.js` after the compiler.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { loadFactors } from "../factors/load.js";
import { packFactors } from "../factors/packed.js";
import { FactorFile } from "../factors/schema.js";
import { InvestFile } from "../invest/schema.js";
import { LogDialectSchema } from "../log/dialect.js";
import { LogRowSchema } from "../log/row-schema.js";
import { PlantFile } from "../plant/schema.js";
import { MixFile } from "../suppliers/reference.js";
import { SealedSchema } from "../suppliers/schema.js";
import { bundleCommands } from "./bundle.js";
import { makeFonts } from "./fonts.js";
import type { SchemaEntry } from "./schemas.js";
import { writeSchemas } from "./schemas.js";

/** Files that users write, each with the schema that checks it. */
const SCHEMAS: readonly SchemaEntry[] = [
  { name: "plant", schema: PlantFile },
  { name: "log-dialect", schema: LogDialectSchema },
  { name: "log-row", schema: LogRowSchema },
  { name: "factors", schema: FactorFile },
  { name: "pack", schema: SealedSchema },
  { name: "mix", schema: MixFile },
  { name: "invest", schema: InvestFile },
];

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

// Reading YAML takes longer than all drawing; a pack of the same content is read instead.
const shipped = fileURLToPath(new URL("../../factors/", import.meta.url));
const { value: factors } = loadFactors(
  readdirSync(shipped)
    .filter((name) => name.endsWith(".yaml"))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(shipped, name), "utf8") })),
  [],
);
if (factors === undefined) throw new Error("The shipped factors cannot be read; run the tests.");
folder(".")("factors.json", packFactors(factors));

const top = fileURLToPath(new URL("../../", import.meta.url));
await bundleCommands(top, join(top, "dist", "cli"));
