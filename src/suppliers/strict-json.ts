/**
 * Reads JSON that came from somebody else: small enough, not too deep, no key twice, nothing that two readers
 * could take for two things.
 */

import type { Judged, Problem } from "../problems/problem.js";
import { hasLoneSurrogate, pointerPart } from "./canonical.js";

/** Limits of a file. */
export interface JsonLimits {
  /** Most bytes. */
  readonly bytes: number;
  /** Most lists and objects one inside the other. */
  readonly depth: number;
}

/** Limits of a pack: a year of a large house takes less than one megabyte. */
export const PACK_LIMITS: JsonLimits = { bytes: 16 * 1024 * 1024, depth: 24 };

/** What was read. */
export interface StrictJson {
  /** The text. */
  readonly text: string;
  /** The value. */
  readonly value: unknown;
}

/**
 * Reads a file of JSON.
 *
 * @param name - name of the file, for messages
 * @param bytes - the file
 * @param limits - size and depth
 * @returns text and value, or the first thing that stands in the way, with its place
 * @see RFC 7493 (I-JSON), 2015, for keys, surrogates and numbers
 */
export function readStrictJson(
  name: string,
  bytes: Uint8Array,
  limits: JsonLimits = PACK_LIMITS,
): Judged<StrictJson> {
  const refused = (code: string, value: string, expected: string, remedy: string, key = "") => ({
    problems: [
      {
        code,
        severity: "refused",
        file: name,
        ...(key === "" ? {} : { key }),
        value,
        expected,
        remedy,
      } satisfies Problem,
    ],
  });
  if (bytes.length > limits.bytes)
    return refused(
      "json-size",
      `${bytes.length} bytes`,
      `at most ${limits.bytes} bytes`,
      "Ask for a pack of one house and one year.",
    );
  let text: string;
  try {
    // A mark of byte order stays in the text, where it is no JSON.
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return refused("json-encoding", name, "UTF-8", AGAIN);
  }
  const shape = scan(text, limits.depth);
  if (shape !== undefined)
    return refused(shape.code, shape.value, shape.expected, AGAIN, `byte ${shape.at}`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return refused("json-syntax", said.slice(0, 120), "JSON as RFC 8259 has it", AGAIN);
  }
  const odd = oddity(value, "");
  if (odd !== undefined) return refused(odd.code, odd.value, odd.expected, AGAIN, odd.at);
  return { value: { text, value }, problems: [] };
}

const AGAIN = "Ask the supplier for the file again, as `millrace seal` wrote it.";

interface Shape {
  readonly code: string;
  readonly value: string;
  readonly expected: string;
  readonly at: number;
}

// One pass over the text: depth, and keys of each object. Whether the rest is JSON is for the parser to say.
function scan(text: string, most: number): Shape | undefined {
  const open: (Set<string> | undefined)[] = [];
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === "{" || sign === "[") {
      open.push(sign === "{" ? new Set() : undefined);
      if (open.length > most)
        return {
          code: "json-depth",
          value: `${open.length} levels`,
          expected: `at most ${most} levels`,
          at: i,
        };
    } else if (sign === "}" || sign === "]") {
      open.pop();
    } else if (sign === '"') {
      const end = stringEnd(text, i);
      const keys = open.at(-1);
      if (keys !== undefined && isKey(text, end)) {
        const key = unescaped(text.slice(i, end + 1));
        if (key === "__proto__")
          return {
            code: "json-key",
            value: key,
            expected: "a key that no program takes for its own",
            at: i,
          };
        if (keys.has(key))
          return {
            code: "json-key-twice",
            value: key,
            expected: "each key of an object once",
            at: i,
          };
        keys.add(key);
      }
      i = end;
    }
  }
  return undefined;
}

function stringEnd(text: string, start: number): number {
  for (let i = start + 1; i < text.length; i++) {
    if (text[i] === "\\") i += 1;
    else if (text[i] === '"') return i;
  }
  return text.length;
}

function isKey(text: string, end: number): boolean {
  let i = end + 1;
  while (i < text.length && " \t\r\n".includes(text[i] ?? "")) i += 1;
  return text[i] === ":";
}

// A key may be written with escapes, so that two spellings are one key.
function unescaped(quoted: string): string {
  try {
    return String(JSON.parse(quoted));
  } catch {
    return quoted;
  }
}

interface Oddity {
  readonly code: string;
  readonly value: string;
  readonly expected: string;
  readonly at: string;
}

function oddity(value: unknown, at: string): Oddity | undefined {
  if (typeof value === "string" && hasLoneSurrogate(value))
    return {
      code: "json-surrogate",
      value: JSON.stringify(value).slice(0, 40),
      expected: "whole characters",
      at,
    };
  if (typeof value === "number") {
    if (!Number.isFinite(value))
      return {
        code: "json-number",
        value: String(value),
        expected: "a number of at most 1.8e308",
        at,
      };
    if (Number.isInteger(value) && !Number.isSafeInteger(value))
      return {
        code: "json-number",
        value: String(value),
        expected: "whole numbers up to 9007199254740991, which every reader holds exactly",
        at,
      };
  }
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, item] of Object.entries(value)) {
    const place = `${at}/${pointerPart(key)}`;
    const found = hasLoneSurrogate(key)
      ? { code: "json-surrogate", value: "a key", expected: "whole characters", at: place }
      : oddity(item, place);
    if (found !== undefined) return found;
  }
  return undefined;
}
