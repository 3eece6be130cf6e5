import { spawnSync } from "node:child_process";
import { env, execPath } from "node:process";
import { describe, expect, it } from "vitest";
import { emptyFolders, TOOL } from "../tools/command.js";
import { LATE, millIn } from "../cli/mills.js";

const emptyFolder = emptyFolders();

/** Start of every sequence that a terminal takes for an order. */
const ESCAPE = "\u001b";
const CLEAR = `\r${ESCAPE}[K`;

/** Gives a command a terminal; a path may be set, as for other outside programs. */
const SCRIPT = env["MILLRACE_SCRIPT"] ?? "script";

// The program of other systems that goes by the same name takes other words.
const found = spawnSync(SCRIPT, ["--version"], { encoding: "utf8" });
const usable = found.error === undefined && found.stdout.includes("util-linux");

/** Runs a command on a terminal of its own; both outputs come as the terminal would show them. */
function onTerminal(
  folder: string,
  words: readonly string[],
  settings: Readonly<Record<string, string>> = {},
): { readonly code: number | null; readonly shown: string } {
  const quoted = [execPath, ...TOOL, ...words].map((word) => `'${word}'`).join(" ");
  const { NO_COLOR: _, ...others } = env;
  const { status, stdout, error } = spawnSync(SCRIPT, ["-qec", quoted, "/dev/null"], {
    cwd: folder,
    env: { ...others, TERM: "xterm", ...settings },
    encoding: "utf8",
    input: "",
  });
  if (error !== undefined) throw error;
  return { code: status, shown: stdout };
}

describe.skipIf(!usable && env["MILLRACE_OUTSIDE"] !== "required")(
  "script: a terminal sees what goes on, a pipe does not",
  { timeout: 60_000 },
  () => {
    const words = ["--as-of", LATE, "--draws", "100"];

    it("names each stage on one line, which is gone at the end", () => {
      const folder = millIn(emptyFolder());
      const { code, shown } = onTerminal(folder, ["report", ...words]);
      expect(code).toBe(0);
      const stages = shown.split(CLEAR);
      for (const stage of ["reading the log", "drawing", "writing"])
        expect(stages).toContain(`${stage} …`);
      expect(stages.at(-1)).toMatch(/^out\/report\.json\r\nout\/report\.html\r\nout\/report\.pdf/);
      expect(stages.at(-1)).not.toContain("…");
    });

    it("sees the kind of a problem in colour, unless NO_COLOR is set", () => {
      const folder = emptyFolder();
      const coloured = onTerminal(folder, ["check"]);
      expect(coloured.code).toBe(3);
      expect(coloured.shown).toContain(`${ESCAPE}[31mrefused:${ESCAPE}[0m plant.yaml: expected`);
      const plain = onTerminal(folder, ["check"], { NO_COLOR: "1" });
      expect(plain.shown).toMatch(/^refused: plant\.yaml: expected/m);
      expect(plain.shown).not.toContain(ESCAPE);
    });
  },
);
