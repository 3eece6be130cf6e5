/**
 * Public keys in files and folders.
 */

import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import type { Problem } from "../problems/problem.js";
import { readPublicKey } from "../suppliers/signature.js";

/**
 * A public key in a file.
 *
 * @param path - the file
 * @returns the key, or what is wrong; neither where no file is named
 */
export function publicKeyIn(path: string | undefined): {
  readonly key?: string;
  readonly problems: readonly Problem[];
} {
  if (path === undefined) return { problems: [] };
  const problems = unreadable(path);
  if (problems.length > 0) return { problems };
  const { value, problems: unfit } = readPublicKey(path, readFileSync(path, "utf8"));
  return { ...(value === undefined ? {} : { key: value }), problems: unfit };
}

/**
 * Says what stands in the way of reading a file.
 *
 * @param file - the path
 * @returns that it is absent or a folder; nothing where it is a file
 */
export function unreadable(file: string): readonly Problem[] {
  if (!existsSync(file))
    return [
      {
        code: "file-missing",
        severity: "refused",
        file,
        expected: "a file at this path",
        remedy: "Check the path.",
      },
    ];
  return statSync(file).isDirectory()
    ? [
        {
          code: "file-folder",
          severity: "refused",
          file,
          value: "a folder",
          expected: "a file",
          remedy:
            "Name the pack inside it; `millrace suppliers` takes folders with plant file and log.",
        },
      ]
    : [];
}

/**
 * Public keys that a buyer knows, named by their files: whoever put them there knows whose they are.
 *
 * @param options - what was asked
 * @param options.key - file of a key
 * @param options.keys - folder of keys
 * @returns names by key, or what is wrong; no names where no keys are given
 */
export function knownKeys(options: { readonly key?: string; readonly keys?: string }): {
  readonly keys?: ReadonlyMap<string, string>;
  readonly problems: readonly Problem[];
} {
  const { key, keys } = options;
  if (key === undefined && keys === undefined) return { problems: [] };
  if (keys !== undefined && !(existsSync(keys) && statSync(keys).isDirectory()))
    return {
      problems: [
        {
          code: "file-missing",
          severity: "refused",
          file: keys,
          expected: "a folder with public keys",
          remedy: "Check the path.",
        },
      ],
    };
  const files = [
    ...(key === undefined ? [] : [key]),
    ...(keys === undefined
      ? []
      : readdirSync(keys)
          .filter((name) => name.endsWith(".public"))
          .sort()
          .map((name) => join(keys, name))),
  ];
  const read = files.map((file) => ({ file, ...publicKeyIn(file) }));
  return {
    keys: new Map(
      read.flatMap(({ file, key: hex }) =>
        hex === undefined ? [] : [[hex, basename(file, ".public")] as const],
      ),
    ),
    problems: read.flatMap(({ problems }) => problems),
  };
}
