import { once } from "node:events";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { emptyFolders, millrace, startMillrace } from "../tools/command.js";
import { TOP } from "../tools/tree.js";
import { changed, LATE, millIn } from "./mills.js";

// Processes are slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const emptyFolder = emptyFolders();

/** Later than every lot and every factor of the mills below. */
const DAY = ["--as-of", LATE] as const;
const FEW = ["--draws", "100"] as const;
const JSON_ONLY = ["--formats", "json"] as const;
const DEMO = join(TOP, "examples", "demo");
const STACK = /^\s+at .+:\d+:\d+\)?$/m;

interface Counts {
  readonly rows: number;
  readonly accepted: number;
  readonly corrected: number;
  readonly setAside: number;
  readonly outside: number;
}

interface Checked {
  readonly files: readonly Counts[];
  readonly counts: Readonly<Record<string, { readonly severity: string; readonly count: number }>>;
  readonly problems: readonly unknown[];
  readonly setaside: string | null;
  readonly exit: number;
}

function freshMill(): string {
  return millIn(emptyFolder());
}

/** A refusal in plain words that leaves nothing behind. */
function expectRefused(folder: string, ...words: readonly string[]): string {
  const before = readdirSync(folder);
  const { code, out, err } = millrace(folder, ...words);
  expect(err).not.toMatch(STACK);
  expect([code, out]).toEqual([3, ""]);
  expect(readdirSync(folder)).toEqual(before);
  return err;
}

