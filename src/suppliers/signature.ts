/**
 * Keys and signatures: Ed25519 as RFC 8032 has it.
 */

import { ed25519 } from "@noble/curves/ed25519.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Judged, Problem } from "../problems/problem.js";
import { sha256Hex } from "../numbers/digest.js";

/** First line of a file with a private key. */
const PRIVATE = "millrace private key, Ed25519, keep it to yourself";

/** First line of a file with a public key. */
const PUBLIC = "millrace public key, Ed25519";

/** A pair of keys as files. */
export interface KeyFiles {
  /** File of the private key; whoever has it can sign. */
  readonly secret: string;
  /** File of the public key, to give to buyers. */
  readonly open: string;
  /** Short name of the public key. */
  readonly fingerprint: string;
}

/**
 * Makes the files of a pair of keys.
 *
 * @param seed - 32 bytes from a generator fit for keys
 * @returns both files and the fingerprint
 * @throws Error when there are not 32 bytes
 */
export function keyFiles(seed: Uint8Array): KeyFiles {
  if (seed.length !== 32) throw new Error("A private key has 32 bytes.");
  const open = bytesToHex(ed25519.getPublicKey(seed));
  return {
    secret: `${PRIVATE}\n${bytesToHex(seed)}\n`,
    open: `${PUBLIC}\n${open}\n`,
    fingerprint: fingerprintOf(open),
  };
}

/**
 * Reads a private key.
 *
 * @param name - name of the file, for messages; what stands in it is never repeated
 * @param text - the file
 * @returns 32 bytes, or what is wrong
 */
export function readPrivateKey(name: string, text: string): Judged<Uint8Array> {
  const hex = keyIn(text, PRIVATE);
  return hex === undefined
    ? { problems: [noKey(name, "private")] }
    : { value: hexToBytes(hex), problems: [] };
}

/**
 * Reads a public key.
 *
 * @param name - name of the file, for messages
 * @param text - the file
 * @returns 64 hexadecimal digits, or what is wrong
 */
export function readPublicKey(name: string, text: string): Judged<string> {
  const hex = keyIn(text, PUBLIC);
  return hex === undefined ? { problems: [noKey(name, "public")] } : { value: hex, problems: [] };
}

function keyIn(text: string, head: string): string | undefined {
  const [first, second = "", ...rest] = text.replaceAll("\r\n", "\n").trimEnd().split("\n");
  return first === head && /^[0-9a-f]{64}$/.test(second) && rest.length === 0 ? second : undefined;
}

function noKey(name: string, which: string): Problem {
  return {
    code: "key-unreadable",
    severity: "refused",
    file: name,
    expected: `a ${which} key as \`millrace keys\` writes it: a line of words and one of 64 digits`,
    remedy: "Name the file that `millrace keys` wrote, or make a new pair.",
  };
}

/**
 * Short name of a public key, to be read out over the telephone.
 *
 * @param key - public key, 64 hexadecimal digits
 * @returns the first 20 digits of its SHA-256 in groups of four
 */
export function fingerprintOf(key: string): string {
  return (sha256Hex(hexToBytes(key)).slice(0, 20).match(/.{4}/g) ?? []).join(" ");
}

/** A signature with the key it can be checked by. */
export interface Signature {
  /** Public key, 64 hexadecimal digits. */
  readonly key: string;
  /** Signature, 128 hexadecimal digits. */
  readonly value: string;
}

/**
 * Signs a text.
 *
 * @param text - taken as UTF-8
 * @param seed - private key, 32 bytes
 * @returns signature and public key
 * @see RFC 8032, 5.1.6
 */
export function sign(text: string, seed: Uint8Array): Signature {
  return {
    key: bytesToHex(ed25519.getPublicKey(seed)),
    value: bytesToHex(ed25519.sign(utf8ToBytes(text), seed)),
  };
}

/**
 * Checks a signature. Other encodings of the same signature, and keys of small order, do not pass.
 *
 * @param text - taken as UTF-8
 * @param signature - signature and public key
 * @returns whether the holder of the key signed this text
 * @see RFC 8032, 5.1.7
 */
export function signed(text: string, signature: Signature): boolean {
  const { key, value } = signature;
  if (!/^[0-9a-f]{64}$/.test(key) || !/^[0-9a-f]{128}$/.test(value)) return false;
  try {
    return ed25519.verify(hexToBytes(value), utf8ToBytes(text), hexToBytes(key), { zip215: false });
  } catch {
    return false;
  }
}
