import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { INDICATOR_IDS, type IndicatorId } from "../../src/account/indicators.js";
import { WrongWord } from "../../src/cli/arguments.js";
import { explain, type Explanation, type ExplainOptions } from "../../src/cli/explain.js";
import { type Ended, emptyFolders, millrace } from "../tools/command.js";
import { changed, heard, LATE, millIn } from "./mills.js";

// Processes are slow to start on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const emptyFolder = emptyFolders();
let mill = "";

beforeAll(() => {
  mill = millIn(emptyFolder());
});

function asked(id: string, change: Partial<ExplainOptions> = {}, folder = mill): Promise<Ended> {
  const options: ExplainOptions = {
    plant: join(folder, "plant.yaml"),
    asOf: LATE,
    per: "m2",
    draws: 100,
    seed: 1,
    terms: 8,
    rows: 8,
    ...change,
  };
  return heard(() => explain(id, [], options));
}

async function explained(
  id: string,
  change: Partial<ExplainOptions> = {},
  folder = mill,
): Promise<Explanation> {
  const { code, out, err } = await asked(id, { ...change, json: true }, folder);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out) as Explanation;
}

/** Lines of the log that hold lots, by number, as the file has them. */
function logLines(folder = mill): ReadonlyMap<number, readonly string[]> {
  const lines = readFileSync(join(folder, "log.csv"), "utf8").trimEnd().split("\n");
  return new Map(lines.map((line, i) => [i + 1, line.split(",")] as const).slice(1));
}

describe("what the doubt rests on", () => {
  it("is told only when it is asked for", async () => {
    expect((await asked("energy")).out).not.toContain("Sobol");
  });

  it("names as many factors as asked for, with indices and their error", async () => {
    const { code, out } = await asked("energy", { doubt: 3, rows: 0 });
    expect(code).toBe(0);
    const lines = out.slice(out.indexOf("Sobol")).split("\n");
    expect(lines.filter((line) => /^ *-?\d+ ± \d+ +\d+ ± \d+ +\S/.test(line))).toHaveLength(3);
  });
});

describe("what would overturn a saving", () => {
  interface Turning {
    readonly settings: readonly {
      readonly factor: string;
      readonly at: readonly number[];
      readonly range: readonly [number, number];
    }[];
    readonly idle: number;
  }

  it("names every setting once, those with a break-even first and inside the range tried", () => {
    const words = ["explain", "electricity", "--rows", "0", "--as-of", LATE, "--draws", "100"];
    const { code, out } = millrace(mill, ...words, "--break-evens", "--json");
    expect(code).toBe(0);
    const { settings, idle } = (JSON.parse(out) as { readonly breakEvens: Turning }).breakEvens;
    const names = settings.map(({ factor }) => factor);
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThan(20);
    expect(idle).toBeGreaterThan(0);
    const turning = settings.filter(({ at }) => at.length > 0);
    expect(turning.length).toBeGreaterThan(0);
    expect(settings.slice(0, turning.length)).toEqual(turning);
    for (const { at, range } of turning) {
      for (const value of at) {
        expect(value).toBeGreaterThanOrEqual(range[0]);
        expect(value).toBeLessThanOrEqual(range[1]);
      }
    }
    const printed = millrace(mill, ...words, "--break-evens").out;
    for (const { factor } of settings) expect(printed).toContain(`  ${factor}: `);
  });
});

