/**
 * `millrace seal`: writes a mill's evidence into one small file that a buyer can check.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { MissingFactor } from "../plant/quantities.js";
import type { Problem } from "../problems/problem.js";
import { sha256Hex } from "../numbers/digest.js";
import { canonicalText } from "../suppliers/canonical.js";
import { makePack, sealed } from "../suppliers/make-pack.js";
import { PackSchema } from "../suppliers/schema.js";
import { fingerprintOf, readPrivateKey, sign } from "../suppliers/signature.js";
import { PACK_LIMITS, readStrictJson } from "../suppliers/strict-json.js";
import { checkPeriod } from "./arguments.js";
import { type EvidenceOptions, evidenceOf } from "./evidence.js";
import { EXIT } from "./exit.js";
import { writeAll } from "./files.js";
import { foldersAmong } from "./paths.js";
import { data, err, out, progress, refuse, tell } from "./say.js";

/** Options of the command. */
export interface SealOptions extends EvidenceOptions {
  /** File to write. */
  readonly out: string;
  /** File of the private key. */
  readonly key?: string;
  /** Name of the supplier in the pack. */
  readonly alias?: string;
  /** The pack before this one. */
  readonly previous?: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Problems shown before the rest is counted. */
const SHOWN = 3;

/**
 * Runs the command.
 *
 * @param logs - paths of logs
 * @param options - options
 * @returns exit code
 */
export async function seal(logs: readonly string[], options: SealOptions): Promise<number> {
  checkPeriod(options);
  const folders = foldersAmong(options.plant, logs);
  if (folders.length > 0) return refuse(folders, options.json);
  const key = keyIn(options.key);
  const previous = digestIn(options.previous);
  const unready = [...key.problems, ...previous.problems];
  if (unready.length > 0) return refuse(unready, options.json);
  progress("reading the log");
  const { input, problems } = await evidenceOf(
    logs,
    options,
    options.alias ?? "a supplier without a name",
  );
  if (input === undefined) return refuse(problems, options.json);
  progress("working the pack out");
  let made: ReturnType<typeof makePack>;
  try {
    made = makePack({
      ...input,
      ...(previous.digest === undefined ? {} : { previous: previous.digest }),
    });
  } catch (error) {
    if (error instanceof MissingFactor) return refuse([noFactor(error)], options.json);
    throw error;
  }
  if (made.value === undefined) return refuse(made.problems, options.json);
  const unfit = tooLong(PackSchema.safeParse(made.value).error?.issues ?? []);
  if (unfit.length > 0) return refuse(unfit, options.json);
  const text = sealed(made.value, key.seed);
  if (text.length > PACK_LIMITS.bytes) return refuse([tooLarge(text.length)], options.json);
  progress("");
  const [written = ""] = writeAll(dirname(options.out), new Map([[basename(options.out), text]]));
  const digest = sha256Hex(canonicalText(made.value));
  const signer = key.seed === undefined ? undefined : fingerprintOf(sign("", key.seed).key);
  if (options.json === true) {
    data({ written, digest, bytes: text.length, signer: signer ?? null });
    return EXIT.done;
  }
  const bad = problems.filter(({ severity }) => severity !== "corrected");
  tell(bad.slice(0, SHOWN));
  if (bad.length > SHOWN)
    err(`… and ${bad.length - SHOWN} more; \`millrace check\` lists them all.`);
  const { totals, counts } = made.value;
  const home = counts.accepted + counts.corrected - totals.lots;
  if (home > 0)
    err(
      `${home} ${home === 1 ? "lot is" : "lots are"} not in the pack: fewer than three of the same cloth on the same route.`,
    );
  if (key.open) err(`warning: ${options.key ?? ""} can be read by others; take that right away.`);
  out(written);
  out(`SHA-256 ${digest}`);
  out(signer === undefined ? "not signed" : `signed, key ${signer}`);
  return EXIT.done;
}

function keyIn(path: string | undefined): {
  readonly seed?: Uint8Array;
  readonly open: boolean;
  readonly problems: readonly Problem[];
} {
  if (path === undefined) return { open: false, problems: [] };
  if (!existsSync(path)) return { open: false, problems: [missing(path, "a private key")] };
  const { value, problems } = readPrivateKey(path, readFileSync(path, "utf8"));
  const open = process.platform !== "win32" && (statSync(path).mode & 0o077) !== 0;
  return { ...(value === undefined ? {} : { seed: value }), open, problems };
}

function digestIn(path: string | undefined): {
  readonly digest?: string;
  readonly problems: readonly Problem[];
} {
  if (path === undefined) return { problems: [] };
  if (!existsSync(path)) return { problems: [missing(path, "the pack before this one")] };
  const { value, problems } = readStrictJson(path, readFileSync(path));
  if (value === undefined) return { problems };
  const { pack } = value.value as { readonly pack?: unknown };
  return pack === undefined
    ? { problems: [missing(path, "a pack that `millrace seal` wrote")] }
    : { digest: sha256Hex(canonicalText(pack)), problems: [] };
}

function missing(file: string, expected: string): Problem {
  return {
    code: "file-missing",
    severity: "refused",
    file,
    expected,
    remedy: "Check the path.",
  };
}

function noFactor({ id, message }: MissingFactor): Problem {
  return {
    code: "factor-missing",
    severity: "refused",
    value: id,
    expected: `a factor in force (${message})`,
    remedy: "Put a value into `factors/` beside the plant file, or choose a later --as-of.",
  };
}

function tooLong(
  issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[],
): readonly Problem[] {
  return issues.map(({ path, message }) => ({
    code: "pack-unfit",
    severity: "refused",
    key: path.map(String).join("."),
    expected: `what a pack may hold: ${message}`,
    remedy: "Shorten the name or text, or seal a shorter period or one site.",
  }));
}

function tooLarge(bytes: number): Problem {
  return {
    code: "pack-too-large",
    severity: "refused",
    value: `${bytes} bytes`,
    expected: `at most ${PACK_LIMITS.bytes} bytes`,
    remedy: "Seal a shorter period, or one site at a time.",
  };
}
