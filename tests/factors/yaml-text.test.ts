import { describe, expect, it } from "vitest";
import { pathText, problemAt, readYaml, valueAt } from "../../src/factors/yaml-text.js";

const read = (text: string): unknown => readYaml({ name: "a.yaml", text }).value?.value;

describe("readYaml", () => {
  it("keeps days as texts and reads decimal numbers alone as numbers", () => {
    expect(
      read("day: 2026-11-25\ncountry: NO\nhex: 0x10\nwide: .inf\nbig: 1_000\nclock: 12:30:00"),
    ).toEqual({
      day: "2026-11-25",
      country: "NO",
      hex: "0x10",
      wide: ".inf",
      big: "1_000",
      clock: "12:30:00",
    });
    expect(read("[1, -2.5, +3, .5, 4., 1e3, 2.5E-2]")).toEqual([1, -2.5, 3, 0.5, 4, 1000, 0.025]);
  });

  it("reads true, false and nothing, and leaves what is quoted a text", () => {
    expect(read('a: true\nb: false\nc: null\nd: ~\ne:\nf: "1"\ng: "true"\nh: ""')).toEqual({
      a: true,
      b: false,
      c: null,
      d: null,
      e: null,
      f: "1",
      g: "true",
      h: "",
    });
  });

  it("reads nested mappings, lists and folded texts", () => {
    expect(read("a:\n  - { b: [1, x] }\n  - >-\n    two\n    lines\n")).toEqual({
      a: [{ b: [1, "x"] }, "two lines"],
    });
  });

  it("takes an empty file for nothing", () => {
    expect(readYaml({ name: "a.yaml", text: "" })).toEqual({
      value: expect.objectContaining({ value: null }),
      problems: [],
    });
  });

  it.each([
    ["a: 1\nb: 2\na: 3\n", 3, "yaml-duplicate-key", "a"],
    ["a:\n  b: 1\n  c: 2\n  b: 3\n", 4, "yaml-duplicate-key", "b"],
    ["a: &x 1\n", 1, "yaml-alias", "&x"],
    ["a: 1\nb: *x\n", 2, "yaml-alias", "*x"],
    ["a: 1\nb: !!str 2\n", 2, "yaml-tag", "tag:yaml.org,2002:str"],
    ["? [1, 2]\n: 3\n", 1, "yaml-key", undefined],
    ["a: 1\n__proto__: 3\n", 2, "yaml-key", undefined],
    ["a: 1\nb: [1, 2\n", 3, "yaml-syntax", undefined],
    ["a: 1\n---\nb: 2\n", 2, "yaml-syntax", undefined],
    [`a: ${"[".repeat(5000)}`, 1, "yaml-syntax", undefined],
  ])("refuses %j", (text, line, code, value) => {
    const { value: read, problems } = readYaml({ name: "a.yaml", text });
    expect(read).toBeUndefined();
    expect(problems[0]).toMatchObject({ severity: "refused", file: "a.yaml", line, code });
    expect(problems[0]?.value).toBe(value);
  });

  it("names every fault of the writing", () => {
    const { problems } = readYaml({ name: "a.yaml", text: "a: &x 1\nb: *x\nc: !t 1\n" });
    expect(problems.map(({ line, code }) => [line, code])).toEqual([
      [1, "yaml-alias"],
      [2, "yaml-alias"],
      [3, "yaml-tag"],
    ]);
  });
});

describe("lineOf", () => {
  const yaml = readYaml({
    name: "a.yaml",
    text: "# head\na:\n  b:\n    - 1\n    - c: 2\n\n      d: 3\ne: [4,\n  5]\n",
  }).value;

  it.each([
    [[], 2],
    [["a"], 2],
    [["a", "b"], 3],
    [["a", "b", 0], 4],
    [["a", "b", 1, "d"], 7],
    [["e", 1], 9],
    // What is not there has the line of what should hold it.
    [["a", "b", 1, "x"], 5],
    [["a", "x", "y"], 2],
    [["a", "b", 0, "x"], 4],
    [["e", 7], 8],
  ])("of %j is %d", (path, line) => {
    expect(yaml?.lineOf(path)).toBe(line);
  });

  it("goes into a problem with the path", () => {
    const fault = { code: "x", expected: "y", remedy: "z" };
    expect(yaml && problemAt(yaml, ["a", "b", 1, "d"], fault)).toEqual({
      ...fault,
      severity: "refused",
      file: "a.yaml",
      line: 7,
      key: "a.b[1].d",
    });
  });
});

describe("paths", () => {
  it("are written as in plain words of code", () => {
    expect(pathText(["tables", 0, "rows", 2])).toBe("tables[0].rows[2]");
    expect(pathText([])).toBe("");
  });

  it("lead to values, and never into what every object has", () => {
    expect(valueAt({ a: [1, { b: 2 }] }, ["a", 1, "b"])).toBe(2);
    expect(valueAt({ a: 1 }, ["a", "b"])).toBeUndefined();
    expect(valueAt({ a: null }, ["a", "b"])).toBeUndefined();
    expect(valueAt({}, ["constructor"])).toBeUndefined();
  });
});
