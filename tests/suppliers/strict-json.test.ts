import { describe, expect, it } from "vitest";
import { readStrictJson } from "../../src/suppliers/strict-json.js";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const codes = (text: string): readonly string[] =>
  readStrictJson("a.json", bytes(text)).problems.map(({ code }) => code);

describe("strict JSON", () => {
  it("reads what is plain", () => {
    const { value, problems } = readStrictJson(
      "a.json",
      bytes('{"a":[1,-0.5,"ö"],"b":{"a":null}}'),
    );
    expect(problems).toEqual([]);
    expect(value?.value).toEqual({ a: [1, -0.5, "ö"], b: { a: null } });
  });

  it.each([
    ["a key twice", '{"a":1,"b":2,"a":1}', "json-key-twice"],
    ["a key twice, once in escapes", String.raw`{"a":1,"\u0061":1}`, "json-key-twice"],
    ["a key twice further in", '[{"x":{"a":1 , "a" : 2}}]', "json-key-twice"],
    ["a key that programs take for their own", '{"__proto__":{"x":1}}', "json-key"],
    ["half a pair", String.raw`{"a":"\ud800"}`, "json-surrogate"],
    ["half a pair in a key", String.raw`{"\udfff":1}`, "json-surrogate"],
    ["a whole number that loses digits", '{"a":9007199254740993}', "json-number"],
    ["a number out of range", '{"a":1e999}', "json-number"],
    ["NaN", '{"a":NaN}', "json-syntax"],
    ["a comma too many", "[1,]", "json-syntax"],
    ["a remark", "[1] // one", "json-syntax"],
    ["no end", '{"a":"b', "json-syntax"],
    ["nothing", "", "json-syntax"],
    ["a mark of byte order", "\ufeff{}", "json-syntax"],
    ["depth", `${"[".repeat(25)}${"]".repeat(25)}`, "json-depth"],
    ["depth that would break a reader", "[".repeat(200000), "json-depth"],
  ])("refuses %s", (_, text, code) => {
    expect(codes(text)).toEqual([code]);
  });

  it("does not take brackets and colons inside texts for structure", () => {
    expect(codes(String.raw`{"a":"[[[\"{{:","b":"a\\","c":["a","a"]}`)).toEqual([]);
  });

  it("keeps to the largest whole number that is exact", () => {
    expect(codes("[9007199254740991,-9007199254740991]")).toEqual([]);
    expect(codes("[-9007199254740992]")).toEqual(["json-number"]);
  });

  it("refuses what is too large or not UTF-8 before reading it", () => {
    const limits = { bytes: 10, depth: 4 };
    expect(readStrictJson("a", bytes('["12345678"]'), limits).problems[0]?.code).toBe("json-size");
    expect(readStrictJson("a", Uint8Array.of(0x22, 0xff, 0x22)).problems[0]?.code).toBe(
      "json-encoding",
    );
    // An overlong form of the slash, which careless readers take.
    expect(readStrictJson("a", Uint8Array.of(0x22, 0xc0, 0xaf, 0x22)).problems[0]?.code).toBe(
      "json-encoding",
    );
  });

  it("says where", () => {
    expect(readStrictJson("a", bytes('{"a":1,"a":2}')).problems[0]?.key).toBe("byte 7");
    expect(readStrictJson("a", bytes('{"a":[0,1e400]}')).problems[0]?.key).toBe("/a/1");
  });
});