describe("explain in print", () => {
  it("goes from the figure to terms, settings, sources and rows", async () => {
    const { code, out, err } = await asked("water");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/^water withdrawn \(water\), L per accepted m²$/m);
    expect(out).toMatch(/^ {3}known by: .+ \(T[1-7]\) \d+\s%/m);
    expect(out).toMatch(/^dye route: [\d.]+ \(95 % interval [\d.]+ to [\d.]+\)$/m);
    expect(out).toMatch(/reactive · wash · water\.process/);
    expect(out).toMatch(/kg of mass\S* × /);
    expect(out).toMatch(/^ {2}wash-range\.fresh-water @ .* = [\d.]+ L\/kg \(.*plant\)$/m);
    expect(out).toContain("guess of the wash hand");
    expect(out).toMatch(/^Rows behind it: 12, /m);
    expect(out).toMatch(/^ {2}log\.csv, line \d+: lot E-\d{3}, 2026-0[789]-\d\d, reactive: /m);
    expect(out).toMatch(/^ {2}and 4 more /m);
    expect(out).toMatch(
      /^ {2}all 12 on the dye route: [\d\s]+ L, over [\d\s]+ accepted m² = [\d.]+$/m,
    );
    expect(out).toMatch(/^file log\.csv: 12 rows, SHA-256 [0-9a-f]{16}$/m);
  });

  it("leaves the sum of what is not shown in no doubt", async () => {
    const { out } = await asked("energy", { terms: 1, rows: 0 });
    expect(out.match(/^ +\d+\s% {2}all other terms/gm)).toHaveLength(2);
    expect(out).toContain("  and 12 more ");
    expect(out).not.toContain("line ");
    const all = await asked("energy", { terms: 1000, rows: 1000 });
    expect(all.out).not.toContain("all other terms");
    expect(all.out).not.toContain(" more that ");
  });

  it("has words for a total that is not per unit", async () => {
    const { out } = await asked("water", { per: "total" });
    expect(out).toMatch(/^water withdrawn \(water\), L$/m);
    expect(out).toMatch(/^ {2}all 12 on the dye route: [\d\s]+ L$/m);
  });
});

describe("explain as data", () => {
  it.each(INDICATOR_IDS)(
    "breaks %s down into terms and into rows that add up alike",
    async (id) => {
      const { code, out, err } = await asked(id, { terms: 1000, rows: 1000, json: true });
      if (code !== 0) {
        expect([code, err]).toEqual([3, ""]);
        expect(out).toContain('"indicator-absent"');
        return;
      }
      const { arms, rows, rowCount } = JSON.parse(out) as Explanation;
      expect(rowCount).toBe(12);
      for (const { arm, sum, terms } of arms) {
        const byTerm = terms.reduce((all, { mean }) => all + mean, 0);
        const byRow = rows.reduce((all, row) => all + row[arm], 0);
        expect(Math.abs(byTerm - sum)).toBeLessThanOrEqual(1e-9 * Math.abs(sum));
        expect(Math.abs(byRow - sum)).toBeLessThanOrEqual(1e-9 * Math.abs(sum));
      }
    },
  );

  it("names the line of the log on which each row stands", async () => {
    const { rows } = await explained("cod", { rows: 1000 });
    const lines = logLines();
    expect(rows).toHaveLength(lines.size);
    for (const { file, line, lot, date, route } of rows) {
      expect(file).toBe("log.csv");
      const cells = lines.get(line);
      expect(cells?.slice(0, 2)).toEqual([lot, date]);
      expect(cells).toContain(route);
    }
  });

  it("shows first what adds most on the route it took, as many as asked for", async () => {
    const own = ({ route, pigment, dye }: Explanation["rows"][number]): number =>
      route.startsWith("pigment") ? pigment : dye;
    const all = (await explained("water", { rows: 12 })).rows;
    expect(all.map(own)).toEqual(all.map(own).toSorted((a, b) => b - a));
    const few = await explained("water", { rows: 3 });
    expect(few.rows).toEqual(all.slice(0, 3));
    expect(few.rowCount).toBe(12);
  });

  it("keeps to a client, and says nothing of another", async () => {
    const ended = await asked("water", { client: "Client East", rows: 1000 });
    expect(ended.out).toContain("Rows behind it: 3,");
    const { rows } = await explained("water", { client: "Client East", rows: 1000 });
    const lines = logLines();
    for (const { line } of rows) expect(lines.get(line)).toContain("Client East");
    const others = [...lines.values()].filter((cells) => !cells.includes("Client East"));
    for (const [lot = ""] of others) expect(ended.out).not.toContain(lot);
  });

  it("says for each route by which tiers it is known, in shares of the whole", async () => {
    for (const id of ["water", "cost"] as const) {
      const { arms } = await explained(id);
      for (const { evidence } of arms) {
        expect(evidence.length, id).toBeGreaterThan(0);
        expect(
          evidence.reduce((sum, { share }) => sum + share, 0),
          id,
        ).toBeCloseTo(1, 9);
      }
    }
  });

  it("keeps to a route", async () => {
    const { rows, rowCount } = await explained("water", { route: "reactive", rows: 1000 });
    const taken = [...logLines().values()].filter((cells) => cells.includes("reactive"));
    expect(rowCount).toBe(taken.length);
    expect(new Set(rows.map(({ route }) => route))).toEqual(new Set(["reactive"]));
  });

  it("counts no row twice when a lot with two contents makes reading begin again", async () => {
    const folder = millIn(emptyFolder());
    const twice = logLines(folder).get(4)?.join(",").replace(",180,", ",181,") ?? "";
    changed(folder, "log.csv", (text) => `${text.trimEnd()}\n${twice}\n`);
    const { rows, rowCount, files } = await explained("water", { rows: 1000 }, folder);
    expect(files).toMatchObject([{ rows: 13, setAside: 2 }]);
    expect(rowCount).toBe(11);
    expect(new Set(rows.map(({ lot }) => lot)).size).toBe(11);
  });

  it("gives the same numbers as the report", async () => {
    const explanation = await explained("energy");
    const words = ["--as-of", LATE, "--draws", "100", "--formats", "json"];
    expect(millrace(mill, "report", ...words).code).toBe(0);
    const report = JSON.parse(readFileSync(join(mill, "out", "report.json"), "utf8")) as {
      comparisons: Record<string, Record<string, unknown>>;
    };
    expect(explanation.saving).toEqual(report.comparisons["energy"]?.["saving"]);
    for (const { arm, total } of explanation.arms)
      expect(total).toEqual(report.comparisons["energy"]?.[arm]);
  });

  it("ends with code 4 when more rows are set aside than allowed", async () => {
    const folder = millIn(emptyFolder());
    changed(folder, "log.csv", (text) => text.replace(",420,", ",-420,"));
    expect((await asked("water", { maxAside: "0" }, folder)).code).toBe(4);
    const { code, out } = await asked("water", { maxAside: "1" }, folder);
    expect(code).toBe(0);
    expect(out).toContain("file log.csv: 12 rows, 1 of them set aside, SHA-256 ");
  });
});

