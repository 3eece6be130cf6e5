// Puts the command line into few files: hundreds of small modules take longer to open than the demo's log
// takes to read. The packages inside keep their licences, which are written beside them.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

/** Modules that are started by name. */
const ENTRIES = ["main", "press-thread"];

/**
 * Bundles the command line with all it takes from packages.
 *
 * @param top - folder of package.json
 * @param target - folder the compiler wrote the command line to; it is emptied first
 */
export async function bundleCommands(top: string, target: string): Promise<void> {
  rmSync(target, { recursive: true, force: true });
  const { metafile } = await build({
    absWorkingDir: top,
    entryPoints: ENTRIES.map((name) => join("src", "cli", `${name}.ts`)),
    outdir: target,
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20.19",
    metafile: true,
    // It reads its own data files from where it is installed.
    external: ["pdfkit"],
    legalComments: "none",
    logLevel: "error",
    // Packages of the older kind ask for `require`, which modules do not have.
    banner: {
      js: 'import { createRequire as requiring } from "node:module";\nconst require = requiring(import.meta.url);',
    },
  });
  writeFileSync(join(target, "LICENCES.txt"), licences(top, Object.keys(metafile.inputs)));
}

function licences(top: string, inputs: readonly string[]): string {
  const folders = new Set(
    inputs.flatMap((path) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []),
  );
  const texts = [...folders].sort().map((folder) => {
    const manifest = JSON.parse(readFileSync(join(top, folder, "package.json"), "utf8")) as {
      readonly name: string;
      readonly version: string;
      readonly license?: string;
    };
    const file = readdirSync(join(top, folder)).find((name) => /^(licen[cs]e|copying)/i.test(name));
    const text =
      file === undefined || !existsSync(join(top, folder, file))
        ? "The package holds no licence text."
        : readFileSync(join(top, folder, file), "utf8").trim();
    return `${manifest.name} ${manifest.version} (${manifest.license ?? "see text"})\n\n${text}\n`;
  });
  return texts.join(`\n${"-".repeat(72)}\n\n`);
}