describe("help", () => {
  it("lists all commands", () => {
    const { code, out } = millrace(".", "--help");
    expect(code).toBe(0);
    const commands = [...out.matchAll(/^ {2}(\w+) (?:\[options\] |<|\[)/gm)].map(
      ([, name]) => name,
    );
    expect(commands).toEqual(["start", "check", "report", "explain", "invest", "factors", "help"]);
  });

  it.each(["start", "check", "report", "explain", "factors"])("gives examples of %s", (command) => {
    const { code, out, err } = millrace(".", command, "--help");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(new RegExp(`^Examples?:\\n  millrace ${command}\\b`, "m"));
  });

  it("says its version as package.json does", () => {
    const { version } = JSON.parse(readFileSync(join(TOP, "package.json"), "utf8")) as {
      version: string;
    };
    expect(millrace(".", "--version")).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });
});

describe("a mill laid out", () => {
  let folder = "";

  beforeAll(() => {
    folder = join(emptyFolder(), "mill");
    const { code, out, err } = millrace(".", "start", folder);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("invest.yaml, log.csv, meters.csv, plant.yaml");
  });

  it("can be checked as it stands, and all its rows are accepted", () => {
    const { code, out, err } = millrace(folder, "check", ...DAY);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("12 rows read = 12 accepted + 0 corrected + 0 set aside");
  });

  it("can be reported on, in silence but for the file written", () => {
    const done = millrace(folder, "report", ...DAY, ...FEW, ...JSON_ONLY);
    expect(done).toEqual({ code: 0, out: `${join("out", "report.json")}\n`, err: "" });
    const data = JSON.parse(readFileSync(join(folder, "out", "report.json"), "utf8")) as Record<
      string,
      unknown
    >;
    expect(data).toMatchObject({
      house: "Example Mill (invented)",
      period: { from: "2026-07-02", to: "2026-09-24" },
      draws: 100,
    });
    expect(readdirSync(join(folder, "out"))).toEqual(["report.json"]);
  });

  it("is never written over", () => {
    const before = readFileSync(join(folder, "plant.yaml"), "utf8");
    expect(expectRefused(folder, "start", ".")).toContain(
      "invest.yaml, log.csv, meters.csv, plant.yaml",
    );
    expect(readFileSync(join(folder, "plant.yaml"), "utf8")).toBe(before);
  });

  it("gives the same report from the same seed, another from another", () => {
    const report = (seed: string, out: string): string => {
      millrace(folder, "report", ...DAY, ...FEW, ...JSON_ONLY, "--seed", seed, "--out", out);
      return readFileSync(join(folder, out, "report.json"), "utf8");
    };
    const one = report("7", "one");
    expect(report("7", "two")).toBe(one);
    expect(report("8", "three")).not.toBe(one);
  });
});

describe("what is refused", () => {
  it("names a log that is not there, what it should be and what to do", () => {
    const err = expectRefused(freshMill(), "report", "january.csv", ...DAY, ...JSON_ONLY);
    expect(err).toMatch(/january\.csv.*expected a log\. Name the log after the command/);
  });

  it("names a plant file that is not there", () => {
    expect(expectRefused(emptyFolder(), "check")).toMatch(/plant\.yaml.*millrace start DIR/);
  });

  it("gives the line of an unknown key in the plant file, and the keys it knows", () => {
    const folder = freshMill();
    changed(folder, "plant.yaml", (text) => text.replace("    boiler: {", "    boilr: {"));
    const line =
      readFileSync(join(folder, "plant.yaml"), "utf8")
        .split("\n")
        .findIndex((text) => text.includes("boilr")) + 1;
    const err = expectRefused(folder, "report", ...DAY, ...JSON_ONLY);
    expect(err).toContain(`line ${line}`);
    expect(err).toMatch(/boilr.*expected one of .*burner.*boiler/);
  });

  it("says so when the log holds not one row it can take", () => {
    const folder = freshMill();
    changed(folder, "log.csv", (text) => text.slice(0, text.indexOf("\n") + 1));
    expect(expectRefused(folder, "report", ...DAY, ...JSON_ONLY)).toMatch(/^refused: /m);
  });

  it("says so when no lot is of the client asked for", () => {
    const err = expectRefused(freshMill(), "report", ...DAY, ...JSON_ONLY, "--client", "Nobody");
    expect(err).toContain("Nobody");
    expect(err).toContain("Check the spelling of client");
  });

  it("says so when the report is dated before any factor was entered", () => {
    const folder = freshMill();
    changed(folder, "log.csv", (text) => text.replaceAll("2026-0", "2019-0"));
    const err = expectRefused(folder, "report", "--as-of", "2020-01-01", ...JSON_ONLY);
    expect(err).toMatch(/^refused: .*expected .*factor/m);
    expect(err).toContain("--as-of");
  });
});

describe("rows set aside", () => {
  it("end with code 4 above the limit, 0 below it, and the report is written in both", () => {
    for (const [limit, code] of [
      ["0", 4],
      ["50%", 0],
    ] as const) {
      const out = emptyFolder();
      const done = millrace(
        DEMO,
        ...["report", ...DAY, ...FEW, ...JSON_ONLY, "--out", out, "--max-aside", limit],
      );
      expect(done.code, done.err).toBe(code);
      expect(readdirSync(out)).toEqual(["report.json", "setaside.csv"]);
      expect(done.err).toMatch(/^set-aside: log\.csv, line \d+, column length_m: /m);
      expect(done.err).toContain("`millrace check` lists them all");
      expect(done.err.includes("than --max-aside 0 allows")).toBe(code === 4);
    }
  });

  it("are counted, and the counts add up to the rows read", () => {
    const out = emptyFolder();
    const period = ["--from", "2025-11-01"];
    const done = millrace(DEMO, "check", "--json", ...DAY, ...period, "--out", out);
    expect(done.code).toBe(0);
    const checked = JSON.parse(done.out) as Checked;
    const records = parse(readFileSync(join(DEMO, "log.csv")), { relax_column_count: true });
    const [file] = checked.files;
    expect(file?.rows).toBe(records.length - 1);
    expect(file).toBeDefined();
    if (file === undefined) return;
    const { rows, accepted, corrected, setAside, outside } = file;
    expect(accepted + corrected + setAside + outside).toBe(rows);
    for (const count of [accepted, corrected, setAside, outside]) expect(count).toBeGreaterThan(0);
    const written = readFileSync(join(out, "setaside.csv"), "utf8").trimEnd().split("\n");
    expect(written.length).toBeGreaterThanOrEqual(setAside + 1);
  });

  it("write no file when there are none", () => {
    const folder = freshMill();
    const { out } = millrace(folder, "check", "--json", ...DAY);
    expect((JSON.parse(out) as Checked).setaside).toBeNull();
    expect(existsSync(join(folder, "out"))).toBe(false);
  });
});

describe("a reader that stops early", () => {
  it("ends the command without a word", async () => {
    const child = startMillrace(emptyFolder(), "factors", ...DAY);
    let err = "";
    child.stderr.setEncoding("utf8").on("data", (chunk: string) => (err += chunk));
    child.stdout.once("data", () => child.stdout.destroy());
    const [code] = (await once(child, "close")) as [number | null];
    expect([code, err]).toEqual([0, ""]);
  });
});

describe("factors", () => {
  it("gives one as data, by its id as written", () => {
    const { code, out } = millrace(emptyFolder(), "factors", "grid.PRT", "--json", ...DAY);
    expect(code).toBe(0);
    const rows = JSON.parse(out) as readonly Record<string, unknown>[];
    expect(rows.length).toBeGreaterThan(0);
    for (const row of rows) {
      expect(row["id"]).toMatch(/^grid\.PRT/);
      expect(row["overruled"]).toBe(false);
      expect(row["source"]).toMatch(/\w/);
      expect(row["low"]).toBeLessThanOrEqual(Number(row["value"]));
      expect(row["high"]).toBeGreaterThanOrEqual(Number(row["value"]));
    }
  });

  it("finds them by their words, and says when there is none", () => {
    const found = millrace(emptyFolder(), "factors", "blowdown", ...DAY);
    expect([found.code, found.err]).toEqual([0, ""]);
    expect(found.out).toMatch(/^boiler\.blowdown = /m);
    const { code, out } = millrace(emptyFolder(), "factors", "moonshine", ...DAY);
    expect([code, out]).toEqual([0, 'No factor has "moonshine" in its id or words.\n']);
  });
});
