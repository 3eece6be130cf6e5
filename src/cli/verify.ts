/**
 * `millrace verify`: checks packs, and says of each check whether it passed.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import type { FactorSet } from "../factors/factor.js";
import { loadFactors } from "../factors/load.js";
import { sha256Hex } from "../numbers/digest.js";
import { canonicalText } from "../suppliers/canonical.js";
import { drawShelf } from "../suppliers/draw-shelf.js";
import { fingerprintOf } from "../suppliers/signature.js";
import { PACK_LIMITS } from "../suppliers/strict-json.js";
import type { VerifySetting } from "../suppliers/check.js";
import { NOT_CHECKED } from "../suppliers/standing-checks.js";
import { NOT_TRUE, type Verified, verifyPack } from "../suppliers/verify.js";
import { EXIT } from "./exit.js";
import { builtFile, shippedFolder, yamlFiles } from "./files.js";
import { programDigest } from "./program-digest.js";
import { publicKeyIn, unreadable } from "./known-keys.js";
import { policyOf } from "./claims.js";
import { data, out, progress, refuse, tell } from "./say.js";

/** Options of the command. */
export interface VerifyOptions {
  /** File of the public key that packs must be signed by. */
  readonly key?: string;
  /** Day of who reads them. */
  readonly today?: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Version of the tool, as in package.json. */
const VERSION = "0.1.0";

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
  // A file that is not there hides no fault of the others.
  const absent = packs.flatMap(unreadable);
  const there = packs.filter((path) => unreadable(path).length === 0);
  if (problems.length > 0 || there.length === 0)
    return refuse([...problems, ...absent], options.json);
  progress("checking");
  const checked = verifyAll(there, shippedFactors(), {
    ...(key === undefined ? {} : { key }),
    ...(options.today === undefined ? {} : { today: options.today }),
  });
  progress("");
  if (options.json === true)
    data({
      packs: checked.map(({ file, sound, checks }) => ({ file, sound, checks })),
      absent,
      remark: NOT_TRUE,
      unchecked: NOT_CHECKED,
    });
  else {
    for (const one of checked) tellChecks(one);
    tell(absent);
    out(NOT_CHECKED);
    out(NOT_TRUE);
  }
  return absent.length === 0 && checked.every(({ sound }) => sound) ? EXIT.done : EXIT.refused;
}

/**
 * Verifies packs, each against all others for the chain.
 *
 * @param packs - paths of files
 * @param shipped - shipped factors
 * @param setting - keys, day and how much of each is worked out anew
 * @returns a result a pack
 */
export function verifyAll(
  packs: readonly string[],
  shipped: FactorSet,
  setting: Pick<VerifySetting, "key" | "keys" | "today" | "part"> = {},
): readonly Verified[] {
  const files = packs.map((path) => ({ path, bytes: bytesOf(path) }));
  let known: ReadonlyMap<string, unknown> | undefined;
  const others = (): ReadonlyMap<string, unknown> =>
    (known ??= new Map(files.flatMap(({ bytes }) => digestIn(bytes))));
  const code = programDigest();
  const keep = drawShelf(KEPT);
  const { policy } = policyOf(shippedFolder("templates"));
  return files.map(({ path, bytes }) =>
    verifyPack(path, bytes, {
      ...setting,
      shipped,
      code,
      version: VERSION,
      others,
      keep,
      ...(policy === undefined ? {} : { policy }),
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

function digestIn(bytes: Uint8Array): readonly (readonly [string, unknown])[] {
  try {
    const { pack } = JSON.parse(new TextDecoder().decode(bytes)) as { readonly pack?: unknown };
    return pack === undefined ? [] : [[sha256Hex(canonicalText(pack)), pack]];
  } catch {
    return [];
  }
}

function tellChecks({ file, sound, checks, sealed }: Verified): void {
  const name = sealed === undefined ? "" : `, ${sealed.pack.alias}`;
  const signature = sealed?.seal.signature;
  const said =
    signature === undefined
      ? "whole, not signed: anyone could have resealed it"
      : `whole, signed with key ${fingerprintOf(signature.key)}`;
  out(`${file}${name}: ${sound ? said : "refused"}`);
  for (const { id, outcome, found, places } of checks) {
    out(`  ${outcome.padEnd(12)} ${id.padEnd(10)} ${found}`);
    if ((outcome === "fail" || outcome === "flag") && places.length > 0)
      out(`${" ".repeat(26)}at ${places.join(", ")}`);
  }
}
