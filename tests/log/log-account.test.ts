import { describe, expect, it } from "vitest";
import { layOut } from "../../src/log/layout.js";
import { FileTally, filledIn } from "../../src/log/log-account.js";
import type { Problem } from "../../src/problems/problem.js";
import { HEAD } from "./made.js";

const FILE = { name: "log.csv", bytes: 9, sha256: "ab", unused: ["Shift"] };

describe("FileTally", () => {
  it("counts rows by fate, problems by code and filled cells by column", () => {
    const columns = layOut("log.csv", { fields: HEAD.split(","), line: 1 }, {}).layout?.columns;
    const [lot, date] = columns ?? [];
    if (lot === undefined || date === undefined) throw new Error("no columns");
    const problem: Problem = {
      ...{ code: "not-a-number", severity: "set-aside", expected: "a number" },
      remedy: "Correct it.",
    };
    const tally = new FileTally();
    tally.row("accepted");
    tally.fill([lot, date]);
    tally.row("corrected");
    tally.fill([lot]);
    tally.row("setAside");
    tally.note([problem, problem]);
    tally.row("outside");
    expect(tally.rows).toBe(4);
    expect(tally.counts(FILE)).toEqual({
      ...FILE,
      ...{ rows: 4, accepted: 1, corrected: 1, setAside: 1, outside: 1 },
      reasons: { "not-a-number": { severity: "set-aside", count: 2 } },
      filled: { lot: 2, date: 1 },
    });
  });
});

describe("filledIn", () => {
  it("adds the filled cells of files", () => {
    const file = (filled: Readonly<Record<string, number>>): Parameters<typeof filledIn>[0][0] => ({
      ...new FileTally().counts(FILE),
      filled,
    });
    expect([...filledIn([file({ lot: 2 }), file({ lot: 3, note: 1 })])]).toEqual([
      ["lot", 5],
      ["note", 1],
    ]);
  });
});
