import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { keys } from "../../src/cli/keys.js";
import { seal } from "../../src/cli/seal.js";
import { suppliers } from "../../src/cli/suppliers.js";
import { emptyFolders } from "../tools/command.js";
import { TOP } from "../tools/tree.js";
import { heard, LATE } from "./mills.js";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const emptyFolder = emptyFolders();
const NAMES = ["ash", "brook", "cliff", "dell", "eyot"] as const;
let folder = "";

const at = (...names: readonly string[]): readonly string[] =>
  names.map((name) => join(folder, name));
const options = (change: object = {}) => ({
  by: ["water", "energy"] as const,
  asOf: LATE,
  out: join(folder, "out"),
  formats: ["html", "json"],
  draws: 200,
  seed: 1,
  reference: join(folder, "mix.yaml"),
  ...change,
});

interface Said {
  readonly verdict: string;
  readonly exit: number;
  readonly refused: readonly { alias: string; places: readonly string[] }[];
  readonly results: readonly {
    readonly standings: {
      readonly ranked: readonly { alias: string }[];
      readonly unranked: readonly { alias: string }[];
    };
    readonly reversal: {
      readonly first: { alias: string; share: number };
      readonly second: { alias: string };
      readonly of: string;
    } | null;
  }[];
}

async function said(paths: readonly string[], change: object = {}): Promise<Said> {
  const { out } = await heard(() => suppliers(paths, options({ json: true, ...change })));
  return JSON.parse(out) as Said;
}

beforeAll(async () => {
  folder = emptyFolder();
  cpSync(join(TOP, "examples", "suppliers"), folder, { recursive: true });
  for (const name of ["ash", "brook"])
    await heard(() =>
      seal([], {
        plant: join(folder, name, "plant.yaml"),
        asOf: LATE,
        draws: 100,
        seed: 1,
        out: join(folder, `${name}.json`),
        alias: `Supplier ${name}`,
      }),
    );
});

describe("suppliers", () => {
  it("turns the crude order of the invented five round, for a reason it names", async () => {
    const { verdict, results, exit } = await said(at(...NAMES));
    expect([verdict, exit]).toEqual(["partly comparable", 0]);
    const [water] = results;
    expect(water!.standings.ranked.map(({ alias }) => alias)).toEqual(
      ["Brook", "Cliff", "Ash", "Eyot"].map((name) => `Supplier ${name}`),
    );
    expect(water!.standings.unranked.map(({ alias }) => alias)).toEqual(["Supplier Dell"]);
    expect(water!.reversal).toMatchObject({
      first: { alias: "Supplier Ash" },
      second: { alias: "Supplier Cliff" },
      of: "pigment",
    });
  });

  it("writes the report and a page for each, and takes packs and folders side by side", async () => {
    const { code, out } = await heard(() =>
      suppliers(at("ash.json", "brook.json", "dell"), options()),
    );
    expect(code).toBe(0);
    expect(out).toContain("partly comparable");
    const html = readFileSync(join(folder, "out", "suppliers.html"), "utf8");
    for (const words of [
      "not signed: anyone could have resealed it",
      "logs, not sealed",
      "Supplier ash",
      "Supplier Dell",
    ])
      expect(html).toContain(words);
    for (const name of ["ash", "brook", "dell"])
      expect(existsSync(join(folder, "out", `own-supplier-${name}.html`))).toBe(true);
    const own = readFileSync(join(folder, "out", "own-supplier-ash.html"), "utf8");
    expect(own).not.toMatch(/Supplier (?:brook|Dell)/);
  });

  it("leaves out a pack that was changed, and says where", async () => {
    const text = readFileSync(join(folder, "ash.json"), "utf8");
    writeFileSync(join(folder, "changed.json"), text.replace(/"median":/, '"median":9'));
    writeFileSync(join(folder, "broken.json"), text.slice(0, 5000));
    const { refused, results } = await said(
      at("changed.json", "broken.json", "brook.json", "cliff"),
    );
    expect(refused.map(({ alias }) => alias)).toEqual(["broken.json", "Supplier ash"]);
    expect(refused[1]!.places).toContain("/pack/figures");
    expect(results[0]!.standings.ranked).toHaveLength(2);
  });

  it("refuses two of one name, however it is spelt", async () => {
    const { code, err } = await heard(() =>
      suppliers(at("ash.json", "ash.json", "brook.json"), options()),
    );
    expect(code).toBe(3);
    expect(err).toContain("a name that no other supplier has");
  });

  it("says who signed, by the names of known keys", async () => {
    await heard(() => keys(join(folder, "brook-works"), {}));
    await heard(() =>
      seal([], {
        plant: join(folder, "brook", "plant.yaml"),
        asOf: LATE,
        draws: 100,
        seed: 1,
        out: join(folder, "signed.json"),
        alias: "Brook signed",
        key: join(folder, "brook-works.private"),
      }),
    );
    const html = async (change: object): Promise<string> => {
      await heard(() => suppliers(at("ash.json", "signed.json"), options(change)));
      return readFileSync(join(folder, "out", "suppliers.html"), "utf8");
    };
    expect(await html({ keys: folder })).toContain("signed by brook-works, key");
    expect(await html({})).toContain("whose key it is, is not known");
  });

  it("pools a mix where none is given", async () => {
    const { verdict } = await said(at("brook", "cliff"), { reference: undefined });
    expect(verdict).toBe("comparable");
  });

  it("refuses what is not there, and one supplier alone", async () => {
    expect((await heard(() => suppliers(at("none"), options()))).code).toBe(3);
    expect(
      (
        await heard(() =>
          suppliers(at("ash.json"), options({ reference: join(folder, "no.yaml") })),
        )
      ).code,
    ).toBe(3);
    expect((await said(at("ash.json"))).exit).toBe(3);
  });
});
