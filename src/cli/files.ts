/**
 * Files in and out. Output is written aside and renamed, so that nothing half-written is left.
 */

import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { open } from "node:fs/promises";
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

/** Bytes read in one go. */
const READ = 1 << 18;

/**
 * A log that can be opened again. Each piece is written over by the next one.
 *
 * @param path - its path
 * @returns the log
 */
export function logFile(path: string): LogFile {
  return { name: basename(path), open: () => piecesOf(path) };
}

async function* piecesOf(path: string): AsyncGenerator<Uint8Array> {
  const file = await open(path);
  try {
    const bytes = new Uint8Array(READ);
    for (;;) {
      const { bytesRead } = await file.read(bytes);
      if (bytesRead === 0) return;
      yield bytes.subarray(0, bytesRead);
    }
  } finally {
    await file.close();
  }
}

/** Content of a file to write: whole, or in pieces that need not all be in memory. */
export type FileContent = string | Uint8Array | Iterable<string>;

/** Text gathered before it is written. [characters] */
const GATHERED = 1 << 20;

/**
 * Writes files into a folder, all or none.
 *
 * @param folder - the folder, made when missing
 * @param files - names and contents
 * @returns paths written
 */
export function writeAll(
  folder: string,
  files: ReadonlyMap<string, FileContent>,
): readonly string[] {
  mkdirSync(folder, { recursive: true });
  const aside = [...files].map(([name, content]) => {
    const to = join(folder, name);
    return { to, from: `${to}.part`, content };
  });
  try {
    for (const { from, content } of aside) writeContent(from, content);
    for (const { from, to } of aside) renameSync(from, to);
  } finally {
    for (const { from } of aside) rmSync(from, { force: true });
  }
  return aside.map(({ to }) => to);
}

function writeContent(path: string, content: FileContent): void {
  if (typeof content === "string" || content instanceof Uint8Array) {
    writeFileSync(path, content);
    return;
  }
  writeFileSync(path, "");
  let text = "";
  for (const piece of content) {
    text += piece;
    if (text.length < GATHERED) continue;
    appendFileSync(path, text);
    text = "";
  }
  appendFileSync(path, text);
}
