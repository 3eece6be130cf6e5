import { describe, expect, it } from "vitest";
import { windows1252 } from "../../src/log/windows-1252.js";

function codesOf(from: number, to: number): number[] {
  const bytes = Uint8Array.from({ length: to - from + 1 }, (_, i) => from + i);
  return Array.from(windows1252(bytes), (letter) => letter.codePointAt(0) ?? NaN);
}

function range(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

describe("windows1252", () => {
  it("agrees with ISO 8859-1 outside 0x80 to 0x9F", () => {
    expect(codesOf(0, 0x7f)).toEqual(range(0, 0x7f));
    expect(codesOf(0xa0, 0xff)).toEqual(range(0xa0, 0xff));
  });

  it("has the letters of the code page between", () => {
    // WHATWG Encoding Standard, index windows-1252, from memory.
    expect(codesOf(0x80, 0x8f)).toEqual([
      ...[0x20ac, 0x81, 0x201a, 0x192, 0x201e, 0x2026, 0x2020, 0x2021],
      ...[0x2c6, 0x2030, 0x160, 0x2039, 0x152, 0x8d, 0x17d, 0x8f],
    ]);
    expect(codesOf(0x90, 0x9f)).toEqual([
      ...[0x90, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014],
      ...[0x2dc, 0x2122, 0x161, 0x203a, 0x153, 0x9d, 0x17e, 0x178],
    ]);
  });
});
