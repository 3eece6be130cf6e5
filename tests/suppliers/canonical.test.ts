import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sha256Hex } from "../../src/numbers/digest.js";
import {
  canonicalText,
  digestOf,
  hasLoneSurrogate,
  pointerPart,
} from "../../src/suppliers/canonical.js";

/** The number with these 64 bits. */
function fromBits(hex: string): number {
  return new DataView(
    Uint8Array.from(hex.match(/../g)!, (byte) => parseInt(byte, 16)).buffer,
  ).getFloat64(0);
}

describe("canonical JSON", () => {
  // RFC 8785, 3.2.2 and 3.2.3: the sample object and its canonical form.
  it("[P10] the sample object", () => {
    const input = String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`;
    const text = canonicalText(JSON.parse(input));
    expect(text).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
    expect(new TextEncoder().encode(text).length).toBe(118);
    expect(sha256Hex(text)).toBe(
      "2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb",
    );
  });

  // Test data published by the author of RFC 8785: digests of the canonical bytes of five files. The inputs
  // are written out here from the same data; a slip in one would give another digest.
  it.each([
    [
      "arrays",
      String.raw`[56,{"d":true,"10":null,"1":[]}]`,
      "099601b171cafed97c333f8878d68e7f8c8f795412adb34b2fdcf0e7c7beac42",
    ],
    [
      "french",
      String.raw`{"peach":"This sorting order","péché":"is wrong according to French","pêche":"but canonicalization MUST","sin":"ignore locale"}`,
      "d99d0ebdcb0033cb858cfa830ae46bc0fb3309413b271f1da828c89901a27ed5",
    ],
    [
      "structures",
      String.raw`{"1":{"f":{"f":"hi","F":5},"\n":56.0},"10":{},"":"empty","a":{},"111":[{"e":"yes","E":"no"}],"A":{}}`,
      "605f65004ec2db7692522a0852c22f1c989e036d547e88963d1a3143cf3195d5",
    ],
    [
      "unicode",
      '{"Unnormalized Unicode":"A\u030a"}',
      "0d99aad92a125196ff887876643fd3206786a84ddce2cee52ba4ad256d2381d3",
    ],
    [
      "weird",
      String.raw`{"\u20ac":"Euro Sign","\r":"Carriage Return","\u000a":"Newline","1":"One","\u0080":"Control\u007f","\ud83d\ude02":"Smiley","\u00f6":"Latin Small Letter O With Diaeresis","\ufb33":"Hebrew Letter Dalet With Dagesh","</script>":"Browser Challenge"}`,
      "6af595a9aa80110b964b4de3f82a05fa6ae7423005019bacfa2620dddc4e94d1",
    ],
  ])("[P11] test file %s", (_, input, digest) => {
    expect(digestOf(JSON.parse(input))).toBe(digest);
  });

  // RFC 8785, appendix B, and neighbours of its lines: number text from IEEE 754 bits.
  it.each([
    ["0000000000000000", "0"],
    ["8000000000000000", "0"],
    ["0000000000000001", "5e-324"],
    ["7fefffffffffffff", "1.7976931348623157e+308"],
    ["4340000000000000", "9007199254740992"],
    ["4430000000000000", "295147905179352830000"],
    ["44b52d02c7e14af5", "9.999999999999997e+22"],
    ["44b52d02c7e14af6", "1e+23"],
    ["44b52d02c7e14af7", "1.0000000000000001e+23"],
    ["444b1ae4d6e2ef4f", "999999999999999900000"],
    ["444b1ae4d6e2ef50", "1e+21"],
    ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
    ["3eb0c6f7a0b5ed8d", "0.000001"],
    ["41b3de4355555554", "333333333.33333325"],
    ["becbf647612f3696", "-0.0000033333333333333333"],
    ["43143ff3c1cb0959", "1424953923781206.2"],
  ])("[P12] number %s as %s", (bits, text) => {
    expect(canonicalText(fromBits(bits))).toBe(text);
  });

  it.each([
    ["NaN", Number.NaN],
    ["infinity", { a: [Number.POSITIVE_INFINITY] }],
    ["half a pair", { a: "\ud800" }],
    ["half a pair in a key", { "\udc00": 1 }],
    ["a function", [() => 1]],
    ["a big integer", 1n],
    ["nothing", undefined],
  ])("refuses %s", (_, value) => {
    expect(() => canonicalText(value)).toThrow();
  });

  it("names the place of what it refuses", () => {
    expect(() => canonicalText({ "a/b": [1, Number.NaN] })).toThrow("/a~1b/1: NaN");
    expect(pointerPart("a~b/c")).toBe("a~0b~1c");
  });

  it("is the same for keys in any order, and reads back as the same", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalText(value);
        expect(canonicalText(JSON.parse(text))).toBe(text);
        const turned =
          typeof value === "object" && value !== null && !Array.isArray(value)
            ? Object.fromEntries(Object.entries(value).reverse())
            : value;
        expect(canonicalText(turned)).toBe(text);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("tells halves of pairs from pairs", () => {
    expect(["😂", "a😂😂b", ""].map(hasLoneSurrogate)).toEqual([false, false, false]);
    expect(["\ud83d", "😂\udc00", "\ude02\ud83d", "a\ud800b"].map(hasLoneSurrogate)).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });
});
