import { type ChildProcessByStdio, spawn, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { execPath } from "node:process";
import type { Readable } from "node:stream";
import { afterAll } from "vitest";
import { TOP } from "./tree.js";

/** What a command did. */
export interface Ended {
  /** Exit code. */
  readonly code: number | null;
  /** Standard output. */
  readonly out: string;
  /** Standard error. */
  readonly err: string;
}

const LOADER = new URL("../../node_modules/tsx/dist/esm/index.mjs", import.meta.url).href;

/** Words after `node` that start the command line from its sources. */
export const TOOL = ["--import", LOADER, join(TOP, "src", "cli", "main.ts")];

/**
 * Starts the command line and does not wait for it.
 *
 * @param folder - folder it runs in
 * @param words - words after `millrace`
 * @returns the process
 */
export function startMillrace(
  folder: string,
  ...words: readonly string[]
): ChildProcessByStdio<null, Readable, Readable> {
  return spawn(execPath, [...TOOL, ...words], {
    cwd: folder,
    stdio: ["ignore", "pipe", "pipe"],
  });
}

/**
 * Runs the command line from its sources, as a process of its own, with nothing on its standard input.
 *
 * @param folder - folder it runs in
 * @param words - words after `millrace`
 * @returns what it did
 */
export function millrace(folder: string, ...words: readonly string[]): Ended {
  const { status, stdout, stderr, error } = spawnSync(execPath, [...TOOL, ...words], {
    cwd: folder,
    encoding: "utf8",
    timeout: 60_000,
  });
  if (error !== undefined) throw error;
  return { code: status, out: stdout, err: stderr };
}

/**
 * Makes folders that are gone when the tests of the file are done.
 *
 * @returns a function that gives a new empty folder
 */
export function emptyFolders(): () => string {
  const made: string[] = [];
  afterAll(() => {
    for (const folder of made) rmSync(folder, { recursive: true, force: true });
  });
  return () => {
    const folder = mkdtempSync(join(tmpdir(), "millrace-"));
    made.push(folder);
    return folder;
  };
}
