import { posix } from "node:path";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { filesUnder, textOf } from "./tools/tree.js";

/** Sources whose behaviour one test of the whole holds, where they have no test of their own. */
interface Family {
  /** Start of their paths. */
  readonly sources: string;
  /** Tests of the whole. */
  readonly tests: readonly string[];
  /** Source that the tests start as a process of its own; they import the sources when absent. */
  readonly started?: string;
  /** Why they are not tested one by one. */
  readonly why: string;
}

const FAMILIES: readonly Family[] = [
  {
    sources: "src/physics/if97-region",
    tests: ["tests/physics/if97.test.ts"],
    why: "one published formulation in pieces; its check values and the joins between regions belong together",
  },
  {
    sources: "src/units/unit-table.ts",
    tests: ["tests/units/convert.test.ts"],
    why: "a table of units, which shows itself in conversions alone",
  },
  {
    sources: "src/report/pdf/",
    tests: ["tests/report/pdf/write-pdf.test.ts", "tests/report/pdf/layout.test.ts"],
    why: "what a piece puts on a page can be judged on the finished file only, as a reader opens it",
  },
  {
    sources: "src/report/compose/",
    tests: ["tests/report/compose/compose.test.ts"],
    why: "each piece writes blocks of one document, and the laws bind the document: wording, places, figures",
  },
  {
    sources: "src/invest/",
    tests: ["tests/invest/findings.test.ts", "tests/invest/read-invest.test.ts"],
    why: "pieces of one reckoning: what a piece gives shows in the worth of an option or in a fault of the file",
  },
  {
    sources: "src/report/invest/",
    tests: ["tests/report/invest/compose.test.ts"],
    why: "each piece writes blocks of one document, as in src/report/compose",
  },
  {
    sources: "src/cli/",
    tests: ["tests/cli/commands.test.ts", "tests/cli/privacy.test.ts"],
    started: "src/cli/main.ts",
    why: "a command is what it prints, writes and ends with, so each is run as a process",
  },
];

/** Folders of tests that mirror nothing: they judge the whole. */
const WHOLE = ["against-print", "bench", "outside", "tools", "validate"];

/** Says whether a source holds something that can go wrong when run, and hands it out. */
function hasBehaviour(path: string, text: string): boolean {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.ES2023, true);
  const works = (node: ts.Node): boolean =>
    (ts.isFunctionLike(node) && "body" in node && node.body !== undefined) ||
    ts.forEachChild(node, (child) => works(child) || undefined) === true;
  const handsOut = source.statements.some(
    (statement) =>
      !ts.isInterfaceDeclaration(statement) &&
      !ts.isTypeAliasDeclaration(statement) &&
      ts.canHaveModifiers(statement) &&
      (ts.getModifiers(statement) ?? []).some(
        (modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword,
      ),
  );
  const listed = source.statements.some(
    (statement) => ts.isExportDeclaration(statement) && !statement.isTypeOnly,
  );
  return works(source) && (handsOut || listed);
}

const sources = filesUnder("src", ".ts");
const tests = filesUnder("tests", ".test.ts");

function ownTest(source: string): string {
  return source.replace(/^src\//, "tests/").replace(/\.ts$/, ".test.ts");
}

function familyOf(source: string): Family | undefined {
  if (tests.includes(ownTest(source))) return undefined;
  return FAMILIES.find((family) => source.startsWith(family.sources));
}

/** Sources that a file imports, and all that those import. */
function reachedFrom(start: string): ReadonlySet<string> {
  const reached = new Set<string>();
  const visit = (path: string): void => {
    if (reached.has(path)) return;
    reached.add(path);
    for (const [, , name = ""] of textOf(path).matchAll(/(from|import\()\s*"(\.[^"]+)\.js"/g)) {
      const target = `${posix.join(posix.dirname(path), name)}.ts`;
      if (sources.includes(target) || target.startsWith("tests/")) visit(target);
    }
  };
  visit(start);
  return reached;
}

describe("mirror", () => {
  it("has a source for every test in a folder", () => {
    const alone = tests
      .filter((test) => test.split("/").length > 2 && !WHOLE.includes(test.split("/")[1] ?? ""))
      .filter((test) => !sources.some((source) => ownTest(source) === test))
      .filter((test) => !FAMILIES.some((family) => family.tests.includes(test)));
    expect(alone).toEqual([]);
  });

  it("has a test for every source that does something", () => {
    const bare = sources
      .filter((source) => hasBehaviour(source, textOf(source)))
      .filter((source) => !tests.includes(ownTest(source)) && familyOf(source) === undefined);
    expect(bare).toEqual([]);
  });

  it("excuses no family that is gone or has all its tests", () => {
    const stale = FAMILIES.filter(
      (family) => !sources.some((source) => familyOf(source) === family),
    );
    expect(stale).toEqual([]);
  });

  it.each(FAMILIES)("reaches all of $sources from the tests of the whole", (family) => {
    expect(family.tests.filter((test) => !tests.includes(test))).toEqual([]);
    const starts = family.started === undefined ? family.tests : [family.started];
    const reached = new Set(starts.flatMap((start) => [...reachedFrom(start)]));
    const beyond = sources
      .filter((source) => familyOf(source) === family && hasBehaviour(source, textOf(source)))
      .filter((source) => !reached.has(source));
    expect(beyond).toEqual([]);
  });

  it("writes file names in kebab case", () => {
    const kebab = /^[a-z0-9]+(-[a-z0-9]+)*(\.test|\.d)?\.ts$/;
    const odd = [...sources, ...tests].filter((path) => !kebab.test(path.split("/").at(-1) ?? ""));
    expect(odd).toEqual([]);
  });

  it.each([
    ["export function twice(x: number): number { return 2 * x; }", true],
    ["export const twice = (x: number): number => 2 * x;", true],
    ["export const pad = { build(): number { return 1; } };", true],
    ["export class Pad { build(): number { return 1; } }", true],
    ["function twice(): void {}\nexport { twice };", true],
    ["export interface Pad { readonly build: () => number }", false],
    ["export declare function twice(x: number): number;", false],
    ["export const WIDTHS = [1, 2, 3] as const;", false],
  ])("takes %j for a source that does something: %s", (text, behaves) => {
    expect(hasBehaviour("src/steps/pad.ts", text)).toBe(behaves);
  });
});
