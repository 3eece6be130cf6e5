/**
 * YAML as the house reads it: mappings, lists, texts, numbers, true and false; each with its line.
 *
 * Days stay texts, a key stands once, and nothing can be referred to from elsewhere: anchors, aliases and
 * tags are refused, since a reader could not see from a line what it says.
 */

import { isAlias, isMap, isNode, isScalar, isSeq, type Node, type Pair, parseDocument } from "yaml";
import type { Judged, Problem } from "../problems/problem.js";

/** A file that was read from somewhere: the text and what to call it in messages. */
export interface TextFile {
  /** Name to show. */
  readonly name: string;
  /** Its text. */
  readonly text: string;
}

/** Keys and places in lists that lead to a value, from the top of the file. */
export type KeyPath = readonly (string | number)[];

/** A YAML file as plain data. */
export interface YamlText {
  /** Name to show. */
  readonly name: string;
  /** What it says: objects, arrays, texts, numbers, booleans and null. */
  readonly value: unknown;
  /** Line of a value, or of the nearest thing above it that exists; counted from 1. */
  readonly lineOf: (path: KeyPath) => number;
}

/** What is wrong at some place, before the place is known. */
export type Fault = Pick<Problem, "code" | "expected" | "remedy" | "value">;

/**
 * Reads one YAML document.
 *
 * @param file - the file
 * @returns its plain data, or every fault of its writing: `yaml-syntax`, `yaml-duplicate-key`, `yaml-alias`,
 *   `yaml-tag`, `yaml-key`
 */
export function readYaml(file: TextFile): Judged<YamlText> {
  const document = parsed(file.text);
  const problems: Problem[] = [];
  const complain = (at: number, fault: Fault): void => {
    problems.push({ severity: "refused", file: file.name, line: lineAt(file.text, at), ...fault });
  };
  for (const { code, pos } of document.errors) {
    complain(pos[0], code === "DUPLICATE_KEY" ? TWICE(textFrom(file.text, pos)) : SYNTAX);
  }
  const value = problems.length === 0 ? plain(document.contents, complain) : undefined;
  if (problems.length > 0) return { problems };
  // The tree weighs many times its text, and lines are asked for only when something is wrong: it is let
  // go here and grown again when needed.
  let tree: unknown;
  const lineOf = (path: KeyPath): number => {
    tree ??= parsed(file.text).contents;
    return lineAt(file.text, offsetOf(tree, path));
  };
  return { value: { name: file.name, value, lineOf }, problems };
}

/**
 * A fault with its place.
 *
 * @param yaml - the file
 * @param path - where in the file
 * @param fault - what is wrong
 * @returns the problem, refused, with file, line and key path
 */
export function problemAt(yaml: YamlText, path: KeyPath, fault: Fault): Problem {
  return {
    severity: "refused",
    file: yaml.name,
    line: yaml.lineOf(path),
    ...(path.length > 0 && { key: pathText(path) }),
    ...fault,
  };
}

/**
 * Value at a path.
 *
 * @param value - plain data
 * @param path - keys and places
 * @returns what stands there, or undefined
 */
export function valueAt(value: unknown, path: KeyPath): unknown {
  return path.reduce<unknown>(
    (part, key) =>
      typeof part === "object" && part !== null && Object.hasOwn(part, key)
        ? (part as Readonly<Record<string | number, unknown>>)[key]
        : undefined,
    value,
  );
}

/**
 * A path as it is shown: `tables[0].rows[2]`.
 *
 * @param path - keys and places
 * @returns one text
 */
export function pathText(path: KeyPath): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? key : `${text}.${key}`;
  }, "");
}

// Without any of YAML's own types: what a plain word stands for is decided in one place below.
function parsed(text: string): ReturnType<typeof parseDocument> {
  return parseDocument(text, { prettyErrors: false, resolveKnownTags: false, schema: "failsafe" });
}

const SYNTAX: Fault = {
  code: "yaml-syntax",
  expected: "YAML that can be read",
  remedy: "Check indentation, brackets and quotes in this line and the one before.",
};

const TWICE = (key: string): Fault => ({
  code: "yaml-duplicate-key",
  value: key,
  expected: "every key once",
  remedy: "Keep one of the two.",
});

const REFERENCE: Fault = {
  code: "yaml-alias",
  expected: "no anchors (&) and no aliases (*)",
  remedy: "Write the value out, or put a text that starts with & or * in quotes.",
};

const TAG: Fault = {
  code: "yaml-tag",
  expected: "no tags (!)",
  remedy: "Leave the tag out, or put a text that starts with ! in quotes.",
};

const KEY: Fault = {
  code: "yaml-key",
  expected: "a key that is a plain text",
  remedy: "Write the key as a word.",
};

type Complain = (at: number, fault: Fault) => void;

function plain(node: unknown, complain: Complain): unknown {
  if (!isNode(node)) return null;
  const at = startOf(node);
  if (isAlias(node)) {
    complain(at, { ...REFERENCE, value: `*${node.source}` });
    return null;
  }
  if (node.anchor !== undefined) complain(at, { ...REFERENCE, value: `&${node.anchor}` });
  if (node.tag !== undefined) complain(at, { ...TAG, value: node.tag });
  if (isScalar(node)) return node.type === "PLAIN" ? meant(node.value) : node.value;
  if (isSeq(node)) return node.items.map((item) => plain(item, complain));
  if (!isMap(node)) return null;
  const object: Record<string, unknown> = {};
  for (const { key, value } of node.items) {
    const name = nameOf(key);
    // As a plain assignment this one key would change what the object is instead of adding to it.
    if (name === undefined || name === "__proto__") complain(isNode(key) ? startOf(key) : at, KEY);
    else object[name] = plain(value, complain);
  }
  return object;
}

const DECIMAL = /^[-+]?(\d+(\.\d*)?|\.\d+)([eE][-+]?\d+)?$/;
const WORDS = new Map<unknown, boolean | null>([
  ["true", true],
  ["false", false],
  ["null", null],
  ["~", null],
  ["", null],
]);

// Only decimal numbers are numbers, so that neither a day nor a code such as 0x10 turns into one.
function meant(value: unknown): unknown {
  if (typeof value === "string" && DECIMAL.test(value)) return Number(value);
  const word = WORDS.get(value);
  return word === undefined ? value : word;
}

function nameOf(key: unknown): string | undefined {
  if (!isScalar(key) || key.anchor !== undefined || key.tag !== undefined) return undefined;
  return typeof key.value === "string" && key.value !== "" ? key.value : undefined;
}

function offsetOf(contents: unknown, path: KeyPath): number {
  let node = contents;
  let offset = isNode(node) ? startOf(node) : 0;
  for (const step of path) {
    if (isMap(node)) {
      const pair: Pair | undefined = node.items.find(({ key }) => nameOf(key) === String(step));
      if (pair === undefined) return offset;
      node = pair.value;
      offset = startOf(pair.key as Node);
    } else {
      node = isSeq(node) ? node.items[Number(step)] : undefined;
      if (!isNode(node)) return offset;
      offset = startOf(node);
    }
  }
  return offset;
}

function startOf(node: Node): number {
  return node.range?.[0] ?? 0;
}

function lineAt(text: string, offset: number): number {
  let line = 1;
  for (let at = text.indexOf("\n"); at >= 0 && at < offset; at = text.indexOf("\n", at + 1)) line++;
  return line;
}

function textFrom(text: string, [start]: readonly [number, number]): string {
  return /^[^\s:]*/.exec(text.slice(start))?.[0] ?? "";
}
