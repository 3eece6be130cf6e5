import { describe, expect, it } from "vitest";
import { PROBLEMS_KEPT, ProblemTally } from "../../src/log/problem-tally.js";
import type { Problem, Severity } from "../../src/problems/problem.js";

function problem(code: string, severity: Severity, line: number): Problem {
  return { code, severity, line, expected: "a lot", remedy: "Correct it." };
}

describe("ProblemTally", () => {
  it("counts by code and keeps the order in which problems were met", () => {
    const tally = new ProblemTally();
    tally.note([problem("row-width", "set-aside", 2), problem("unit-in-cell", "corrected", 3)]);
    tally.note([problem("row-width", "set-aside", 4)]);
    expect([...tally.counts]).toEqual([
      ["row-width", { severity: "set-aside", count: 2 }],
      ["unit-in-cell", { severity: "corrected", count: 1 }],
    ]);
    expect(tally.kept().map(({ line }) => line)).toEqual([2, 3, 4]);
    expect(tally.refused).toBe(false);
  });

  it("counts all, keeps a thousand, and puts a late refusal first", () => {
    const tally = new ProblemTally();
    for (let line = 0; line < 3 * PROBLEMS_KEPT; line++)
      tally.note([problem("row-width", "set-aside", line)]);
    tally.note([problem("log-quote", "refused", 9999)]);
    expect(tally.refused).toBe(true);
    expect(tally.counts.get("row-width")?.count).toBe(3 * PROBLEMS_KEPT);
    expect(tally.kept()).toHaveLength(PROBLEMS_KEPT);
    expect(tally.kept()[0]?.code).toBe("log-quote");
    expect(tally.kept().at(-1)?.line).toBe(PROBLEMS_KEPT - 2);
  });
});
