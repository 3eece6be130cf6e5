import { describe, expect, it } from "vitest";
import { pointerAt } from "../../src/suppliers/pointer-at.js";

const TEXT = '{"a":[1,{"b/c":"x, [y"}],"d":true}';

describe("place of a character", () => {
  it.each([
    ["1", "/a/0"],
    ["x, ", "/a/1/b~1c"],
    ["true", "/d"],
    ["{", "/"],
  ])("of %s is %s", (sought, pointer) => {
    expect(pointerAt(TEXT, TEXT.indexOf(sought))).toBe(pointer);
  });

  it("is told as far as broken text goes", () => {
    expect(pointerAt('{"a":{"b":', 10)).toBe("/a/b");
    expect(pointerAt('{"a":"\\"', 99)).toBe("/a");
  });
});
