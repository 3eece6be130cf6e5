import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { env, platform } from "node:process";
import { afterAll, describe, expect, it } from "vitest";
import { TOP } from "../tools/tree.js";

/** Building, packing and installing take their time. [ms] */
const PATIENCE = 180_000;

const REQUIRED = env["MILLRACE_OUTSIDE"] === "required";
const WINDOWS = platform === "win32";

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

// What npm tells the scripts it runs would lead an npm below it astray.
const PLAIN = Object.fromEntries(
  Object.entries(env).filter(
    ([name]) =>
      !/^npm_(?:package|lifecycle|command|execpath|node_execpath|config_(?:local_)?prefix)/i.test(
        name,
      ),
  ),
);

function run(folder: string, program: string, ...words: readonly string[]): Ended {
  const { status, stdout, stderr, error } = spawnSync(program, words, {
    cwd: folder,
    env: PLAIN,
    encoding: "utf8",
    timeout: PATIENCE,
    shell: WINDOWS,
  });
  if (error !== undefined) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** Whether packages can be fetched at all. */
const reachable =
  REQUIRED ||
  spawnSync("npm", ["ping", "--fetch-retries=0", "--fetch-timeout=10000"], {
    shell: WINDOWS,
    timeout: 20_000,
  }).status === 0;

const folders: string[] = [];
function folderFor(what: string): string {
  const folder = mkdtempSync(join(tmpdir(), `millrace-${what}-`));
  folders.push(folder);
  return folder;
}

/** A copy of what packing needs, so that the build does not take `dist` away from other tests. */
function copyOfTree(): string {
  const copy = folderFor("tree");
  for (const name of ["package.json", "tsconfig.json", "LICENSE", "README.md", "factors"])
    cpSync(join(TOP, name), join(copy, name), { recursive: true });
  for (const name of ["src", "templates", join("tests", "tools")])
    cpSync(join(TOP, name), join(copy, name), { recursive: true });
  symlinkSync(join(TOP, "node_modules"), join(copy, "node_modules"), "junction");
  return copy;
}

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe.skipIf(!reachable)("npm registry: the packed tool installs and works alone", () => {
  it(
    "lays out a mill, checks it and reports on it",
    () => {
      const packed = folderFor("packed");
      const pack = run(copyOfTree(), "npm", "pack", "--json", "--pack-destination", packed);
      expect(pack.code, pack.err).toBe(0);
      const json = pack.out.slice(pack.out.indexOf("["));
      const [tarball] = JSON.parse(json) as readonly {
        readonly filename: string;
        readonly files: readonly { readonly path: string }[];
      }[];
      const paths = tarball?.files.map(({ path }) => path) ?? [];
      expect(paths).toEqual(
        expect.arrayContaining([
          "LICENSE",
          "README.md",
          "dist/cli/main.js",
          "dist/factors.json",
          "dist/fonts/inter-regular.ttf",
          "dist/fonts/inter-regular.woff2",
          "factors/grid.yaml",
          "templates/mill/plant.yaml",
          "templates/report.md",
        ]),
      );
      expect(paths.filter((path) => /^(src|tests|examples)\//.test(path))).toEqual([]);

      const home = folderFor("installed");
      const file = join(packed, tarball?.filename ?? "");
      const install = run(
        home,
        "npm",
        ...["install", "--prefer-offline", "--no-audit", "--no-fund", file],
      );
      expect(install.code, install.err).toBe(0);
      const { devDependencies } = JSON.parse(readFileSync(join(TOP, "package.json"), "utf8")) as {
        devDependencies: Readonly<Record<string, string>>;
      };
      // Some may come along under a dependency; those that only build or test must not.
      for (const name of ["typescript", "vitest", "esbuild", "subset-font", "tsx"]) {
        expect(devDependencies).toHaveProperty(name);
        expect(existsSync(join(home, "node_modules", name)), name).toBe(false);
      }

      const mill = join(home, "mill");
      const tool = join(home, "node_modules", ".bin", WINDOWS ? "millrace.cmd" : "millrace");
      const npx = run(home, "npx", "--no-install", "millrace", "start", "mill");
      expect(npx.code, npx.err).toBe(0);
      for (const words of [
        ["check", "--as-of", "2026-11-25"],
        ["report", "--as-of", "2026-11-25", "--draws", "200"],
        ["explain", "water", "--as-of", "2026-11-25", "--draws", "200"],
      ]) {
        const { code, err } = run(mill, tool, ...words);
        expect([words[0], code, err]).toEqual([words[0], 0, ""]);
      }
      const made = (name: string): Buffer => readFileSync(join(mill, "out", name));
      expect(made("report.pdf").subarray(0, 5).toString("latin1")).toBe("%PDF-");
      expect(made("report.html").toString("utf8")).toContain("<!doctype html>");
      expect(JSON.parse(made("report.json").toString("utf8"))).toMatchObject({
        house: "Example Mill (invented)",
      });
    },
    PATIENCE,
  );
});
