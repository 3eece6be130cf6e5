import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { seal } from "../../src/cli/seal.js";
import { verify, verifyAll, shippedFactors } from "../../src/cli/verify.js";
import { emptyFolders } from "../tools/command.js";
import { heard, LATE, millIn } from "./mills.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const emptyFolder = emptyFolders();
let folder = "";
let pack = "";

beforeAll(async () => {
  folder = millIn(emptyFolder());
  pack = join(folder, "mill.pack.json");
  await heard(() =>
    seal([], { plant: join(folder, "plant.yaml"), asOf: LATE, draws: 100, seed: 1, out: pack }),
  );
});

describe("verify", () => {
  it("says of each check whether it passed, and that unchanged is not true", async () => {
    const { code, out, err } = await heard(() => verify([pack], {}));
    expect([code, err]).toEqual([0, ""]);
    for (const id of ["file", "fields", "canonical", "digest", "sums", "figures", "claims"])
      expect(out).toMatch(new RegExp(`^ {2}pass +${id} `, "m"));
    expect(out).toMatch(/^ {2}not present +signature /m);
    expect(out).toContain("Whole and signed does not mean true");
  });

  it("refuses a pack that was changed, with the place", async () => {
    const other = join(folder, "other.json");
    writeFileSync(
      other,
      readFileSync(pack, "utf8").replace(
        /"lots":(\d+)/,
        (_, lots: string) => `"lots":${Number(lots) + 1}`,
      ),
    );
    const { code, out } = await heard(() => verify([pack, other], {}));
    expect(code).toBe(3);
    expect(out).toMatch(/^ {2}fail +digest +the pack was changed after it was sealed/m);
    expect(out).toMatch(/at \/pack\/(?:months|strata|totals)/);
  });

  it("refuses what is no pack, too large, or not there, and never falls over", async () => {
    const files: readonly (readonly [string, string | Uint8Array])[] = [
      ["a.json", "{}"],
      ["b.json", ""],
      ["c.json", "[".repeat(100000)],
      ["d.json", new Uint8Array(17 * 1024 * 1024)],
      ["e.json", '{"pack":{},"seal":{}}'],
    ];
    for (const [name, content] of files) {
      const path = join(folder, name);
      writeFileSync(path, content);
      expect((await heard(() => verify([path], {}))).code, name).toBe(3);
    }
    expect((await heard(() => verify([join(folder, "none")], {}))).err).toContain(
      "a file at this path",
    );
    expect((await heard(() => verify([pack], { key: join(folder, "plant.yaml") }))).err).toContain(
      "a public key as",
    );
  });

  it("holds packs against each other for the chain", () => {
    const [first] = verifyAll([pack], shippedFactors());
    expect(first?.sound).toBe(true);
  });

  it("checks the rest where a file is missing or a folder, and ends as refused", async () => {
    const { code, out, err } = await heard(() =>
      verify([pack, join(folder, "none.json"), folder], {}),
    );
    expect(code).toBe(3);
    expect(out).toMatch(/whole, not signed: anyone could have resealed it/);
    expect(out).toContain("Not checked, cannot be checked from a pack: ");
    expect(err).toContain("none.json");
    expect(err).toContain("a folder");
    expect((await heard(() => verify([folder], {}))).err).not.toContain("EISDIR");
  });

  it("names the place where bytes are not canonical, and a day to come", async () => {
    const other = join(folder, "spaced.json");
    writeFileSync(other, readFileSync(pack, "utf8").replace('"counts":{', '"counts": {'));
    expect((await heard(() => verify([other], {}))).out).toMatch(/at byte \d+, \/pack\/counts/);
    const { out, code } = await heard(() => verify([pack], { today: "2020-01-01" }));
    expect(out).toMatch(/fail +dates .* is after today/);
    expect(code).toBe(3);
  });
});
