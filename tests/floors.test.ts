import { builtinModules } from "node:module";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import manifest from "../package.json" with { type: "json" };
import { filesUnder, textOf } from "./tools/tree.js";

/**
 * The house, from the ground up. A folder imports from floors below, and on its own floor only from
 * folders named before it. `build` stands last: it leans on packages that users do not install.
 */
const HOUSE = [
  ["problems"],
  ["numbers", "units", "physics"],
  ["steps", "utilities", "factors", "log"],
  ["plant"],
  ["ledger"],
  ["account"],
  ["compare", "meters", "invest", "suppliers"],
  ["charts"],
  ["report"],
  ["cli", "build"],
];
const STAIRS = HOUSE.flat();

/** Packages that are kept behind one folder, so that each can be replaced there. */
const ONE_FOLDER: Readonly<Record<string, string>> = {
  "@clack/prompts": "cli",
  "@observablehq/plot": "charts",
  commander: "cli",
  linkedom: "charts",
};

/** Packages that are kept behind one file. */
const ONE_FILE = ["csv-parse", "pdfkit"];

/** Entrances that lean on Node's own byte arrays, though they bundle; with the one to take instead. */
const OTHER_ENTRANCE: Readonly<Record<string, string>> = {
  "csv-parse": "csv-parse/browser/esm/sync",
  "csv-parse/sync": "csv-parse/browser/esm/sync",
};

interface Import {
  readonly from: string;
  readonly to: string;
}

/** Says what a list of imports does against the rules, one sentence each. */
function breaches(imports: readonly Import[]): string[] {
  const users = new Map<string, Set<string>>();
  const said = imports.flatMap(({ from, to }) => {
    const folder = folderOf(from);
    if (!STAIRS.includes(folder)) return [`${from}: ${folder} is no folder of the house`];
    if (to.startsWith(".")) {
      const target = folderOf(new URL(to, `file:///${from}`).pathname.slice(1));
      if (!STAIRS.includes(target)) return [`${from}: ${to} leaves the house`];
      return STAIRS.indexOf(target) > STAIRS.indexOf(folder)
        ? [`${from}: ${folder} may not import from ${target}`]
        : [];
    }
    if (to.startsWith("node:") || builtinModules.includes(to)) {
      return folder === "cli" || folder === "build"
        ? []
        : [`${from}: ${to} does not exist in a browser`];
    }
    const name = packageOf(to);
    users.set(name, (users.get(name) ?? new Set()).add(from));
    if (folder !== "build" && !(name in manifest.dependencies)) {
      return [`${from}: ${name} is not among the dependencies`];
    }
    const entrance = OTHER_ENTRANCE[to];
    if (entrance !== undefined) return [`${from}: ${to} needs Node; take ${entrance}`];
    const home = ONE_FOLDER[name];
    return home === undefined || home === folder ? [] : [`${from}: ${name} belongs to ${home}`];
  });
  for (const name of ONE_FILE) {
    const files = [...(users.get(name) ?? [])];
    if (files.length > 1) said.push(`${name} belongs to one file, not to ${files.join(" and ")}`);
  }
  return said;
}

function folderOf(path: string): string {
  const [top, folder, ...rest] = path.split("/");
  return top === "src" && folder !== undefined && rest.length > 0 ? folder : path;
}

function packageOf(specifier: string): string {
  return specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
}

const files = filesUnder("src", ".ts");
const imports = files.flatMap((from) =>
  ts
    .preProcessFile(textOf(from), true, true)
    .importedFiles.map((found): Import => ({ from, to: found.fileName })),
);

describe("floors", () => {
  it("reads files of every lower floor", () => {
    expect(new Set(files.map(folderOf))).toContain("problems");
    expect(imports.length).toBeGreaterThan(files.length / 4);
  });

  it("are kept by every import", () => {
    expect(breaches(imports)).toEqual([]);
  });

  it("hold every folder of the tree", () => {
    const strange = new Set(files.map(folderOf).filter((folder) => !STAIRS.includes(folder)));
    expect([...strange]).toEqual([]);
  });

  it.each<[Import[], string]>([
    [
      [{ from: "src/steps/pad.ts", to: "../plant/route.js" }],
      "src/steps/pad.ts: steps may not import from plant",
    ],
    [
      [{ from: "src/utilities/boiler.ts", to: "../factors/factor.js" }],
      "src/utilities/boiler.ts: utilities may not import from factors",
    ],
    [
      [{ from: "src/charts/bars.ts", to: "../report/document.js" }],
      "src/charts/bars.ts: charts may not import from report",
    ],
    [
      [{ from: "src/report/pdf/kit.ts", to: "../../cli/main.js" }],
      "src/report/pdf/kit.ts: report may not import from cli",
    ],
    [
      [{ from: "src/log/lot.ts", to: "../../tests/mill.js" }],
      "src/log/lot.ts: ../../tests/mill.js leaves the house",
    ],
    [
      [{ from: "src/log/lot.ts", to: "node:fs" }],
      "src/log/lot.ts: node:fs does not exist in a browser",
    ],
    [[{ from: "src/log/lot.ts", to: "fs" }], "src/log/lot.ts: fs does not exist in a browser"],
    [
      [{ from: "src/report/page.ts", to: "@observablehq/plot" }],
      "src/report/page.ts: @observablehq/plot belongs to charts",
    ],
    [
      [{ from: "src/charts/bars.ts", to: "fast-check" }],
      "src/charts/bars.ts: fast-check is not among the dependencies",
    ],
    [
      [{ from: "src/log/rows.ts", to: "csv-parse/sync" }],
      "src/log/rows.ts: csv-parse/sync needs Node; take csv-parse/browser/esm/sync",
    ],
    [
      [
        { from: "src/log/rows.ts", to: "csv-parse/browser/esm/sync" },
        { from: "src/meters/rows.ts", to: "csv-parse/browser/esm/sync" },
      ],
      "csv-parse belongs to one file, not to src/log/rows.ts and src/meters/rows.ts",
    ],
  ])("refuse %j", (wrong, complaint) => {
    expect(breaches(wrong)).toEqual([complaint]);
  });

  it("let a folder lean on its own and on those before it", () => {
    const right: Import[] = [
      { from: "src/log/rows.ts", to: "./lot.js" },
      { from: "src/log/rows.ts", to: "../steps/amounts.js" },
      { from: "src/physics/steam.ts", to: "../units/unit.js" },
      { from: "src/report/pdf/page.ts", to: "../../charts/bars.js" },
      { from: "src/build/assets.ts", to: "fontkit" },
      { from: "src/cli/main.ts", to: "node:fs" },
    ];
    expect(breaches(right)).toEqual([]);
  });
});
