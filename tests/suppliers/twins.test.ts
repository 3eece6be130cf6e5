import { describe, expect, it } from "vitest";
import { twinsAmong } from "../../src/suppliers/twins.js";

describe("twins", () => {
  it("are all named, each with the others, in whatever order they come", () => {
    const all = [
      { alias: "C", evidence: "1" },
      { alias: "A", evidence: "1" },
      { alias: "B", evidence: "2" },
      { alias: "D", evidence: "1" },
    ];
    const found = twinsAmong(all);
    expect(found.map(({ alias }) => alias)).toEqual(["C", "A", "D"]);
    expect(found[0]!.why).toContain("those of A, D too");
    expect(new Set(twinsAmong([...all].reverse()).map(({ why }) => why))).toEqual(
      new Set(found.map(({ why }) => why)),
    );
    expect(twinsAmong(all.slice(1, 3))).toEqual([]);
  });
});
