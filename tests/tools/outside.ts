import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { env, platform } from "node:process";
import { describe, expect, it } from "vitest";

/**
 * Names under which a program is found, the usual one first. `MILLRACE_` and the usual name in
 * capitals, such as `MILLRACE_CHROMIUM`, holds its path where it is not on the search path.
 */
const PROGRAMS = {
  chromium: ["chromium", "chromium-browser", "google-chrome", "chrome"],
  pdffonts: ["pdffonts"],
  pdfinfo: ["pdfinfo"],
  pdftoppm: ["pdftoppm"],
  pdftotext: ["pdftotext"],
  qpdf: ["qpdf"],
} as const;

/** An outside program that may judge our output. */
export type Program = keyof typeof PROGRAMS;

/** Outside programs are slow to start. [ms] */
const PATIENCE = 60_000;

// With this set, as in .ci/run, an absent program is a failure.
const REQUIRED = env["MILLRACE_OUTSIDE"] === "required";

function whereIs(program: Program): string | undefined {
  const given = env[`MILLRACE_${program.toUpperCase()}`];
  if (given !== undefined) return given;
  const endings = platform === "win32" ? [".exe"] : [""];
  for (const folder of (env["PATH"] ?? "").split(delimiter)) {
    for (const name of PROGRAMS[program]) {
      for (const ending of endings) {
        const path = join(folder, name + ending);
        try {
          accessSync(path, constants.X_OK);
          return path;
        } catch {
          // Not here; the next folder may have it.
        }
      }
    }
  }
  return undefined;
}

/**
 * Groups tests that ask an outside program for its judgement. Where it is absent they are skipped,
 * and `npm test` says so at its end; with `MILLRACE_OUTSIDE=required` they fail.
 *
 * @param program - its usual name
 * @param checks - what it judges, in plain words
 * @param tests - registers the tests; is given the program's path
 */
export function withProgram(program: Program, checks: string, tests: (path: string) => void): void {
  const path = whereIs(program);
  const skipped = path === undefined && !REQUIRED;
  describe.skipIf(skipped)(`${program}: ${checks}`, { timeout: PATIENCE }, () => {
    it("is on this machine", () => {
      expect(path, `${program} was not found on the search path`).toBeDefined();
    });
    tests(path ?? program);
  });
}
