/**
 * Checks a pack that came from somebody else, from its bytes to its last figure.
 *
 * An unchanged and signed pack is not thereby true: digests show that nothing was changed since it was sealed, a
 * signature shows by whom, and working it out again shows that the figures follow from the sums inside. None of
 * them shows that the lots were logged as they were printed.
 */

import type { DrawKeep } from "../account/draws.js";
import type { Program } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import { judgeBy } from "../factors/schema-problems.js";
import { sha256Hex } from "../numbers/digest.js";
import { canonicalParts, canonicalText } from "./canonical.js";
import { firstDifference } from "./differences.js";
import { factorDifferences } from "./factor-list.js";
import { type Pack, PARTS, type SealedPack, SealedSchema } from "./schema.js";
import { fingerprintOf, signed } from "./signature.js";
import { readStrictJson } from "./strict-json.js";
import { sumFaults } from "./sums.js";
import { recompute } from "./recompute.js";
import type { Part } from "./work-out.js";

/** Checks, in the order they are made. */
export const CHECKS = [
  ...(["file", "fields", "canonical", "digest", "signature", "signer", "chain"] as const),
  ...(["sums", "boundary", "factors", "figures", "coverage", "claims"] as const),
] as const;

/** A check. */
export type CheckId = (typeof CHECKS)[number];

/** Outcome of a check; `not present` where there is nothing to check, or an earlier check stood in the way. */
export type CheckOutcome = "pass" | "fail" | "not present";

/** A check made. */
export interface Check {
  /** Which. */
  readonly id: CheckId;
  /** Outcome. */
  readonly outcome: CheckOutcome;
  /** What was found, in words. */
  readonly found: string;
  /** Places that do not fit, as JSON pointers or bytes; at most eight. */
  readonly places: readonly string[];
}

/** What a pack is checked against. */
export interface VerifySetting {
  /** The reader's own factors, shipped ones alone. */
  readonly shipped: FactorSet;
  /** Digest of the reader's own program. */
  readonly code: string;
  /** Public key that the pack must be signed by. */
  readonly key?: string;
  /** Digests of other packs at hand, for the chain; asked for only where a pack names one before it. */
  readonly others?: () => readonly string[];
  /** How much is worked out anew; all of it when left out. */
  readonly part?: Part;
  /** Keeps draws from one pack to the next. */
  readonly keep?: DrawKeep;
}

/** A pack verified. */
export interface Verified {
  /** Name of the file. */
  readonly file: string;
  /** Checks in order. */
  readonly checks: readonly Check[];
  /** Whether no check failed. */
  readonly sound: boolean;
  /** The pack, where it could be read. */
  readonly sealed?: SealedPack;
  /** Terms of its lots as they were printed, under the factors inside. */
  readonly printed?: Program;
}

/** What every verification must be read with. */
export const NOT_TRUE =
  "Unchanged and signed is not true: these checks show that nothing was altered since the pack was sealed, by whom where it is signed, and that its figures follow from the sums inside. They do not show that lots, settings and meters are what was run.";

/** Places shown of one check. */
const MOST_PLACES = 8;

/**
 * Verifies a pack.
 *
 * @param file - name of the file
 * @param bytes - the file
 * @param setting - what it is checked against
 * @returns every check with its outcome
 */
export function verifyPack(file: string, bytes: Uint8Array, setting: VerifySetting): Verified {
  const checks = new Map<CheckId, Check>();
  const say: Say = (id, outcome, found, places = []) => {
    checks.set(id, { id, outcome, found, places: places.slice(0, MOST_PLACES) });
  };
  const { sealed, printed } = checked(file, bytes, setting, say);
  const all = CHECKS.map(
    (id): Check =>
      checks.get(id) ?? {
        id,
        outcome: "not present",
        found: "not checked, for an earlier check failed",
        places: [],
      },
  );
  return {
    file,
    checks: all,
    sound: all.every(({ outcome }) => outcome !== "fail"),
    ...(sealed === undefined ? {} : { sealed }),
    ...(printed === undefined ? {} : { printed }),
  };
}

type Say = (id: CheckId, outcome: CheckOutcome, found: string, places?: readonly string[]) => void;

