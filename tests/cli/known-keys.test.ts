import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { knownKeys, publicKeyIn, unreadable } from "../../src/cli/known-keys.js";
import { keyFiles } from "../../src/suppliers/signature.js";
import { emptyFolders } from "../tools/command.js";

const emptyFolder = emptyFolders();
const { open } = keyFiles(new Uint8Array(32).fill(9));
const hex = open.split("\n")[1]!;

describe("public keys", () => {
  it("are named by their files, in a folder and alone", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "mill-7.public"), open);
    writeFileSync(join(folder, "notes.txt"), "none");
    for (const options of [{ keys: folder }, { key: join(folder, "mill-7.public") }])
      expect([...(knownKeys(options).keys ?? [])]).toEqual([[hex, "mill-7"]]);
    expect(knownKeys({})).toEqual({ problems: [] });
    expect(publicKeyIn(join(folder, "mill-7.public")).key).toBe(hex);
  });

  it("are refused where there are none", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "odd.public"), "none");
    mkdirSync(join(folder, "inner"));
    expect(knownKeys({ keys: folder }).problems).toHaveLength(1);
    expect(knownKeys({ keys: join(folder, "odd.public") }).problems[0]!.expected).toContain(
      "folder",
    );
    expect(knownKeys({ key: join(folder, "none") }).problems).toHaveLength(1);
    expect(unreadable(join(folder, "inner"))[0]).toMatchObject({ value: "a folder" });
    expect(unreadable(join(folder, "odd.public"))).toEqual([]);
  });
});
