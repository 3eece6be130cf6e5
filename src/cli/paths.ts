/**
 * Paths that cannot be what they were named as.
 */

import { lstatSync, statSync } from "node:fs";
import type { Problem } from "../problems/problem.js";

/**
 * Finds folders that stand where a file is meant. The system would say so too, but not which path.
 *
 * @param plant - path of the plant file
 * @param logs - paths of the logs
 * @returns a problem for each
 */
export function foldersAmong(plant: string, logs: readonly string[] = []): readonly Problem[] {
  return [{ path: plant, what: "a plant file" }, ...logs.map((path) => ({ path, what: "a log" }))]
    .filter(({ path }) => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true)
    .map(({ path, what }) => ({
      code: "file-is-folder",
      severity: "refused",
      file: path,
      expected: `${what}, not a folder`,
      remedy: `Name the file in it: ${what === "a log" ? "`millrace check FOLDER/log.csv`" : "`--plant FOLDER/plant.yaml`"}.`,
    }));
}

/**
 * Says whether something stands at a path, a link that leads nowhere included.
 *
 * @param path - the path
 * @returns whether it is taken
 */
export function isTaken(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false }) !== undefined;
}

/**
 * Words what the system says of a path.
 *
 * @param error - as thrown by Node
 * @returns the problem
 */
export function pathProblem(error: NodeJS.ErrnoException): Problem {
  return {
    code: "path-unusable",
    severity: "refused",
    ...(error.path === undefined ? {} : { file: error.path }),
    value: `${error.code ?? ""} ${error.syscall ?? ""}`.trim(),
    expected: "a file where a file is meant, and a folder that may be written to for results",
    remedy: "Check the path and who may read and write it.",
  };
}
