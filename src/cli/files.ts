/**
 * Files in and out. Output is written aside and renamed, so that nothing half-written is left.
 */

import {
  createReadStream,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { TextFile } from "../factors/yaml-text.js";
import type { LogFile } from "../log/read-logs.js";

const HERE = new URL(".", import.meta.url);

/**
 * Folder that ships with the tool.
 *
 * @param name - `factors` or `templates`
 * @returns its path
 */
export function shippedFolder(name: "factors" | "templates"): string {
  return fileURLToPath(new URL(`../../${name}/`, HERE));
}

/**
 * Made asset: a font or a pack of factors. It lies in `dist`, also when the sources are run.
 *
 * @param path - path inside `dist`
 * @returns its path
 */
export function builtFile(path: string): string {
  const beside = fileURLToPath(new URL(`../${path}`, HERE));
  return existsSync(beside) ? beside : fileURLToPath(new URL(`../../dist/${path}`, HERE));
}

/**
 * Reads all YAML files of a folder.
 *
 * @param folder - the folder
 * @returns name and text; nothing when there is no such folder
 */
export function yamlFiles(folder: string): readonly TextFile[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith(".yaml"))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(folder, name), "utf8") }));
}

/**
 * A log as a stream that can be opened again.
 *
 * @param path - its path
 * @returns the log
 */
export function logFile(path: string): LogFile {
  return {
    name: basename(path),
    open: () => createReadStream(path, { highWaterMark: 1 << 18 }),
  };
}

/**
 * Writes files into a folder, all or none.
 *
 * @param folder - the folder, made when missing
 * @param files - names and contents
 * @returns paths written
 */
export function writeAll(
  folder: string,
  files: ReadonlyMap<string, string | Uint8Array>,
): readonly string[] {
  mkdirSync(folder, { recursive: true });
  const aside = [...files].map(([name, content]) => {
    const to = join(folder, name);
    return { to, from: `${to}.part`, content };
  });
  try {
    for (const { from, content } of aside) writeFileSync(from, content);
    for (const { from, to } of aside) renameSync(from, to);
  } finally {
    for (const { from } of aside) rmSync(from, { force: true });
  }
  return aside.map(({ to }) => to);
}
