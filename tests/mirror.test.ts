import ts from "typescript";
import { describe, expect, it } from "vitest";
import { filesUnder, textOf } from "./tools/tree.js";

/** Sources that share one test file, by the start of their paths, each with the reason. */
const FAMILIES: readonly {
  readonly sources: string;
  readonly test: string;
  readonly why: string;
}[] = [
  {
    sources: "src/physics/if97-region",
    test: "tests/physics/if97.test.ts",
    why: "one published formulation in pieces; its check values and the joins between regions belong together",
  },
];

/** Folders of tests that mirror nothing: they judge the whole. */
const WHOLE = ["bench", "outside", "tools"];

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

function testOf(source: string): string {
  const family = FAMILIES.find(({ sources }) => source.startsWith(sources));
  if (family !== undefined) return family.test;
  return source.replace(/^src\//, "tests/").replace(/\.ts$/, ".test.ts");
}

const sources = filesUnder("src", ".ts");
const tests = filesUnder("tests", ".test.ts");

describe("mirror", () => {
  it("has a source for every test in a folder", () => {
    const alone = tests
      .filter((test) => test.split("/").length > 2 && !WHOLE.includes(test.split("/")[1] ?? ""))
      .filter((test) => !sources.some((source) => testOf(source) === test));
    expect(alone).toEqual([]);
  });

  it("has a test for every source that does something", () => {
    const bare = sources
      .filter((source) => hasBehaviour(source, textOf(source)))
      .filter((source) => !tests.includes(testOf(source)));
    expect(bare).toEqual([]);
  });

  it("excuses no family that is gone", () => {
    const stale = FAMILIES.filter(
      (family) => sources.filter((source) => source.startsWith(family.sources)).length < 2,
    );
    expect(stale).toEqual([]);
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
