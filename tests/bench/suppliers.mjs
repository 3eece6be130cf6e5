// Times the built tool on fifty suppliers: sealing, verifying and setting them side by side.
//
//     npm run build && node tests/bench/suppliers.mjs [suppliers]
//
// The fifty are the five invented ones, each ten times with other settings of the wash.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const TOP = fileURLToPath(new URL("../../", import.meta.url));
const TOOL = join(TOP, "dist", "cli", "main.js");
const KEPT = join(TOP, "examples", "suppliers");
const COUNT = Number(process.argv[2] ?? 50);
const NAMES = ["ash", "brook", "cliff", "dell", "eyot"];
const AS_OF = "2026-11-25";

const scratch = mkdtempSync(join(tmpdir(), "millrace-suppliers-"));

/** Runs the tool and gives seconds. */
function timed(...words) {
  const started = performance.now();
  const { status, stderr } = spawnSync(process.execPath, [TOOL, ...words], { encoding: "utf8" });
  if (status !== 0) throw new Error(`${words[0]} ended with ${status}:\n${stderr}`);
  return (performance.now() - started) / 1000;
}

const packs = [];
let sealing = 0;
for (let i = 0; i < COUNT; i++) {
  const name = NAMES[i % NAMES.length];
  const folder = join(scratch, `${name}-${i}`);
  cpSync(join(KEPT, name), folder, { recursive: true });
  const path = join(folder, "plant.yaml");
  const plant = readFileSync(path, "utf8");
  // Each steams a little hotter than the one before, so that no two are the same.
  writeFileSync(
    path,
    plant.replaceAll("steam.temperature: 102", `steam.temperature: ${102 + i / 50}`),
  );
  const pack = join(scratch, `${i}.pack.json`);
  const words = ["--plant", path, "--as-of", AS_OF, "--alias", `Supplier ${i}`, "--out", pack];
  sealing += timed("seal", ...words);
  packs.push(pack);
}
const mix = join(KEPT, "mix.yaml");
const verifying = timed("verify", ...packs);
const out = join(scratch, "out");
const words = ["--reference", mix, "--as-of", AS_OF, "--out", out];
const comparing = timed("suppliers", ...packs, ...words);
console.log(`seal       ${(sealing / COUNT).toFixed(2)} s a supplier`);
console.log(`verify     ${verifying.toFixed(1)} s for ${COUNT}`);
console.log(`suppliers  ${comparing.toFixed(1)} s for ${COUNT}, reports written`);
if (process.argv[3] === undefined) rmSync(scratch, { recursive: true });
else console.log(scratch);
