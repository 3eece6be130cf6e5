import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type FileContent, logFile, writeAll } from "../../src/cli/files.js";
import { emptyFolders } from "../tools/command.js";

const emptyFolder = emptyFolders();

function* lines(count: number, fault?: string): Generator<string> {
  for (let i = 0; i < count; i++) yield `line ${i} of many, é\n`;
  if (fault !== undefined) throw new Error(fault);
}

describe("writeAll", () => {
  it("writes whole contents and contents in pieces alike", () => {
    const folder = join(emptyFolder(), "out");
    const pieces = [...lines(100_000)].join("");
    const files = new Map<string, FileContent>([
      ["pieces.csv", lines(100_000)],
      ["whole.csv", pieces],
      ["none.csv", lines(0)],
      ["bytes.pdf", Uint8Array.of(0, 255)],
    ]);
    expect(writeAll(folder, files)).toEqual([...files.keys()].map((name) => join(folder, name)));
    expect(readFileSync(join(folder, "pieces.csv"), "utf8")).toBe(pieces);
    expect(readFileSync(join(folder, "whole.csv"), "utf8")).toBe(pieces);
    expect(readFileSync(join(folder, "none.csv"), "utf8")).toBe("");
    expect([...readFileSync(join(folder, "bytes.pdf"))]).toEqual([0, 255]);
  });

  it("leaves all files as they were when one of them breaks off", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "a.csv"), "before");
    const files = new Map<string, FileContent>([
      ["a.csv", "after"],
      ["b.csv", lines(100_000, "broken off")],
      ["c.csv", "after"],
    ]);
    expect(() => writeAll(folder, files)).toThrow("broken off");
    expect(readdirSync(folder)).toEqual(["a.csv"]);
    expect(readFileSync(join(folder, "a.csv"), "utf8")).toBe("before");
  });
});

describe("logFile", () => {
  it("gives all bytes of a file in order, as often as it is opened", async () => {
    const path = join(emptyFolder(), "log.csv");
    const bytes = Uint8Array.from({ length: 700_001 }, (_, i) => (i * 31) % 251);
    writeFileSync(path, bytes);
    const log = logFile(path);
    expect(log.name).toBe("log.csv");
    for (let times = 0; times < 2; times++) {
      const pieces: Buffer[] = [];
      for await (const piece of log.open()) pieces.push(Buffer.from(piece));
      expect(pieces.length).toBeGreaterThan(1);
      expect(Buffer.concat(pieces).equals(bytes)).toBe(true);
    }
  });
});
