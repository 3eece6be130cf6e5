// Writes the reports of Weir Lane Prints, an invented print house, and the comparison of five invented suppliers into
// out/ at the top of the tree.
//
//     npm run demo
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../", import.meta.url));
const tool = join(top, "dist", "cli", "main.js");
// The day the report is dated, fixed so that the same report comes out whenever it is made.
const AS_OF = "2026-11-25";

if (!existsSync(tool)) {
  console.error(`${tool} is missing; run \`npm run build\` first.`);
  process.exit(2);
}
const out = join(top, "out");
for (const command of ["report", "invest"]) {
  run([tool, command, "--as-of", AS_OF, "--out", join("..", "..", "out")], "demo");
}
run([join(top, "examples", "compare-suppliers.mjs")], "suppliers");
const made = [
  ...["report.html", "report.pdf", "report.json", "setaside.csv", "invest.html", "invest.pdf"],
  ...["html", "pdf"].map((kind) => join("suppliers", `suppliers.${kind}`)),
].map((name) => join(out, name));
console.log(["Reports of invented houses:", ...made.filter(existsSync)].join("\n  "));

function run(words, folder) {
  const cwd = join(top, "examples", folder);
  const { status, error } = spawnSync(process.execPath, words, { cwd, stdio: "inherit" });
  if (error !== undefined) throw error;
  if (status !== 0) process.exit(status ?? 1);
}
