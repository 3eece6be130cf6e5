/**
 * Checks of the seal: digest, signature, and the pack before.
 */

import { sha256Hex } from "../numbers/digest.js";
import type { Say, VerifySetting } from "./check.js";
import { type Pack, PARTS, type SealedPack } from "./schema.js";
import { fingerprintOf, signed } from "./signature.js";

/**
 * Checks digests of the whole and of its parts.
 *
 * @param sealed - pack and seal
 * @param text - canonical JSON of the pack
 * @param texts - canonical JSON of each part
 * @param say - takes the check
 */
export function checkSeal(
  sealed: SealedPack,
  text: string,
  texts: ReadonlyMap<string, string>,
  say: Say,
): void {
  const { seal } = sealed;
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

/**
 * Checks the signature, and by whom it is.
 *
 * @param sealed - pack and seal
 * @param text - canonical JSON of the pack
 * @param setting - keys that are known
 * @param say - takes both checks
 */
export function checkSignature(
  sealed: SealedPack,
  text: string,
  setting: Pick<VerifySetting, "key" | "keys">,
  say: Say,
): void {
  const { key, keys } = setting;
  const { seal } = sealed;
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
  const known = keys?.get(signature.key);
  if (known !== undefined)
    say("signer", "pass", `signed by ${known}, key ${fingerprintOf(signature.key)}`);
  else if (keys !== undefined)
    say(
      "signer",
      "flag",
      `signed with key ${fingerprintOf(signature.key)}, which is none of those given`,
      ["/seal/signature/key"],
    );
  else if (key === undefined)
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

/**
 * Checks the chain to the pack before: that it is at hand, was of an earlier period, and shared meters out alike.
 *
 * @param pack - the pack
 * @param others - packs at hand by digest
 * @param say - takes the check
 */
export function checkChain(pack: Pack, others: VerifySetting["others"], say: Say): void {
  const { previous } = pack;
  if (previous === undefined) {
    say("chain", "not present", "the pack names none before it");
    return;
  }
  const short = `${previous.slice(0, 16)}…`;
  const before = others?.().get(previous) as
    | {
        readonly boundary?: { readonly allocation?: unknown };
        readonly period?: { readonly to?: unknown };
      }
    | undefined;
  if (before === undefined) {
    say("chain", "flag", `names pack ${short} before it, which was not given`, ["/pack/previous"]);
    return;
  }
  const odd = [
    ...(before.boundary?.allocation === pack.boundary.allocation
      ? []
      : [
          [
            "meters are shared out otherwise than in the pack before",
            "/pack/boundary/allocation",
          ] as const,
        ]),
    ...(typeof before.period?.to === "string" && before.period.to < pack.period.from
      ? []
      : [["its period is not after that of the pack before", "/pack/period"] as const]),
  ];
  if (odd.length === 0) say("chain", "pass", `follows pack ${short}, which was given`);
  else
    say(
      "chain",
      "flag",
      `follows pack ${short}, which was given; ${odd.map(([words]) => words).join("; ")}`,
      odd.map(([, place]) => place),
    );
}
