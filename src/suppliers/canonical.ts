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
  const fault = faultIn(value);
  if (fault !== undefined) throw new Error(`${placeOf(fault.path)}: ${fault.what}`);
  const text = writer(value);
  if (text === undefined) throw new Error("There is no JSON of nothing.");
  return text;
}

/**
 * Canonical JSON of each part of an object, and of the whole, written once.
 *
 * @param value - the object; parts that are undefined are left out
 * @returns the whole, and each part by its key
 * @throws Error as {@link canonicalText}
 */
export function canonicalParts(value: object): {
  readonly text: string;
  readonly parts: ReadonlyMap<string, string>;
} {
  const parts = new Map(
    Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, item]) => [key, canonicalText(item)]),
  );
  const inside = [...parts].map(([key, text]) => `${canonicalText(key)}:${text}`).join(",");
  return { text: `{${inside}}`, parts };
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

interface Fault {
  readonly path: readonly (string | number)[];
  readonly what: string;
}

function placeOf(path: Fault["path"]): string {
  return path.length === 0 ? "/" : path.map((part) => `/${pointerPart(String(part))}`).join("");
}

function faultIn(value: unknown): Fault | undefined {
  switch (typeof value) {
    case "number":
      return Number.isFinite(value) ? undefined : here(`${value} is no number of JSON.`);
    case "string":
      return hasLoneSurrogate(value) ? here("half of a surrogate pair.") : undefined;
    case "boolean":
      return undefined;
    case "object":
      return value === null ? undefined : faultWithin(value);
    default:
      return here(`JSON cannot hold a ${typeof value}.`);
  }
}

function faultWithin(value: object): Fault | undefined {
  const isList = Array.isArray(value);
  for (const [key, item] of Object.entries(value) as [string, unknown][]) {
    if (!isList && hasLoneSurrogate(key)) return here("a key with half a surrogate pair.");
    if (item === undefined && !isList) continue;
    const fault = faultIn(item);
    if (fault !== undefined) return { ...fault, path: [key, ...fault.path] };
  }
  return undefined;
}

function here(what: string): Fault {
  return { path: [], what };
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
