// Writes the list of vintages anew, when a value was added. A line that changed or went must not be
// committed: old reports could no longer be made again.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { vintages } from "./vintages.js";

writeFileSync(
  fileURLToPath(new URL("vintages.txt", import.meta.url)),
  `${vintages().join("\n")}\n`,
);
