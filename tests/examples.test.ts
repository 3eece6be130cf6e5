import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process, { execPath } from "node:process";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { judgeBy } from "../src/factors/schema-problems.js";
import { readYaml } from "../src/factors/yaml-text.js";
import { Ledger } from "../src/ledger/ledger.js";
import { type LogDialect, LogDialectSchema } from "../src/log/dialect.js";
import type { Lot } from "../src/log/lot.js";
import { type AsideRow, type LogAccount, readLogs } from "../src/log/read-logs.js";
import type { Plant } from "../src/plant/plant.js";
import { readPlant } from "../src/plant/read-plant.js";
import { PlantFile } from "../src/plant/schema.js";
import { sentence } from "../src/problems/sentence.js";
import { SHIPPED } from "./tools/shipped-factors.js";
import { textOf, TOP } from "./tools/tree.js";

const MILLS = ["examples/demo", "examples/foreign", "templates/mill"];

/** The day the demo is dated. */
const TODAY = "2026-11-25";

interface Mill {
  readonly plant: Plant;
  readonly lots: readonly Lot[];
  readonly aside: readonly AsideRow[];
  readonly account: LogAccount;
}

function plantOf(folder: string): { plant: Plant; dialect: LogDialect } {
  const file = { name: `${folder}/plant.yaml`, text: textOf(`${folder}/plant.yaml`) };
  const { value, problems } = readPlant(file, SHIPPED);
  if (value === undefined) throw new Error(problems.map(sentence).join("\n"));
  return { plant: value, dialect: LogDialectSchema.parse(value.text.log ?? {}) };
}

async function* bytesOf(path: string): AsyncGenerator<Uint8Array> {
  yield await Promise.resolve(readFileSync(TOP + path));
}

async function open(folder: string): Promise<Mill> {
  const { plant, dialect } = plantOf(folder);
  const lots: Lot[] = [];
  const aside: AsideRow[] = [];
  const path = `${folder}/log.csv`;
  const account = await readLogs(
    [{ name: path, open: () => bytesOf(path) }],
    dialect,
    {
      routes: new Set(Object.keys(plant.routes)),
      fibres: new Set(
        [...SHIPPED.factors.keys()].flatMap((id) => /^fibre\.(.+)\.regain$/.exec(id)?.[1] ?? []),
      ),
      sites: new Set(Object.keys(plant.sites)),
      today: TODAY,
    },
    {
      lot: (lot) => lots.push(lot),
      aside: (row) => aside.push(row),
      restart: () => {
        lots.length = 0;
        aside.length = 0;
      },
    },
  );
  return { plant, lots, aside, account };
}

/** Rows of a CSV file without quotes. */
function cellsOf(path: string): Record<string, string>[] {
  const [head = "", ...lines] = textOf(path).trimEnd().split("\n");
  const names = head.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? ""]));
  });
}

describe.each(MILLS)("%s", (folder) => {
  it("has a plant file that obeys its schema and ties up with its machines", () => {
    const yaml = readYaml({ name: "plant.yaml", text: textOf(`${folder}/plant.yaml`) });
    expect(yaml.problems).toEqual([]);
    if (yaml.value === undefined) throw new Error("the plant file is empty");
    expect(judgeBy(PlantFile, yaml.value).problems).toEqual([]);
    expect(Object.keys(plantOf(folder).plant.routes).length).toBeGreaterThanOrEqual(2);
  });

  it("says that it is invented", () => {
    expect(textOf(`${folder}/plant.yaml`).slice(0, 400)).toMatch(/invented/);
    expect(plantOf(folder).plant.house).toMatch(/\(invented\)$/);
  });

  it("has both arms for every lot", async () => {
    const { plant, lots } = await open(folder);
    const ledger = new Ledger();
    lots.forEach((lot) => {
      ledger.add(lot, plant);
    });
    const without = ledger.settled().groups.filter(({ key }) => key.pigment === "");
    expect(without.map(({ key }) => `${key.route} ${key.blend}`)).toEqual([]);
  });
});

