/**
 * `millrace start`: lays out a small mill to begin with.
 */

import { copyFileSync, existsSync, mkdirSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { EXIT } from "./exit.js";
import { shippedFolder } from "./files.js";
import { err, out } from "./say.js";

/**
 * Runs the command. Nothing that stands is written over.
 *
 * @param folder - folder to lay out
 * @returns exit code
 */
export function start(folder: string): number {
  const from = join(shippedFolder("templates"), "mill");
  const names = readdirSync(from);
  const standing = names.filter((name) => existsSync(join(folder, name)));
  if (standing.length > 0) {
    err(
      `${folder} already holds ${standing.join(", ")}; choose an empty folder, or move them away.`,
    );
    return EXIT.refused;
  }
  mkdirSync(folder, { recursive: true });
  for (const name of names) copyFileSync(join(from, name), join(folder, name));
  out(`Laid out ${folder}: ${names.join(", ")}.`);
  out("Next:");
  out(`  cd ${folder}`);
  out("  millrace check     judge the log");
  out("  millrace report    write out/report.html, out/report.pdf and out/report.json");
  out(
    "Then put your own lots into log.csv and your own machines into plant.yaml; the comments there say how.",
  );
  return EXIT.done;
}