function checked(
  file: string,
  bytes: Uint8Array,
  setting: VerifySetting,
  say: Say,
): Pick<Verified, "sealed" | "printed"> {
  const json = readStrictJson(file, bytes);
  if (json.value === undefined) {
    const { value = "", expected = "JSON", key = "the file" } = json.problems[0] ?? {};
    say("file", "fail", `${value}; expected ${expected}`, [key]);
    return {};
  }
  say("file", "pass", `${bytes.length} bytes of JSON, within the limits of size and depth`);
  const { text, value } = json.value;
  const { value: sealed, problems } = judgeBy(SealedSchema, { name: file, value, lineOf: () => 1 });
  if (sealed === undefined) {
    const [first] = problems;
    say(
      "fields",
      "fail",
      `${problems.length} ${problems.length === 1 ? "field does" : "fields do"} not fit the schema; the first: ${first?.code ?? ""} ${first?.value ?? ""}, expected ${(first?.expected ?? "").slice(0, 200)}`,
      problems.map(({ key = "" }) => key),
    );
    return {};
  }
  say("fields", "pass", "every field is known and has a value it can have");
  const { text: packText, parts } = canonicalParts(sealed.pack);
  const canonical = `{"pack":${packText},"seal":${canonicalText(sealed.seal)}}`;
  const apart = firstDifference(text, canonical);
  if (apart === undefined)
    say("canonical", "pass", "the bytes are the canonical form of what they say");
  else
    say(
      "canonical",
      "fail",
      "the bytes are not the canonical form of what they say: written or changed by hand",
      [`byte ${apart}`],
    );
  checkSeal(sealed, packText, parts, say);
  checkSignature(sealed, packText, setting.key, say);
  checkChain(sealed.pack, setting.others, say);
  const faults = sumFaults(sealed.pack);
  if (faults.length === 0)
    say("sums", "pass", "totals follow from strata and months, and rows from their fates");
  else
    say(
      "sums",
      "fail",
      faults
        .slice(0, 3)
        .map(({ place, found }) => `${place}: ${found}`)
        .join("; "),
      faults.map(({ place }) => place),
    );
  checkFactors(sealed.pack, setting.shipped, say);
  const { checks, printed } = recompute(sealed.pack, setting);
  for (const { id, outcome, found, places } of checks) say(id, outcome, found, places);
  return { sealed, ...(printed === undefined ? {} : { printed }) };
}

function checkSeal(
  { seal }: SealedPack,
  text: string,
  texts: ReadonlyMap<string, string>,
  say: Say,
): void {
  const parts = PARTS.filter((part) => sha256Hex(texts.get(part) ?? "") !== seal.parts[part]);
  const whole = sha256Hex(text);
  if (whole === seal.digest && parts.length === 0) {
    say("digest", "pass", `SHA-256 ${whole}`);
    return;
  }
  say(
    "digest",
    "fail",
    `the pack was changed after it was sealed${parts.length === 0 ? ", outside the parts that have digests of their own" : `, in ${parts.join(", ")}`}: its SHA-256 is ${whole}, sealed was ${seal.digest}`,
    parts.length === 0 ? ["/pack"] : parts.map((part) => `/pack/${part}`),
  );
}

function checkSignature(
  { seal }: SealedPack,
  text: string,
  key: string | undefined,
  say: Say,
): void {
  const { signature } = seal;
  if (signature === undefined) {
    say(
      "signature",
      key === undefined ? "not present" : "fail",
      "not signed: who sealed it cannot be told",
    );
    say(
      "signer",
      key === undefined ? "not present" : "fail",
      "there is no signature to hold a key against",
    );
    return;
  }
  const fits = signed(text, signature);
  say(
    "signature",
    fits ? "pass" : "fail",
    fits
      ? `signed by the holder of key ${fingerprintOf(signature.key)}`
      : `the signature does not fit pack and key ${fingerprintOf(signature.key)}`,
    fits ? [] : ["/seal/signature"],
  );
  if (key === undefined)
    say(
      "signer",
      "not present",
      "no public key was given to hold it against; anybody can sign with a key of their own",
    );
  else if (key === signature.key) say("signer", "pass", "signed with the key that was given");
  else
    say(
      "signer",
      "fail",
      `signed with key ${fingerprintOf(signature.key)}, given was ${fingerprintOf(key)}`,
      ["/seal/signature/key"],
    );
}

function checkChain({ previous }: Pack, others: VerifySetting["others"], say: Say): void {
  if (previous === undefined) say("chain", "not present", "the pack names none before it");
  else if (others?.().includes(previous) === true)
    say("chain", "pass", `follows pack ${previous.slice(0, 16)}…, which was given`);
  else
    say(
      "chain",
      "not present",
      `names pack ${previous.slice(0, 16)}… before it, which was not given`,
    );
}

function checkFactors(pack: Pack, shipped: FactorSet, say: Say): void {
  const differences = factorDifferences(pack.factors, shipped);
  const altered = differences.filter(({ how }) => how !== "own");
  const own = differences.filter(({ how }) => how === "own");
  const ownWords =
    own.length === 0
      ? ""
      : `; own values for ${own.map(({ id }) => id).join(", ")}, which a comparison replaces by shipped ones`;
  if (altered.length === 0)
    say("factors", "pass", `${pack.factors.length} factors as this program ships them${ownWords}`);
  else
    say(
      "factors",
      "fail",
      `said to be shipped and are not: ${altered
        .map(
          ({ id, value, shipped: mine }) =>
            `${id} ${value}${mine === undefined ? "" : ` instead of ${mine}`}`,
        )
        .join(", ")}${ownWords}`,
      altered.map(
        ({ id }) => `/pack/factors/${pack.factors.findIndex((factor) => factor.id === id)}`,
      ),
    );
}
