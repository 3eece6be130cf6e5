/**
 * `millrace verify`: checks packs, and says of each check whether it passed.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import type { Problem } from "../problems/problem.js";
import type { FactorSet } from "../factors/factor.js";
import { loadFactors } from "../factors/load.js";
import { sha256Hex } from "../numbers/digest.js";
import { canonicalText } from "../suppliers/canonical.js";
import { drawShelf } from "../suppliers/draw-shelf.js";
import { readPublicKey } from "../suppliers/signature.js";
import { PACK_LIMITS } from "../suppliers/strict-json.js";
import { NOT_TRUE, type Verified, verifyPack } from "../suppliers/verify.js";
import type { Part } from "../suppliers/work-out.js";
import { EXIT } from "./exit.js";
import { builtFile, shippedFolder, yamlFiles } from "./files.js";
import { programDigest } from "./program-digest.js";
import { data, out, progress, refuse } from "./say.js";

/** Options of the command. */
export interface VerifyOptions {
  /** File of the public key that packs must be signed by. */
  readonly key?: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Leaves whose draws are kept from one pack to the next. */
const KEPT = 1500;

/**
 * Runs the command.
 *
 * @param packs - paths of packs
 * @param options - options
 * @returns exit code: refused when a check of any pack failed
 */
export function verify(packs: readonly string[], options: VerifyOptions): number {
  const { key, problems } = publicKeyIn(options.key);
  const absent = packs.filter((path) => !existsSync(path)).map(noPack);
  const unready = [...problems, ...absent];
  if (unready.length > 0) return refuse(unready, options.json);
  progress("checking");
  const checked = verifyAll(packs, shippedFactors(), key);
  progress("");
  if (options.json === true)
    data({
      packs: checked.map(({ file, sound, checks }) => ({ file, sound, checks })),
      remark: NOT_TRUE,
    });
  else {
    for (const one of checked) tellChecks(one);
    out(NOT_TRUE);
  }
  return checked.every(({ sound }) => sound) ? EXIT.done : EXIT.refused;
}

/**
 * Verifies packs, each against all others for the chain.
 *
 * @param packs - paths
 * @param shipped - shipped factors
 * @param key - public key that packs must be signed by
 * @param part - how much of each is worked out anew
 * @returns a result a pack
 */
export function verifyAll(
  packs: readonly string[],
  shipped: FactorSet,
  key?: string,
  part: Part = "all",
): readonly Verified[] {
  const files = packs.map((path) => ({ path, bytes: bytesOf(path) }));
  let digests: readonly string[] | undefined;
  const others = (): readonly string[] =>
    (digests ??= files.flatMap(({ bytes }) => digestIn(bytes)));
  const code = programDigest();
  const keep = drawShelf(KEPT);
  return files.map(({ path, bytes }) =>
    verifyPack(path, bytes, {
      shipped,
      code,
      others,
      keep,
      part,
      ...(key === undefined ? {} : { key }),
    }),
  );
}

/**
 * The shipped factors alone.
 *
 * @returns the set
 * @throws Error when they cannot be read, which is a fault of the tool
 */
export function shippedFactors(): FactorSet {
  const pack = builtFile("factors.json");
  const { value } = loadFactors(
    yamlFiles(shippedFolder("factors")),
    [],
    existsSync(pack) ? readFileSync(pack, "utf8") : undefined,
  );
  if (value === undefined) throw new Error("The shipped factors cannot be read.");
  return value;
}

// What is larger than any pack is not read whole; one byte too many is enough to be refused.
function bytesOf(path: string): Uint8Array {
  return statSync(path).size > PACK_LIMITS.bytes
    ? new Uint8Array(PACK_LIMITS.bytes + 1)
    : readFileSync(path);
}

function digestIn(bytes: Uint8Array): readonly string[] {
  try {
    const { pack } = JSON.parse(new TextDecoder().decode(bytes)) as { readonly pack?: unknown };
    return pack === undefined ? [] : [sha256Hex(canonicalText(pack))];
  } catch {
    return [];
  }
}

function publicKeyIn(path: string | undefined): {
  readonly key?: string;
  readonly problems: readonly Problem[];
} {
  if (path === undefined) return { problems: [] };
  if (!existsSync(path)) return { problems: [noPack(path)] };
  const { value, problems } = readPublicKey(path, readFileSync(path, "utf8"));
  return { ...(value === undefined ? {} : { key: value }), problems };
}

function noPack(file: string): Problem {
  return {
    code: "file-missing",
    severity: "refused",
    file,
    expected: "a file at this path",
    remedy: "Check the path.",
  };
}

function tellChecks({ file, sound, checks, sealed }: Verified): void {
  const name = sealed === undefined ? "" : `, ${sealed.pack.alias}`;
  out(`${file}${name}: ${sound ? "no check failed" : "refused"}`);
  for (const { id, outcome, found, places } of checks) {
    out(`  ${outcome.padEnd(12)} ${id.padEnd(10)} ${found}`);
    if (outcome === "fail" && places.length > 0) out(`${" ".repeat(26)}at ${places.join(", ")}`);
  }
}
