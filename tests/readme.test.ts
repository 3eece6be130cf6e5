import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path/posix";
import { execPath } from "node:process";
import { pathToFileURL } from "node:url";
import MarkdownIt from "markdown-it";
import { describe, expect, it } from "vitest";
import { filesUnder, textOf, TOP } from "./tools/tree.js";

const PAGES = filesUnder(".", ".md");
const MAIN = "src/cli/main.ts";

// Lets Node run the tool from its sources, as the tree has no build of its own before one is asked for.
const require = createRequire(import.meta.url);
const LOADER = pathToFileURL(require.resolve("tsx")).href;

/** Starting the tool from its sources takes a moment on a busy machine. [ms] */
const PATIENCE = 60_000;

interface Page {
  /** Targets of links and pictures, as written. */
  readonly links: readonly string[];
  /** Names that `#name` in a link may point to. */
  readonly anchors: ReadonlySet<string>;
  /** Lines of the blocks marked `sh`. */
  readonly lines: readonly string[];
}

function read(text: string): Page {
  const links: string[] = [];
  const lines: string[] = [];
  const anchors = new Set<string>();
  const tokens = new MarkdownIt({ html: true }).parse(text, {});
  tokens.forEach((token, index) => {
    if (token.type === "heading_open") anchors.add(anchor(tokens[index + 1]?.content ?? ""));
    if (token.type === "fence" && token.info.trim() === "sh") {
      lines.push(...token.content.replaceAll("\\\n", " ").split("\n"));
    }
    for (const child of token.children ?? []) {
      const target = child.attrGet("href") ?? child.attrGet("src");
      if (target !== null) links.push(`${target}`);
    }
  });
  return { links, anchors, lines };
}

// As code hosts make them: small letters, no marks, hyphens for blanks.
function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s_-]/gu, "")
    .replace(/\s/g, "-");
}

/** Names the links of a page that lead nowhere in the tree; those to other hosts are not followed. */
function deadLinks(path: string, page: Page): string[] {
  return page.links
    .filter((link) => !/^[a-z]+:/.test(link))
    .filter((link) => {
      const [file = "", fragment] = decodeURI(link).split("#", 2);
      const target = file === "" ? path : join(dirname(path), file);
      if (target.startsWith("..") || !existsSync(TOP + target)) return true;
      if (fragment === undefined) return false;
      return !target.endsWith(".md") || !read(textOf(target)).anchors.has(fragment);
    })
    .map((link) => `${path}: ${link}`);
}

interface Call {
  readonly command: string;
  readonly flags: readonly string[];
}

/** The calls of the tool in lines meant for a shell. */
function callsIn(lines: readonly string[]): Call[] {
  return lines
    .flatMap((line) => line.replace(/(^|\s)#.*$/, "").split(/&&|\|\|?|;/))
    .map((part) => part.trim().split(/\s+/))
    .map((words) => (words[0] === "npx" ? words.slice(1) : words))
    .filter((words) => words[0] === "millrace")
    .map(([, ...words]) => ({
      command: words.find((word) => !word.startsWith("-")) ?? "",
      flags: words
        .filter((word) => /^--?[a-z]/i.test(word))
        .map((word) => word.replace(/=.*$/, "")),
    }));
}

/** Names what a call asks for that the tool's help does not offer. */
function unknownIn(calls: readonly Call[], help: (command: string) => string): string[] {
  const general = help("");
  return calls.flatMap(({ command, flags }) => {
    if (command !== "" && !new RegExp(`^ +${command}\\b`, "m").test(general)) {
      return [`millrace ${command}`];
    }
    const offered = new Set(help(command).match(/(?<![\w-])--?[a-z][\w-]*/gi));
    return flags
      .filter((flag) => !offered.has(flag))
      .map((flag) => `millrace ${command} ${flag}`.replace("  ", " "));
  });
}

function helpOf(command: string): string {
  const words = command === "" ? ["--help"] : [command, "--help"];
  const { status, stdout, stderr } = spawnSync(execPath, ["--import", LOADER, MAIN, ...words], {
    cwd: TOP,
    encoding: "utf8",
    timeout: PATIENCE,
  });
  if (status !== 0) throw new Error(`millrace ${words.join(" ")} ended with ${status}: ${stderr}`);
  return stdout;
}

describe("readme", () => {
  it("exists, and shows the tool at work", () => {
    expect(PAGES).toContain("README.md");
    expect(callsIn(read(textOf("README.md")).lines).length).toBeGreaterThan(0);
  });

  it("leads to files and headings that exist, as does every page beside it", () => {
    expect(PAGES.flatMap((path) => deadLinks(path, read(textOf(path))))).toEqual([]);
  });

  it.skipIf(!existsSync(TOP + MAIN))(
    "calls commands and flags that the tool has",
    () => {
      const told = new Map<string, string>();
      const help = (command: string): string => {
        const text = told.get(command) ?? helpOf(command);
        told.set(command, text);
        return text;
      };
      const calls = PAGES.flatMap((path) => callsIn(read(textOf(path)).lines));
      expect(unknownIn(calls, help)).toEqual([]);
    },
    PATIENCE,
  );

  it("notices a link that leads nowhere", () => {
    const page = read(
      [
        "# The mill's log",
        "[a](package.json) [b](tests/no-such-file.ts) [c](#the-mills-log) [d](#no-such-heading)",
        "![e](../picture.png) [f](https://example.org/)",
      ].join("\n\n"),
    );
    expect(page.anchors.has("the-mills-log")).toBe(true);
    expect(deadLinks("no-page.md", { ...page, links: page.links.slice(0, 2) })).toEqual([
      "no-page.md: tests/no-such-file.ts",
    ]);
    expect(deadLinks("no-page.md", { ...page, links: page.links.slice(4) })).toEqual([
      "no-page.md: ../picture.png",
    ]);
  });

  it("notices commands and flags that the tool lacks", () => {
    const lines = read(
      [
        "```sh",
        "npx millrace report my-mill --out \\",
        "  out --draws=100 # --no-flag",
        "npm test && millrace weave --fast; millrace -V",
        "```",
        "```yaml",
        "millrace: --not-a-call",
        "```",
      ].join("\n"),
    ).lines;
    const help = (command: string): string =>
      command === "report"
        ? "Usage: millrace report [folder]\n  --out <folder>  where to"
        : "Commands:\n  report  writes\nOptions:\n  -V, --version";
    expect(callsIn(lines)).toEqual([
      { command: "report", flags: ["--out", "--draws"] },
      { command: "weave", flags: ["--fast"] },
      { command: "", flags: ["-V"] },
    ]);
    expect(unknownIn(callsIn(lines), help)).toEqual(["millrace report --draws", "millrace weave"]);
  });
});
