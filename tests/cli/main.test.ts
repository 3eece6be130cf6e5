import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { check } from "../../src/cli/check.js";
import { explain } from "../../src/cli/explain.js";
import { factors } from "../../src/cli/factors.js";
import { report } from "../../src/cli/report.js";
import type { Problem } from "../../src/problems/problem.js";
import { sentence } from "../../src/problems/sentence.js";
import { type Ended, emptyFolders, millrace } from "../tools/command.js";
import { changed, heard, LATE, millIn } from "./mills.js";

/** Processes are slow to start on a busy machine. [ms] */
const PATIENCE = 60_000;
const STACK = /^\s+at .+:\d+:\d+\)?$/m;

const emptyFolder = emptyFolders();

describe("a wrong command line", { timeout: PATIENCE }, () => {
  it.each([
    [["report", "--colour"], "--colour"],
    [["report", "--clint", "Client Alder"], "Did you mean --client?"],
    [["check", "--jso"], "Did you mean --json?"],
    [["reprot"], "Did you mean report?"],
    [["explain"], "indicator"],
    [["report", "--draws"], "--draws"],
  ])("%j ends with code 2 and says %s", (words, said) => {
    const { code, out, err } = millrace(emptyFolder(), ...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(said);
    expect(err).not.toMatch(STACK);
  });

  it.each([
    [
      ["report", "--from", "2026-12-01", "--to", "2026-01-01"],
      ["--to", "2026-12-01", "2026-01-01"],
    ],
    [
      ["check", "--from", "2026-12-01", "--to", "2026-01-01"],
      ["--to", "2026-12-01", "2026-01-01"],
    ],
    [
      ["report", "--from", "2026-02-30"],
      ["--from", "2026-02-30", "a day"],
    ],
    [
      ["report", "--to", "soon"],
      ["--to", "soon", "a day"],
    ],
    [
      ["factors", "--as-of", "26"],
      ["--as-of", "26", "a day"],
    ],
    [
      ["report", "--draws", "0"],
      ["--draws", "0", "from 100 to 1000000"],
    ],
    [
      ["report", "--seed", "x"],
      ["--seed", "x", "a whole number"],
    ],
    [
      ["report", "--per", "yard"],
      ["--per", "yard", "m2, kg, m, total"],
    ],
    [
      ["report", "--formats", "docx"],
      ["--formats", "docx", "html, pdf, json"],
    ],
    [
      ["check", "--max-aside", "5x"],
      ["--max-aside", "5x", "12", "5%"],
    ],
    [
      ["explain", "watr"],
      ["watr", "evaporated", "Did you mean water?"],
    ],
  ])("%j is refused in one line with option, value and what is expected", (words, said) => {
    const { code, out, err } = millrace(emptyFolder(), ...words);
    expect([code, out]).toEqual([2, ""]);
    expect(err.trimEnd().split("\n")).toHaveLength(1);
    expect(err).toMatch(/^error: /);
    for (const part of said) expect(err).toContain(part);
  });
});

/** Problems printed as data, on standard output alone. */
function problemsOf({ out, err }: Ended): readonly Problem[] {
  expect(err).toBe("");
  const { problems } = JSON.parse(out) as { readonly problems: readonly Problem[] };
  expect(problems.length).toBeGreaterThan(0);
  for (const problem of problems) {
    expect(problem.code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(sentence(problem)).toMatch(/expected .+\. .+[.?]$/);
  }
  return problems;
}

describe(
  "a refusal before the command runs, where data is asked for",
  { timeout: PATIENCE },
  () => {
    it.each([
      [["report", "--clint", "x", "--json"], "Did you mean --client?"],
      [["explain", "--json"], "missing required argument 'indicator'"],
      [["report", "--draws", "0", "--json"], "from 100 to 1000000 after --draws"],
      [["explain", "co2", "--json"], "Did you mean co2-location or co2-market?"],
    ])("%j is data, with code 2", (words, said) => {
      const ended = millrace(emptyFolder(), ...words);
      expect(ended.code).toBe(2);
      const [problem] = problemsOf(ended);
      expect(problem).toMatchObject({ code: "command-line", severity: "refused" });
      expect(problem === undefined ? "" : sentence(problem)).toContain(said);
    });

    it("is data with code 3 when the system refuses a path", () => {
      const folder = millIn(emptyFolder());
      writeFileSync(join(folder, "taken"), "");
      const out = join("taken", "out");
      const words = ["--formats", "json", "--draws", "100", "--as-of", LATE, "--out", out];
      const ended = millrace(folder, "report", "--json", ...words);
      expect(ended.code).toBe(3);
      expect(problemsOf(ended)).toMatchObject([{ code: "path-unusable", severity: "refused" }]);
    });
  },
);

describe("a refusal of a command, where data is asked for", () => {
  let mill = "";
  let broken = "";
  let unpriced = "";

  beforeAll(() => {
    mill = millIn(emptyFolder());
    mkdirSync(join(mill, "logs"));
    writeFileSync(join(mill, "empty.csv"), "");
    writeFileSync(join(mill, "strange.csv"), "a,b\n1,2\n");
    broken = millIn(emptyFolder());
    changed(broken, "plant.yaml", (text) => text.replace("    boiler: {", "    boilr: {"));
    mkdirSync(join(broken, "factors"));
    unpriced = millIn(emptyFolder());
    changed(unpriced, "plant.yaml", (text) => text.replace(/^ {4}tariffs:\n(?: {6}.*\n)+/m, ""));
  });

  type Change = Readonly<Record<string, string>>;
  interface Case {
    readonly what: string;
    readonly code: string;
    readonly folder: () => string;
    readonly logs?: readonly string[];
    readonly change?: Change;
    readonly indicator?: string;
    readonly of?: readonly (keyof typeof COMMANDS)[];
  }

  const options = (folder: string, change: Change = {}) => ({
    plant: join(folder, "plant.yaml"),
    asOf: LATE,
    out: join(folder, "out"),
    formats: ["json"],
    per: "m2" as const,
    draws: 100,
    seed: 1,
    terms: 3,
    rows: 3,
    json: true,
    ...change,
  });
  type Options = ReturnType<typeof options>;

  const COMMANDS = {
    check: (logs: readonly string[], given: Options) => check(logs, given),
    report: (logs: readonly string[], given: Options) => report(logs, given),
    explain: (logs: readonly string[], given: Options, id: string) => explain(id, logs, given),
    factors: (_: readonly string[], given: Options) => Promise.resolve(factors("", given)),
  };
  const READERS = ["check", "report", "explain"] as const;
  const WORKERS = ["report", "explain"] as const;

  const cases: readonly Case[] = [
    { what: "no plant file", code: "file-missing", folder: emptyFolder },
    {
      what: "a folder for the plant file",
      code: "file-is-folder",
      folder: () => mill,
      change: { plant: "." },
      of: READERS,
    },
    { what: "a plant file with an unknown key", code: "unknown-key", folder: () => broken },
    { what: "no log", code: "file-missing", folder: () => mill, logs: ["gone.csv"], of: READERS },
    {
      what: "a folder for a log",
      code: "file-is-folder",
      folder: () => mill,
      logs: ["logs"],
      of: READERS,
    },
    {
      what: "an empty log",
      code: "log-empty",
      folder: () => mill,
      logs: ["empty.csv"],
      of: READERS,
    },
    {
      what: "a log of other columns",
      code: "missing-column",
      folder: () => mill,
      logs: ["strange.csv"],
      of: READERS,
    },
    {
      what: "a client of no lot",
      code: "nothing-to-report",
      folder: () => mill,
      change: { client: "Nobody" },
      of: WORKERS,
    },
    {
      what: "a site that is none",
      code: "nothing-to-report",
      folder: () => mill,
      change: { site: "mian" },
      of: WORKERS,
    },
    {
      what: "a route that is none",
      code: "nothing-to-report",
      folder: () => mill,
      change: { route: "reactiv" },
      of: ["explain"],
    },
    {
      what: "an indicator without its numbers",
      code: "indicator-absent",
      folder: () => unpriced,
      indicator: "cost",
      of: ["explain"],
    },
  ];

  const each = cases.flatMap((one) =>
    (one.of ?? READERS).map((command) => ({ ...one, command, logs: one.logs ?? [] })),
  );

  it.each(each)("is data: $what, asked by $command", async (one) => {
    const folder = one.folder();
    const logs = one.logs.map((log) => join(folder, log));
    const given = options(folder, one.change);
    const run = COMMANDS[one.command];
    const ended = await heard(() => run(logs, given, one.indicator ?? "water"));
    expect(ended.code).toBe(3);
    const codes = problemsOf(ended).map(({ code }) => code);
    expect(codes).toContain(one.code);
  });

  it("is data when own factors cannot be read, or the path beside them is wrong", async () => {
    const folder = millIn(emptyFolder());
    mkdirSync(join(folder, "factors"));
    writeFileSync(join(folder, "factors", "own.yaml"), "factors: [");
    for (const command of ["check", "report", "explain", "factors"] as const) {
      const ended = await heard(() => COMMANDS[command]([], options(folder), "water"));
      expect(ended.code).toBe(3);
      expect(problemsOf(ended)[0]?.file).toContain("own.yaml");
    }
    const gone = await heard(() => factors("", options(join(folder, "gone"))));
    expect(gone.code).toBe(3);
    expect(problemsOf(gone)).toMatchObject([{ code: "file-missing" }]);
  });
});
