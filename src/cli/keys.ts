/**
 * `millrace keys`: makes a pair of keys to sign packs with.
 */

import { randomBytes } from "node:crypto";
import { writeFileSync } from "node:fs";
import { keyFiles } from "../suppliers/signature.js";
import { EXIT } from "./exit.js";
import { isTaken } from "./paths.js";
import { data, out, refuse } from "./say.js";

/**
 * Runs the command. The private key is written for its owner alone to read, never printed, and no file is
 * written over.
 *
 * @param name - name of the files, without their endings
 * @param options - whether to print data
 * @param options.json - whether to print data
 * @returns exit code
 */
export function keys(name: string, options: { readonly json?: boolean }): number {
  const [secret, open] = [`${name}.private`, `${name}.public`];
  const taken = [secret, open].filter(isTaken);
  if (taken.length > 0)
    return refuse(
      taken.map((file) => ({
        code: "file-exists",
        severity: "refused",
        file,
        expected: "no file of this name: keys are never written over",
        remedy: "Choose another name, or move the old keys away.",
      })),
      options.json,
    );
  const seed = randomBytes(32);
  const files = keyFiles(new Uint8Array(seed));
  seed.fill(0);
  // `wx` fails where something has come to stand in the meantime.
  writeFileSync(secret, files.secret, { flag: "wx", mode: 0o600 });
  writeFileSync(open, files.open, { flag: "wx", mode: 0o644 });
  if (options.json === true) {
    data({ private: secret, public: open, fingerprint: files.fingerprint });
    return EXIT.done;
  }
  out(secret);
  out(open);
  out(`fingerprint ${files.fingerprint}`);
  out("Keep the first to yourself; give the second to buyers, and its fingerprint by another way.");
  return EXIT.done;
}
