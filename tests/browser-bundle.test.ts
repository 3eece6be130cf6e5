import { createContext, runInContext } from "node:vm";
import { build, type BuildResult } from "esbuild";
import { describe, expect, it } from "vitest";
import { filesUnder, TOP } from "./tools/tree.js";

/**
 * What the libraries may ask for and do without: the drawing tree looks for a canvas inside a `try`,
 * and offers none when there is none.
 */
const DONE_WITHOUT = ["canvas"];

/** What every browser and worker has beside the language itself. */
const BROWSER = {
  AbortController,
  AbortSignal,
  Blob,
  crypto,
  Event,
  EventTarget,
  TextDecoder,
  TextEncoder,
  URL,
  URLSearchParams,
  atob,
  btoa,
  clearTimeout,
  performance,
  queueMicrotask,
  setTimeout,
  structuredClone,
};

async function bundled(entry: string): Promise<BuildResult<{ metafile: true; write: false }>> {
  return build({
    stdin: { contents: entry, resolveDir: TOP, loader: "ts" },
    bundle: true,
    write: false,
    metafile: true,
    platform: "browser",
    format: "iife",
    globalName: "house",
    target: "es2023",
    logLevel: "silent",
    define: { "import.meta.url": JSON.stringify("https://mill.example/house.js") },
  });
}

function missing(result: BuildResult<{ metafile: true; write: false }>): string[] {
  return Object.values(result.metafile.outputs)
    .flatMap((output) => output.imports.map((found) => found.path))
    .filter((path) => !DONE_WITHOUT.includes(path));
}

function load(script: string): void {
  const page: Record<string, unknown> = { ...BROWSER };
  page["self"] = page["window"] = page;
  runInContext(script, createContext(page));
}

describe("browser bundle", () => {
  const modules = filesUnder("src", ".ts").filter(
    (path) => !path.startsWith("src/cli/") && !path.startsWith("src/build/"),
  );
  const entry = modules
    .map((path, index) => `export * as m${index} from ${JSON.stringify(`./${path}`)};`)
    .join("\n");

  it("takes in everything below the command line, and loads without a machine around it", async () => {
    const result = await bundled(entry);
    expect(result.errors).toEqual([]);
    expect(missing(result)).toEqual([]);
    for (const path of modules) expect(Object.keys(result.metafile.inputs)).toContain(path);

    load(result.outputFiles[0]?.text ?? "");
  }, 60_000);

  it("cannot take in a file of the machine", async () => {
    await expect(
      bundled('import { readFileSync } from "node:fs"; readFileSync("log.csv");'),
    ).rejects.toThrow('Could not resolve "node:fs"');
  });

  it("cannot load with a variable of the machine", async () => {
    const result = await bundled("export const house = process.env;");
    expect(() => load(result.outputFiles[0]?.text ?? "")).toThrow("process is not defined");
  });
});
