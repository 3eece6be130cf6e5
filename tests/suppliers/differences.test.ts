import { describe, expect, it } from "vitest";
import { differingPlaces, firstDifference } from "../../src/suppliers/differences.js";

describe("differences", () => {
  it.each([
    ["abc", "abc", undefined],
    ["abc", "abd", 2],
    ["abc", "ab", 2],
    ["", "a", 0],
    ["ö1", "ö2", 2],
  ])("between %j and %j begin at byte %s", (there, made, at) => {
    expect(firstDifference(there, made)).toBe(at);
  });

  it("are placed in plain data, rounding apart", () => {
    expect(differingPlaces({ a: [1, 2], b: "x" }, { a: [1 + 1e-12, 2], b: "x" }, "")).toEqual([]);
    expect(differingPlaces({ a: [1, 2], b: "x" }, { a: [1, 2.001], c: null }, "/p")).toEqual([
      "/p/a/1",
      "/p/b",
      "/p/c",
    ]);
    expect(differingPlaces(0, 1e-15, "/z")).toEqual(["/z"]);
    expect(differingPlaces(Number.NaN, 1, "/n")).toEqual(["/n"]);
    expect(differingPlaces(null, {}, "/o")).toEqual(["/o"]);
  });
});
