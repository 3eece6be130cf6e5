import { describe, expect, it } from "vitest";
import { name, word } from "../../src/suppliers/schema-parts.js";

describe("names in a pack", () => {
  it("are none that a program takes for its own", () => {
    for (const taken of ["__proto__", "constructor", "toString", "hasOwnProperty"]) {
      expect(name.safeParse(taken).error?.issues[0]?.message).toContain("unlike __proto__");
      expect(word.safeParse(taken).success).toBe(false);
    }
    expect([name, word].map((one) => one.safeParse("reactive").success)).toEqual([true, true]);
    expect([name, word].map((one) => one.safeParse("").success)).toEqual([false, true]);
  });
});
