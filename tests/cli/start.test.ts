import type * as FileSystem from "node:fs";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it, vi } from "vitest";
import { start } from "../../src/cli/start.js";
import { emptyFolders } from "../tools/command.js";
import { textOf } from "../tools/tree.js";
import { heard } from "./mills.js";

vi.mock("node:fs", async (original) => {
  const whole = await original<typeof FileSystem>();
  return { ...whole, renameSync: vi.fn(whole.renameSync) };
});

const emptyFolder = emptyFolders();
const NAMES = ["invest.yaml", "log.csv", "meters.csv", "plant.yaml"];

describe("start", () => {
  it("lays a mill out in an empty folder and says what comes next", async () => {
    const folder = emptyFolder();
    const { code, out, err } = await heard(() => start(folder));
    expect([code, err]).toEqual([0, ""]);
    expect(readdirSync(folder)).toEqual(NAMES);
    for (const name of NAMES)
      expect(readFileSync(join(folder, name), "utf8")).toBe(textOf(`templates/mill/${name}`));
    const next = out.split("\n");
    expect(next[0]).toBe(`Laid out ${folder}: invest.yaml, log.csv, meters.csv, plant.yaml.`);
    expect(next).toContain(`  cd ${folder}`);
    expect(out).toMatch(/^ {2}millrace check\b/m);
    expect(out).toMatch(/^ {2}millrace report\b/m);
  });

  it("makes the folders on the way, and quotes names that a shell would cut", async () => {
    const folder = join(emptyFolder(), "our mills", "north");
    const { code, out } = await heard(() => start(folder));
    expect(code).toBe(0);
    expect(readdirSync(folder)).toEqual(NAMES);
    expect(out).toContain(`  cd "${folder}"\n`);
  });

  it("leaves other files alone", async () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "notes.txt"), "ours");
    mkdirSync(join(folder, "factors"));
    expect((await heard(() => start(folder))).code).toBe(0);
    expect(readFileSync(join(folder, "notes.txt"), "utf8")).toBe("ours");
    expect(readdirSync(folder)).toEqual(["factors", ...NAMES.slice(0, 3), "notes.txt", NAMES[3]]);
  });

  it.each([["plant.yaml"], ["log.csv", "meters.csv"], ["meters.csv.part"]])(
    "names what stands, writes over nothing and adds nothing: %s %s",
    async (...standing) => {
      const folder = emptyFolder();
      for (const name of standing) writeFileSync(join(folder, name), "ours");
      const { code, out, err } = await heard(() => start(folder));
      expect([code, out]).toEqual([3, ""]);
      expect(err).toContain(`a folder without ${standing.join(", ")}, as`);
      expect(err).toContain("choose another folder");
      expect(err.trim().split("\n")).toHaveLength(1);
      expect(readdirSync(folder)).toEqual(standing);
      for (const name of standing) expect(readFileSync(join(folder, name), "utf8")).toBe("ours");
    },
  );

  it("takes a folder or a link that leads nowhere for a name in use", async () => {
    const folder = emptyFolder();
    mkdirSync(join(folder, "log.csv"));
    symlinkSync(join(folder, "gone"), join(folder, "plant.yaml"));
    const { code, err } = await heard(() => start(folder));
    expect(code).toBe(3);
    expect(err).toContain("log.csv, plant.yaml");
    expect(existsSync(join(folder, "gone"))).toBe(false);
  });

  it("leaves nothing half-written when it fails on the way", async () => {
    const outer = emptyFolder();
    const folder = join(outer, "new", "mill");
    writeFileSync(join(outer, "notes.txt"), "ours");
    const works = vi.mocked(renameSync).getMockImplementation();
    vi.mocked(renameSync)
      .mockImplementationOnce(works ?? (() => undefined))
      .mockImplementationOnce(() => {
        throw new Error("disk full");
      });
    await expect(heard(() => start(folder))).rejects.toThrow("disk full");
    expect(readdirSync(outer)).toEqual(["notes.txt"]);
    expect((await heard(() => start(folder))).code).toBe(0);
    expect(readdirSync(folder)).toEqual(NAMES);
  });

  it("refuses to make a folder of a file", async () => {
    const file = join(emptyFolder(), "mill");
    writeFileSync(file, "ours");
    const { code, err } = await heard(() => start(file));
    expect(code).toBe(3);
    expect(err).toContain("expected a folder, not a file");
    expect(readFileSync(file, "utf8")).toBe("ours");
  });
});
