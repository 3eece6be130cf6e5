import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { execPath } from "node:process";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bundleCommands } from "../../src/build/bundle.js";
import { TOP } from "../tools/tree.js";

const folder = mkdtempSync(join(tmpdir(), "millrace-bundle-"));
const target = join(folder, "cli");

beforeAll(async () => {
  await bundleCommands(TOP, target);
}, 60_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("bundleCommands", () => {
  it("makes a command that runs by itself", () => {
    const { status, stdout } = spawnSync(execPath, [join(target, "main.js"), "--version"], {
      encoding: "utf8",
    });
    const { version } = JSON.parse(readFileSync(join(TOP, "package.json"), "utf8")) as {
      readonly version: string;
    };
    expect(status).toBe(0);
    expect(stdout.trim()).toBe(version);
  });

  it("makes the thread that sets the PDF", () => {
    expect(existsSync(join(target, "press-thread.js"))).toBe(true);
  });

  it("keeps help apart from what only reports need", () => {
    // The entry and what it imports outright; chunks are named by their content.
    const entry = readFileSync(join(target, "main.js"), "utf8");
    const weight = [...entry.matchAll(/^import .*"\.\/([^"]+)";$/gm)]
      .map(([, name = ""]) => statSync(join(target, name)).size)
      .reduce((sum, size) => sum + size, entry.length);
    const all = readdirSync(target).reduce(
      (sum, name) => sum + statSync(join(target, name)).size,
      0,
    );
    expect(weight).toBeLessThan(all / 10);
  });

  it("writes the licence of every package inside, and of none outside", () => {
    const text = readFileSync(join(target, "LICENCES.txt"), "utf8");
    for (const name of ["commander", "csv-parse", "liquidjs", "yaml", "zod"])
      expect(text).toMatch(new RegExp(`^${name} \\d+\\.`, "m"));
    expect(text).not.toMatch(/^pdfkit /m);
    expect(text).not.toContain("The package holds no licence text.");
  });
});
