// Writes the reports of Weir Lane Prints, an invented print house, into out/ at the top of the tree.
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
const words = ["report", "--as-of", AS_OF, "--out", "../../out"];
const { status, error } = spawnSync(process.execPath, [tool, ...words], {
  cwd: join(top, "examples", "demo"),
  stdio: "inherit",
});
if (error !== undefined) throw error;
const made = ["report.html", "report.pdf", "report.json", "setaside.csv"]
  .map((name) => join(top, "out", name))
  .filter((path) => existsSync(path));
if (status === 0) console.log(["Reports of the invented house:", ...made].join("\n  "));
process.exitCode = status ?? 1;
