// Adds the lines of new values to the list of vintages. A line that changed or went is not touched: old reports
// could no longer be made again. Put the old value back and enter the new one above it, with a later day.
import { writeFileSync } from "node:fs";
import { exit } from "node:process";
import { fileURLToPath } from "node:url";
import { textOf } from "./tree.js";
import { vintages } from "./vintages.js";

const listed = textOf("tests/tools/vintages.txt").trim().split("\n");
const now = vintages();
const gone = listed.filter((line) => !now.includes(line));
if (gone.length > 0) {
  console.error(`These lines changed or went:\n${gone.join("\n")}`);
  exit(1);
}
writeFileSync(fileURLToPath(new URL("vintages.txt", import.meta.url)), `${now.join("\n")}\n`);
