import { describe, expect, it } from "vitest";
import { templateMarkdown } from "../../../src/report/template/markdown.js";
import type { PartSource } from "../../../src/report/template/parts.js";
import { closing, headingOf, itemsOf, rowsOf } from "../../../src/report/template/parts.js";
import { runsOf } from "../../../src/report/template/runs.js";

const source: PartSource = {
  fail: (complaint) => {
    throw new Error(complaint);
  },
  runs: (token) =>
    runsOf(token.children ?? [], {
      carried: [],
      notes: new Set(["n"]),
      fail: (complaint) => {
        throw new Error(complaint);
      },
    }),
};

const read = (text: string) => templateMarkdown().parse(text, {});

function inside(text: string) {
  const tokens = read(text);
  return tokens.slice(1, closing(tokens, 0));
}

describe("headingOf", () => {
  it.each([
    ["# Water by step", "Water by step", "water-by-step"],
    ["# Water {#by.step}", "Water", "by.step"],
    ["# Größe & Çorlu", "Größe & Çorlu", "gro-e-corlu"],
    ["# 水", "水", ""],
  ])("reads %j", (text, words, id) => {
    expect(headingOf(read(text)[1]!, source)).toEqual({ text: words, id });
  });

  it("is plain text", () => {
    expect(() => headingOf(read("# a[^n]")[1]!, source)).toThrow("a heading is plain text");
    expect(() => headingOf(read("# {#id}")[1]!, source)).toThrow("a heading needs words");
  });
});

describe("itemsOf", () => {
  it("reads one text an item", () => {
    expect(itemsOf(inside("1. a\n2. *b*"), source)).toEqual([
      [{ kind: "text", text: "a" }],
      [{ kind: "text", text: "b", style: "italic" }],
    ]);
  });

  it("refuses lists in lists and items of two paragraphs", () => {
    expect(() => itemsOf(inside("- a\n  - b"), source)).toThrow("an item of a list");
    expect(() => itemsOf(inside("- a\n\n  b"), source)).toThrow("an item of a list");
  });
});

describe("rowsOf", () => {
  it("reads cells with their side and weight", () => {
    const plain = { kind: "text", text: "a" };
    expect(rowsOf(inside("| a | b |\n| - | -: |\n| **a** | a |"), source)).toEqual([
      [{ runs: [plain] }, { runs: [{ kind: "text", text: "b" }], align: "right" }],
      [
        { runs: [plain], strong: true },
        { runs: [plain], align: "right" },
      ],
    ]);
  });
});

describe("closing", () => {
  it("finds the end of the outer list", () => {
    const tokens = read("- a\n  - b\n- c");
    expect(closing(tokens, 0)).toBe(tokens.length - 1);
  });
});
