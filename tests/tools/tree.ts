import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

/** The top folder. */
export const TOP = fileURLToPath(new URL("../../", import.meta.url));

// Made by tools, never kept: what .gitignore leaves out, and git's own folder.
const MADE = new Set([".git", ".stryker-tmp", "coverage", "dist", "node_modules", "out"]);

/**
 * Lists the files under a folder of the tree, made ones left out.
 *
 * @param folder - path from the top folder, `.` for all
 * @param ending - how the names end; all files when absent
 * @returns paths from the top folder with forward slashes, sorted
 */
export function filesUnder(folder: string, ending = ""): string[] {
  const found: string[] = [];
  const visit = (path: string): void => {
    for (const entry of readdirSync(join(TOP, path), { withFileTypes: true })) {
      if (MADE.has(entry.name)) continue;
      const inside = path === "." ? entry.name : `${path}/${entry.name}`;
      if (entry.isDirectory()) visit(inside);
      else if (entry.name.endsWith(ending)) found.push(inside);
    }
  };
  visit(folder);
  return found.sort();
}

/**
 * Reads a text file of the tree.
 *
 * @param path - path from the top folder
 * @returns its text
 */
export function textOf(path: string): string {
  return readFileSync(join(TOP, path), "utf8");
}