describe("what explain refuses", () => {
  it.each([
    ["watr", "Did you mean water?"],
    ["COD", "Did you mean cod?"],
    ["co2", "Did you mean co2-location or co2-market?"],
    ["scope-2", "Did you mean scope-2-location or scope-2-market?"],
    ["electrcity", "Did you mean electricity?"],
  ])("offers what %s may have meant", async (word, said) => {
    await expect(asked(word)).rejects.toThrow(said);
  });

  it("offers nothing where nothing comes near, but names all it knows", async () => {
    const error = await asked("zzz").catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(WrongWord);
    const { message } = error as WrongWord;
    expect(message).not.toContain("Did you mean");
    for (const id of INDICATOR_IDS) expect(message).toContain(id);
  });

  it("names sites and routes of the plant file", async () => {
    const site = await asked("water", { site: "mian" });
    expect([site.code, site.out]).toEqual([3, ""]);
    expect(site.err).toMatch(/"mian"; expected one of main after --site\. Did you mean main\?/);
    const route = await asked("water", { route: "reactiv" });
    expect(route.err).toMatch(/"reactiv"; expected one of .*reactive.*Did you mean reactive\?/);
  });

  it.each([{ client: "Client Sout" }, { order: "A-99" }])(
    "names no client and no order where %j is unknown",
    async (scope) => {
      const { code, out, err } = await asked("water", scope);
      expect([code, out]).toEqual([3, ""]);
      expect(err).toContain(Object.values(scope)[0]);
      expect(err).toContain("Check the spelling of client and order");
      for (const [, , client = "", order = ""] of logLines().values()) {
        expect(err.replace("Client Sout", "")).not.toContain(client);
        expect(err).not.toMatch(new RegExp(`${order}\\b`));
      }
    },
  );
});

describe("help", () => {
  it("names every indicator in the order of the report", () => {
    const { out } = millrace(".", "explain", "--help");
    const named = /indicator {2,}([^]+?)\n {2}logs/.exec(out)?.[1] ?? "";
    const ids = named.split(/\s*,\s*|\s+or\s+|\s+/).filter((word) => word !== "");
    expect(ids).toEqual(INDICATOR_IDS satisfies readonly IndicatorId[]);
  });
});
