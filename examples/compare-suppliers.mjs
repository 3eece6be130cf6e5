// Seals the five invented suppliers of examples/suppliers, checks their packs, and sets them side by side at the
// buyer's mix; all of it goes into out/suppliers/ at the top of the tree.
//
//     npm run build && node examples/compare-suppliers.mjs
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const top = fileURLToPath(new URL("../", import.meta.url));
const tool = join(top, "dist", "cli", "main.js");
const folder = join(top, "examples", "suppliers");
const out = join(top, "out", "suppliers");
// The day of packs and report, fixed so that the same come out whenever they are made.
const AS_OF = "2026-11-25";

if (!existsSync(tool)) {
  console.error(`${tool} is missing; run \`npm run build\` first.`);
  process.exit(2);
}
function millrace(...words) {
  const { status, error } = spawnSync(process.execPath, [tool, ...words], { stdio: "inherit" });
  if (error !== undefined) throw error;
  if (status !== 0) process.exit(status ?? 1);
}

mkdirSync(out, { recursive: true });
const packs = ["ash", "brook", "cliff", "dell", "eyot"].map((name) => {
  const pack = join(out, `${name}.pack.json`);
  const alias = `Supplier ${name[0].toUpperCase()}${name.slice(1)}`;
  const plant = join(folder, name, "plant.yaml");
  millrace("seal", "--plant", plant, "--as-of", AS_OF, "--alias", alias, "--out", pack);
  return pack;
});
const mix = join(folder, "mix.yaml");
millrace("suppliers", ...packs, "--reference", mix, "--as-of", AS_OF, "--out", out);
