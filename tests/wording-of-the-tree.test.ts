import { describe, expect, it } from "vitest";
import { filesUnder, textOf } from "./tools/tree.js";

interface Rule {
  readonly what: string;
  readonly pattern: RegExp;
  /** Files it is not asked of. */
  readonly except?: RegExp;
}

const MARKS = ["TO" + "DO", "FIX" + "ME", "XX" + "X", "HA" + "CK"];

const RULES: readonly Rule[] = [
  {
    what: "a note of unfinished work",
    pattern: new RegExp(`\\b(${MARKS.join("|")})\\b`),
    // Checksums may spell anything.
    except: /^package-lock\.json$/,
  },
  {
    what: "a test that shuts out others, or is shut out",
    pattern: /\b(it|test|describe|suite|bench)(\.\w+)*\.(only|skip|todo)\b/,
  },
  {
    what: "a folder of somebody's machine",
    pattern: /(?<![\w.:-])(\/(home|root|work|Users)\/|[A-Z]:[\\/]+Users)/,
  },
  {
    what: "a host that packages are fetched from",
    pattern:
      /"resolved"\s*:\s*"http|\bregistry\.[\w-]+\.\w|\/\/(deb|mirror|nexus|npm|packages?)\.\w/i,
  },
  { what: "a merge left half done", pattern: /^(<{7}|>{7})( |$)/m },
];

const BINARY = /\.(gz|jpe?g|otf|pdf|png|tgz|ttf|wasm|woff2?|zip)$/;

/** Names the rules that a text breaks, each with the line of its first breach. */
function breaches(path: string, text: string): string[] {
  return RULES.filter((rule) => rule.except?.test(path) !== true).flatMap((rule) => {
    const found = rule.pattern.exec(text);
    if (found === null) return [];
    const line = text.slice(0, found.index).split("\n").length;
    return [`${path}, line ${line}: ${rule.what}: ${found[0].trim()}`];
  });
}

describe("wording of the tree", () => {
  const paths = filesUnder(".").filter((path) => !BINARY.test(path));

  it("reads sources, tests and settings alike", () => {
    expect(paths).toEqual(
      expect.arrayContaining([
        ".ci/run",
        "package.json",
        "src/problems/problem.ts",
        "tests/tools/check.mjs",
      ]),
    );
  });

  it("holds nothing that belongs elsewhere", () => {
    expect(paths.flatMap((path) => breaches(path, textOf(path)))).toEqual([]);
  });

  it.each([
    [`// ${MARKS[0] ?? ""}: later`],
    [`// ${MARKS[1] ?? ""} this`],
    ["it" + ".only(name, body)"],
    ["describe" + ".skip(name, body)"],
    ["it" + ".each" + ".only(rows)"],
    ["read('/" + "home/mill/log.csv')"],
    ["/" + "work/mill"],
    ["C:\\" + "Users\\mill"],
    ["https://" + "registry" + ".example.org/pad"],
    ["deb http:/" + "/deb" + ".example.org/ stable main"],
    ['"resolved"' + ': "https://example.org/pad.tgz"'],
    ["<".repeat(7) + " mine"],
  ])("names %j", (text) => {
    expect(breaches("src/steps/pad.ts", `first line\n${text}`)).toEqual([
      expect.stringContaining("src/steps/pad.ts, line 2: "),
    ]);
  });

  it.each([
    ["https://example.org/home/page"],
    ["the mill's own homework/exercise"],
    ["list.skip(3)"],
    ["packages.filter(named).length"],
    ["tests/mirror.test.ts"],
  ])("lets %j pass", (text) => {
    expect(breaches("src/steps/pad.ts", text)).toEqual([]);
  });
});
