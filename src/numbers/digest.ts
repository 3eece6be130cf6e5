/**
 * Digests: SHA-256 to seal files and names, and a quick hash to sort lots by.
 */

import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/**
 * SHA-256 of a text or of bytes.
 *
 * @param content - bytes, or a text taken as UTF-8
 * @returns 64 hexadecimal digits in small letters
 * @see FIPS 180-4
 */
export function sha256Hex(content: string | Uint8Array): string {
  return new Digest().update(content).hex();
}

/** SHA-256 of content that comes in pieces; where it was cut makes no difference. */
export class Digest {
  readonly #state = sha256.create();

  /**
   * Takes the next piece.
   *
   * @param piece - bytes, or a text taken as UTF-8
   * @returns the same digest, for chaining
   */
  update(piece: string | Uint8Array): this {
    this.#state.update(typeof piece === "string" ? utf8ToBytes(piece) : piece);
    return this;
  }

  /**
   * The digest of all pieces so far; more may follow.
   *
   * @returns 64 hexadecimal digits in small letters
   */
  hex(): string {
    return bytesToHex(this.#state.clone().digest());
  }
}

const FIRST_SEED = 0;
const SECOND_SEED = 0x9747b28c;

const encoder = new TextEncoder();
let scratch = new Uint8Array(256);

/**
 * Quick hash of a text: MurmurHash3 x86_32 of its UTF-8 bytes, once with seed 0 and once with seed
 * 0x9747b28c. Together 64 bits: among ten million different ids one chance clash is to be expected in
 * about 370,000 logs. It spreads evenly but protects against nobody; to seal anything take SHA-256.
 *
 * @param text - such as the id of a lot
 * @returns two whole numbers from 0 to 2³² − 1, the first the more significant
 * @see A. Appleby, MurmurHash3, 2011 (public domain)
 */
export function hash64(text: string): [number, number] {
  const longest = text.length * 3;
  if (scratch.length < longest) scratch = new Uint8Array(longest);
  const length = asciiInto(text, scratch) ?? encoder.encodeInto(text, scratch).written;
  return hash64Bytes(scratch, 0, length);
}

/**
 * As {@link hash64}, for text that is still bytes.
 *
 * @param bytes - where the text lies, as UTF-8
 * @param start - index of its first byte
 * @param end - index behind its last byte
 * @returns the same pair as for the text itself
 */
export function hash64Bytes(bytes: Uint8Array, start: number, end: number): [number, number] {
  let first = FIRST_SEED;
  let second = SECOND_SEED;
  const whole = end - ((end - start) & 3);
  let at = start;
  for (; at < whole; at += 4) {
    const block = scrambled(
      bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24),
    );
    first = mixed(first, block);
    second = mixed(second, block);
  }
  if (at < end) {
    let rest = 0;
    for (let shift = 0; at < end; at++, shift += 8) rest |= bytes[at]! << shift;
    const block = scrambled(rest);
    first ^= block;
    second ^= block;
  }
  return [finished(first ^ (end - start)), finished(second ^ (end - start))];
}

function scrambled(block: number): number {
  const once = Math.imul(block, 0xcc9e2d51);
  return Math.imul((once << 15) | (once >>> 17), 0x1b873593);
}

function mixed(hash: number, block: number): number {
  const joined = hash ^ block;
  return (Math.imul((joined << 13) | (joined >>> 19), 5) + 0xe6546b64) | 0;
}

function finished(hash: number): number {
  let h = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

// Ids are nearly always ASCII, and a loop beats the encoder on short texts.
function asciiInto(text: string, bytes: Uint8Array): number | undefined {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > 127) return undefined;
    bytes[i] = code;
  }
  return text.length;
}