describe("examples/demo", () => {
  let made: string;
  let mill: Mill;
  beforeAll(async () => {
    made = mkdtempSync(join(tmpdir(), "millrace-demo-"));
    mill = await open("examples/demo");
  });
  afterAll(() => {
    rmSync(made, { recursive: true, force: true });
  });

  it("is made again byte for byte, whatever the language and clock of the machine", () => {
    const { status, stderr } = spawnSync(execPath, ["examples/make-demo.mjs", made], {
      cwd: TOP,
      encoding: "utf8",
      env: { ...process.env, LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8", TZ: "Pacific/Kiritimati" },
    });
    expect(stderr).toBe("");
    expect(status).toBe(0);
    for (const name of ["log.csv", "meters.csv"]) {
      const kept = readFileSync(join(TOP, "examples/demo", name));
      expect(readFileSync(join(made, name)).equals(kept), name).toBe(true);
    }
  });

  it("has every planted fault found, and nothing else", () => {
    const found = mill.aside.map(({ fields, problems }) => [
      fields[0],
      ...problems.map(({ code }) => code),
    ]);
    expect(found).toEqual([
      ["WL-F0001", "length-not-positive"],
      ["WL-F0002", "length-not-positive"],
      ["WL-F0003", "no-such-day"],
      ["WL-F0004", "not-a-number"],
      ["WL-F0005", "unknown-fibre"],
      ["WL-F0006", "unknown-route"],
      ["WL-F0007", "rejected-above-length"],
      ["WL-F0008", "not-a-number"],
      ["WL-F0011", "future-date"],
      ["WL-F0013", "fibre-shares"],
      ["WL-F0014", "not-a-number"],
      ["WL-F0015", "missing-gsm"],
      ["WL-F0016", "out-of-range"],
      ["WL-02201", "lot-in-conflict"],
      ["WL-02201", "lot-in-conflict"],
      ["WL-F0099", "row-width"],
      ["Total", "row-of-totals"],
    ]);
    const corrected = mill.account.problems.filter(({ severity }) => severity === "corrected");
    expect(corrected.map(({ code, value }) => [code, value])).toEqual([
      ["unit-in-cell", "220 yd"],
      ["lot-repeated", "WL-02111"],
    ]);
    // 2,460 lots, one of which is lost to its twin, and three planted rows that may stay.
    expect(mill.lots.length).toBe(2460 - 1 + 3);
  });

  it("reads words for blank as blank, and knows no original for one reprint", () => {
    const blank = mill.lots.find(({ lot }) => lot === "WL-F0009");
    expect(blank).toMatchObject({ ink: undefined, coverage: undefined, pickup: undefined });
    const names = new Set(mill.lots.map(({ lot }) => lot));
    const orphans = mill.lots.filter(({ reprintOf }) => reprintOf !== "" && !names.has(reprintOf));
    expect(orphans.map(({ lot, reprintOf }) => [lot, reprintOf])).toEqual([
      ["WL-F0010", "WL-99999"],
    ]);
  });

  it("looks like a print house: lengths, ink, rejects, shares of workflows", () => {
    const goods = mill.lots.filter(({ kind }) => kind === "production");
    const area = (lots: readonly Lot[]): number =>
      lots.reduce((sum, { length, width }) => sum + length * width, 0);
    expect(Math.min(...goods.map(({ length }) => length))).toBeGreaterThanOrEqual(30);
    expect(Math.max(...goods.map(({ length }) => length))).toBeLessThanOrEqual(1500);
    const pigment = goods.filter(({ route }) => route.startsWith("pigment"));
    expect(area(pigment) / area(goods)).toBeGreaterThan(0.4);
    expect(area(pigment) / area(goods)).toBeLessThan(0.5);
    // Millilitres to a square metre: common practice, no source.
    const laydowns = mill.lots.flatMap(({ ink, length, width }) =>
      ink === undefined ? [] : [(1000 * ink) / (length * width)],
    );
    expect(Math.min(...laydowns)).toBeGreaterThan(8);
    expect(Math.max(...laydowns)).toBeLessThan(22);
    expect(goods.every(({ rejected, length }) => (rejected ?? 0) <= 0.041 * length)).toBe(true);
    expect(new Set(mill.lots.map(({ kind }) => kind)).size).toBe(3);
    expect(new Set(goods.map(({ client }) => client)).size).toBe(4);
    expect(new Set(mill.lots.map(({ fabric }) => fabric)).size).toBe(5);
  });
});

describe("examples/foreign", () => {
  it("is read through the mapping", async () => {
    const { lots, aside, account } = await open("examples/foreign");
    expect(lots.length).toBe(15);
    expect(aside.map(({ fields }) => fields[0])).toEqual(["Summe"]);
    expect(account.files.flatMap(({ unused }) => unused)).toEqual([]);
    expect(lots[0]).toMatchObject({
      date: "2026-08-03",
      client: "Kundin Esche",
      length: 1250.5,
      width: 1.5,
      route: "reactive",
      kind: "production",
    });
    expect(lots[0]?.ink).toBeCloseTo(26.4, 12);
    expect(lots[5]?.fibre).toEqual([
      { fibre: "cotton", share: 0.6 },
      { fibre: "polyester", share: 0.4 },
    ]);
    expect(lots[7]?.fabric).toBe("Pongé");
    // A yard is 0.9144 m and an avoirdupois ounce 28.349523125 g, exactly: NIST SP 811 (2008), appendix B.
    expect(lots[7]?.length).toBeCloseTo(310 * 0.9144, 9);
    expect(lots[9]?.gsm).toBeCloseTo((4.13 * 28.349523125) / 0.9144 ** 2, 9);
  });
});

describe("templates/mill", () => {
  it("is read without a word", async () => {
    const { lots, account } = await open("templates/mill");
    expect(lots.length).toBe(12);
    expect(account.problems).toEqual([]);
  });
});

describe.each(["examples/demo", "templates/mill"])("meters of %s", (folder) => {
  const rows = cellsOf(`${folder}/meters.csv`);
  const { meters = {} } = plantOf(folder).plant.text;

  it("belong to meters of the plant file, in their units, month by month", () => {
    const months = new Set(rows.map(({ from = "" }) => from.slice(0, 7)));
    expect(rows.length).toBe(months.size * Object.keys(meters).length);
    for (const { meter = "", from = "", to = "", unit, reading } of rows) {
      expect(meters[meter]?.unit).toBe(unit);
      expect(from.slice(0, 7)).toBe(to.slice(0, 7));
      expect(Number(reading)).toBeGreaterThan(0);
    }
  });

  it("cover every month in which lots were printed", async () => {
    const { lots } = await open(folder);
    const printed = new Set(lots.map(({ date }) => date.slice(0, 7)));
    expect([...new Set(rows.map(({ from = "" }) => from.slice(0, 7)))]).toEqual(
      [...printed].sort(),
    );
  });
});
