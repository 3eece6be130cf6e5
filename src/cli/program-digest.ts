/**
 * Digest of the program, so that a pack says what made it.
 */

import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { Digest, sha256Hex } from "../numbers/digest.js";
import { builtFile } from "./files.js";

/**
 * Digest of the built command line.
 *
 * @returns SHA-256 of the list of its scripts with their SHA-256, sorted by name, as `sha256sum *.js` prints it
 */
export function programDigest(): string {
  const folder = dirname(builtFile("cli/main.js"));
  const digest = new Digest();
  for (const name of readdirSync(folder)
    .filter((one) => one.endsWith(".js"))
    .sort())
    digest.update(`${sha256Hex(readFileSync(join(folder, name)))}  ${name}\n`);
  return digest.hex();
}
