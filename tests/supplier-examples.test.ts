import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process, { execPath } from "node:process";
import { afterAll, describe, expect, it } from "vitest";
import { TOP } from "./tools/tree.js";

const KEPT = join(TOP, "examples", "suppliers");
const made = mkdtempSync(join(tmpdir(), "millrace-suppliers-"));

afterAll(() => {
  rmSync(made, { recursive: true });
});

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((name) => statSync(join(folder, name)).isFile())
    .sort();
}

describe("the five invented suppliers", () => {
  it("are made again byte for byte, whatever the language and clock of the machine", () => {
    const { status, stderr } = spawnSync(execPath, ["examples/make-suppliers.mjs", made], {
      cwd: TOP,
      encoding: "utf8",
      env: { ...process.env, LC_ALL: "tr_TR.UTF-8", TZ: "Pacific/Kiritimati" },
    });
    expect([status, stderr]).toEqual([0, ""]);
    expect(filesIn(made)).toEqual(filesIn(KEPT));
    for (const name of filesIn(KEPT))
      expect(readFileSync(join(made, name)).equals(readFileSync(join(KEPT, name))), name).toBe(
        true,
      );
  });

  it("say that they are invented", () => {
    for (const name of ["ash", "brook", "cliff", "dell", "eyot"])
      expect(readFileSync(join(KEPT, name, "plant.yaml"), "utf8")).toMatch(
        /^# Supplier \w+ is invented/,
      );
  });
});
