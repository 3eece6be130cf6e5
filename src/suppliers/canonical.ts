/**
 * One text for one value: JSON in the canonical form of RFC 8785, so that a digest is of what is said and not
 * of how it was spaced.
 */

import * as canonicalise from "canonicalize";
import { sha256Hex } from "../numbers/digest.js";

// The package is of the older kind: what it hands out is the function itself, its types say a default.
const writer = canonicalise.default as unknown as (value: unknown) => string | undefined;

/** Half of a pair of UTF-16 units without its other half. */
const LONE_UNIT = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?:^|[^\uD800-\uDBFF])[\uDC00-\uDFFF]/;

/**
 * Writes a value as canonical JSON: keys sorted by UTF-16 units, numbers as ECMAScript prints them, no spaces,
 * no Unicode normalisation. Minus zero becomes zero.
 *
 * @param value - plain data
 * @returns the text
 * @throws Error at what JSON cannot hold: NaN, infinity, functions, and halves of surrogate pairs
 * @see RFC 8785, JSON Canonicalization Scheme, 2020
 */
export function canonicalText(value: unknown): string {
  refuse(value, "");
  const text = writer(value);
  if (text === undefined) throw new Error("There is no JSON of nothing.");
  return text;
}

/**
 * Digest of a value.
 *
 * @param value - plain data
 * @returns SHA-256 of its canonical JSON, 64 hexadecimal digits
 * @throws Error as {@link canonicalText}
 */
export function digestOf(value: unknown): string {
  return sha256Hex(canonicalText(value));
}

/**
 * Says whether a text holds half a surrogate pair, which UTF-8 cannot write.
 *
 * @param text - the text
 * @returns true when it does
 */
export function hasLoneSurrogate(text: string): boolean {
  return LONE_UNIT.test(text);
}

function refuse(value: unknown, at: string): void {
  switch (typeof value) {
    case "number":
      if (!Number.isFinite(value)) throw new Error(`${at || "/"}: ${value} is no number of JSON.`);
      return;
    case "string":
      if (hasLoneSurrogate(value)) throw new Error(`${at || "/"}: half of a surrogate pair.`);
      return;
    case "boolean":
      return;
    case "object":
      if (value === null) return;
      if (Array.isArray(value)) {
        value.forEach((item: unknown, i) => {
          refuse(item, `${at}/${i}`);
        });
        return;
      }
      for (const [key, item] of Object.entries(value)) {
        if (hasLoneSurrogate(key))
          throw new Error(`${at || "/"}: a key with half a surrogate pair.`);
        if (item !== undefined) refuse(item, `${at}/${pointerPart(key)}`);
      }
      return;
    default:
      throw new Error(`${at || "/"}: JSON cannot hold a ${typeof value}.`);
  }
}

/**
 * A key as a part of a JSON pointer.
 *
 * @param key - the key
 * @returns the key with `~` and `/` written as RFC 6901 asks
 */
export function pointerPart(key: string): string {
  return key.replaceAll("~", "~0").replaceAll("/", "~1");
}
