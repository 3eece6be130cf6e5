/**
 * `millrace start`: lays out a small mill to begin with.
 */

import {
  constants,
  copyFileSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { join } from "node:path";
import { EXIT } from "./exit.js";
import { shippedFolder } from "./files.js";
import { isTaken } from "./paths.js";
import { out, refuse } from "./say.js";

/** End of the name of a file until it is whole. */
const ASIDE = ".part";

/**
 * Runs the command. Nothing that stands is written over, and other files of the folder are left alone.
 *
 * @param folder - folder to lay out, made when missing, with those above it
 * @returns exit code
 */
export function start(folder: string): number {
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() === false) {
    return refuse([
      {
        code: "folder-is-file",
        severity: "refused",
        file: folder,
        expected: "a folder, not a file",
        remedy: "Choose another name; the folder is made where there is none.",
      },
    ]);
  }
  const from = join(shippedFolder("templates"), "mill");
  const names = readdirSync(from).sort();
  const standing = names
    .flatMap((name) => [name, `${name}${ASIDE}`])
    .filter((name) => isTaken(join(folder, name)));
  if (standing.length > 0) {
    return refuse([
      {
        code: "file-exists",
        severity: "refused",
        file: folder,
        expected: `a folder without ${standing.join(", ")}, as nothing is ever written over`,
        remedy: "Nothing was written. Move them away, or choose another folder.",
      },
    ]);
  }
  layOut(from, folder, names);
  out(`Laid out ${folder}: ${names.join(", ")}.`);
  out("Next:");
  if (folder !== ".") out(`  cd ${/^[\w./~-]+$/.test(folder) ? folder : JSON.stringify(folder)}`);
  out("  millrace check     judge the log");
  out("  millrace report    write out/report.html, out/report.pdf and out/report.json");
  out(
    "Then put your own lots into log.csv and your own machines into plant.yaml; the comments there say how.",
  );
  return EXIT.done;
}

// All files or none: they are copied aside, then renamed, and taken away again when one fails.
function layOut(from: string, folder: string, names: readonly string[]): void {
  const made = mkdirSync(folder, { recursive: true });
  const written: string[] = [];
  try {
    for (const name of names) {
      const aside = join(folder, `${name}${ASIDE}`);
      copyFileSync(join(from, name), aside, constants.COPYFILE_EXCL);
      written.push(aside);
    }
    for (const name of names) {
      const to = join(folder, name);
      renameSync(`${to}${ASIDE}`, to);
      written.push(to);
    }
  } catch (error) {
    for (const path of written) rmSync(path, { force: true });
    if (made !== undefined) rmSync(made, { recursive: true, force: true });
    throw error;
  }
}
