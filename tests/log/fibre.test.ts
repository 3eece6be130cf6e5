import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readFibre } from "../../src/log/fibre.js";
import { RULES } from "./made.js";

const { fibres } = RULES;

describe("readFibre", () => {
  it.each([
    ["cotton", [["cotton", 1]]],
    ["Cotton", [["cotton", 1]]],
    ["100% cotton", [["cotton", 1]]],
    ["CO", [["cotton", 1]]],
    ["linen", [["flax", 1]]],
    [
      "cotton 60 polyester 40",
      [
        ["cotton", 0.6],
        ["polyester", 0.4],
      ],
    ],
    [
      "60% CO / 40% PES",
      [
        ["cotton", 0.6],
        ["polyester", 0.4],
      ],
    ],
    [
      "polyester 40, cotton 60",
      [
        ["cotton", 0.6],
        ["polyester", 0.4],
      ],
    ],
    [
      "cotton 92.5 elastane 7.5",
      [
        ["cotton", 0.925],
        ["elastane", 0.075],
      ],
    ],
    [
      "cotton 92,5 elastane 7,5",
      [
        ["cotton", 0.925],
        ["elastane", 0.075],
      ],
    ],
    [
      "cotton 50 polyester 50",
      [
        ["cotton", 0.5],
        ["polyester", 0.5],
      ],
    ],
    [
      "cotton 40 polyester 20 cotton 40",
      [
        ["cotton", 0.8],
        ["polyester", 0.2],
      ],
    ],
    ["cotton 100 elastane 0", [["cotton", 1]]],
  ] as const)("reads %j", (text, shares) => {
    const blend = shares.map(([fibre, share]) => ({ fibre, share }));
    expect(readFibre(text, fibres)).toEqual({ blend, corrected: false });
  });

  it.each([
    ["coton", "coton"],
    ["cotton 60 wolle 40", "wolle"],
    ["хлопок", "хлопок"],
    ["cotton хлопок", "хлопок"],
    ["constructor", "constructor"],
    ["60/40", "60/40"],
  ])("names what it does not know in %j", (text, unknown) => {
    expect(readFibre(text, fibres)).toEqual({ unknown });
  });

  it.each([
    ["cotton 60 polyester 30", 90],
    ["cotton 60", 60],
    ["cotton 60 polyester", 60],
    ["cotton polyester", 0],
    ["cotton 60 polyester 39.4", 99.4],
    ["cotton 60 polyester 41", 101],
  ])("gives the sum of %j", (text, sum) => {
    expect(readFibre(text, fibres)).toEqual({ sum });
  });

  it("scales shares that miss 100 by no more than a half, and says so", () => {
    const read = readFibre("cotton 59.7 polyester 39.9", fibres);
    expect(read).toMatchObject({ corrected: true });
    if (!("blend" in read)) throw new Error("no blend");
    expect(read.blend[0]?.share).toBeCloseTo(59.7 / 99.6, 12);
    expect(read.blend.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it("does not call thirds corrected", () => {
    expect(readFibre("cotton 33.3 viscose 33.3 flax 33.4", fibres)).toMatchObject({
      corrected: false,
    });
  });

  it("gives shares that add up to 1, largest first, in whatever order they are written", () => {
    const names = ["cotton", "viscose", "polyester"];
    fc.assert(
      fc.property(fc.nat(99), fc.nat(99), fc.nat(5), (a, b, turn) => {
        const parts = [a, b, 200 - a - b].map((half, i) => `${names[i] ?? ""} ${half / 2}`);
        const other = [parts[turn % 3], parts[(turn + 1) % 3], parts[(turn + 2) % 3]].join(" ");
        const read = readFibre(parts.join(" "), fibres);
        if (!("blend" in read)) throw new Error("no blend");
        expect(read.blend.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
        const shares = read.blend.map(({ share }) => share);
        expect(shares).toEqual(shares.toSorted((x, y) => y - x));
        expect(readFibre(other, fibres)).toEqual(read);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
