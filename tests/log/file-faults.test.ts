import { describe, expect, it } from "vitest";
import { CsvFault } from "../../src/log/csv.js";
import { emptyFile, fileTwice, unreadable } from "../../src/log/file-faults.js";
import { sentence } from "../../src/problems/sentence.js";

describe("faults of a file", () => {
  it.each([
    ["log-quote", "a closing quote"],
    ["log-binary", "a text file"],
    ["log-encoding", "windows-1252"],
  ] as const)("say %s with the line", (code, words) => {
    const problem = unreadable("log.csv", new CsvFault(code, 7));
    expect(problem).toMatchObject({ code, severity: "refused", file: "log.csv", line: 7 });
    expect(sentence(problem)).toContain("log.csv, line 7: expected ");
    expect(sentence(problem)).toContain(words);
  });

  it("tell an empty file from one with headings alone, and one that was given twice", () => {
    const said = [
      emptyFile("a.csv", "log-empty"),
      emptyFile("a.csv", "log-no-rows"),
      fileTwice("a.csv"),
    ];
    expect(said.map(({ code, severity, file }) => [code, severity, file])).toEqual([
      ["log-empty", "refused", "a.csv"],
      ["log-no-rows", "refused", "a.csv"],
      ["log-twice", "refused", "a.csv"],
    ]);
    expect(new Set(said.map(({ expected }) => expected)).size).toBe(3);
  });
});
