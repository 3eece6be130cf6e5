import { chmodSync, existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { keys } from "../../src/cli/keys.js";
import { seal } from "../../src/cli/seal.js";
import { verify } from "../../src/cli/verify.js";
import type { SealedPack } from "../../src/suppliers/schema.js";
import { emptyFolders } from "../tools/command.js";
import { changed, heard, LATE, millIn } from "./mills.js";

vi.setConfig({ testTimeout: 60_000 });

const emptyFolder = emptyFolders();

function options(mill: string, change: object = {}) {
  return {
    plant: join(mill, "plant.yaml"),
    asOf: LATE,
    draws: 100,
    seed: 1,
    out: join(mill, "mill.pack.json"),
    alias: "Mill 7",
    ...change,
  };
}

const packIn = (path: string): SealedPack => JSON.parse(readFileSync(path, "utf8")) as SealedPack;

describe("seal", () => {
  it("writes the same bytes each time, without clients, orders, fabrics, prices or lots of the log", async () => {
    const mill = millIn(emptyFolder());
    const { code } = await heard(() => seal([], options(mill)));
    expect(code).toBe(0);
    const text = readFileSync(join(mill, "mill.pack.json"), "utf8");
    await heard(() => seal([], options(mill)));
    expect(readFileSync(join(mill, "mill.pack.json"), "utf8")).toBe(text);
    const [head = "", ...rows] = readFileSync(join(mill, "log.csv"), "utf8").trim().split("\n");
    const columns = head.split(",");
    for (const column of ["lot", "client", "order", "fabric"]) {
      const at = columns.indexOf(column);
      if (at < 0) continue;
      for (const row of rows) {
        const word = row.split(",")[at] ?? "";
        if (word.length > 3) expect([word, text.includes(word)]).toEqual([word, false]);
      }
    }
    expect(text).not.toMatch(/tariffs|currency|EUR/);
    expect(text).not.toContain(mill);
  });

  it("signs, chains and is verified", async () => {
    const mill = millIn(emptyFolder());
    const name = join(mill, "k");
    await heard(() => keys(name, {}));
    const first = join(mill, "first.json");
    await heard(() => seal([], options(mill, { out: first, key: `${name}.private` })));
    const second = join(mill, "second.json");
    await heard(() =>
      seal([], options(mill, { out: second, key: `${name}.private`, previous: first })),
    );
    expect(packIn(second).pack.previous).toBe(packIn(first).seal.digest);
    const { code, out } = await heard(() =>
      verify([first, second], { key: `${name}.public`, json: true }),
    );
    expect(code).toBe(0);
    const { packs } = JSON.parse(out) as { packs: { checks: { id: string; outcome: string }[] }[] };
    // It follows, and is of the same period, which is asked after.
    expect(packs[1]!.checks.find(({ id }) => id === "chain")?.outcome).toBe("flag");
    expect(packs[1]!.checks.find(({ id }) => id === "signer")?.outcome).toBe("pass");
  });

  it("warns of a private key that others can read", async () => {
    const mill = millIn(emptyFolder());
    await heard(() => keys(join(mill, "k"), {}));
    chmodSync(join(mill, "k.private"), 0o644);
    const { err } = await heard(() => seal([], options(mill, { key: join(mill, "k.private") })));
    expect(err).toContain("can be read by others");
    expect(err).not.toContain(readFileSync(join(mill, "k.private"), "utf8").split("\n")[1]);
  });

  it.each([
    ["a key that is none", { key: "plant.yaml" }, "a private key as"],
    ["a key that is not there", { key: "none" }, "a private key"],
    ["a pack before that is none", { previous: "plant.yaml" }, "JSON"],
    ["a period without lots", { from: "2020-01-01", to: "2020-02-01" }, "at least one lot"],
  ])("refuses %s and writes nothing", async (_, change, words) => {
    const mill = millIn(emptyFolder());
    const paths = Object.fromEntries(
      Object.entries(change).map(([key, value]) => [
        key,
        ["key", "previous"].includes(key) ? join(mill, value) : value,
      ]),
    );
    const { code, err } = await heard(() => seal([], options(mill, paths)));
    expect(code).toBe(3);
    expect(err).toContain(words);
    expect(existsSync(join(mill, "mill.pack.json"))).toBe(false);
  });

  it("refuses to let a client's name out in a text of the plant file", async () => {
    const mill = millIn(emptyFolder());
    const [head = "", row = ""] = readFileSync(join(mill, "log.csv"), "utf8").split("\n");
    const client = row.split(",")[head.split(",").indexOf("client")] ?? "";
    expect(client.length).toBeGreaterThan(3);
    changed(mill, "plant.yaml", (text) =>
      text.replace("source: service sheet", `source: sheet of ${client}`),
    );
    const { code, err } = await heard(() => seal([], options(mill)));
    expect([code, err.includes("a pack that names no client")]).toEqual([3, true]);
  });
});
