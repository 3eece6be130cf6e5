import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, vi } from "vitest";
import type { Ended } from "../tools/command.js";
import { TOP } from "../tools/tree.js";

/** Later than every lot and every factor of the mills used here. */
export const LATE = "2026-11-25";

/**
 * A mill as `start` lays it out.
 *
 * @param folder - folder that is empty
 * @returns folder of the mill
 */
export function millIn(folder: string): string {
  const mill = join(folder, "mill");
  cpSync(join(TOP, "templates", "mill"), mill, { recursive: true });
  return mill;
}

/**
 * Changes a file.
 *
 * @param folder - where it stands
 * @param file - its name
 * @param change - what becomes of its text, which must not stay as it was
 */
export function changed(folder: string, file: string, change: (text: string) => string): void {
  const path = join(folder, file);
  const before = readFileSync(path, "utf8");
  const after = change(before);
  expect(after).not.toBe(before);
  writeFileSync(path, after);
}

/**
 * Runs a command inside the test and listens to what it prints.
 *
 * @param run - calls the command
 * @returns exit code and all that was printed
 */
export async function heard(run: () => number | Promise<number>): Promise<Ended> {
  const said = { out: "", err: "" };
  const listen = (to: "out" | "err") => (text: string | Uint8Array) => {
    said[to] += String(text);
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, "write").mockImplementation(listen("out")),
    vi.spyOn(process.stderr, "write").mockImplementation(listen("err")),
  ];
  try {
    const code = await run();
    return { code, ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
