import { describe, expect, it } from "vitest";
import type { Matrix } from "../../../../src/report/pdf/drawing/matrix.js";
import { compose, readTransform } from "../../../../src/report/pdf/drawing/matrix.js";

function map([a, b, c, d, e, f]: Matrix, x: number, y: number): readonly number[] {
  return [a * x + c * y + e, b * x + d * y + f].map((value) => Math.round(value * 1e6) / 1e6 + 0);
}

describe("readTransform", () => {
  it("reads each kind as SVG 1.1 (second edition) 7.6 defines it", () => {
    expect(map(readTransform("translate(10)"), 1, 2)).toEqual([11, 2]);
    expect(map(readTransform("translate(10 -5)"), 1, 2)).toEqual([11, -3]);
    expect(map(readTransform("scale(2)"), 1, 2)).toEqual([2, 4]);
    expect(map(readTransform("scale(2,-1)"), 1, 2)).toEqual([2, -2]);
    // A positive angle turns the x axis towards the y axis.
    expect(map(readTransform("rotate(90)"), 1, 0)).toEqual([0, 1]);
    expect(map(readTransform("rotate(90, 10, 10)"), 10, 10)).toEqual([10, 10]);
    expect(map(readTransform("rotate(90, 10, 10)"), 11, 10)).toEqual([10, 11]);
    expect(map(readTransform("matrix(1 2 3 4 5 6)"), 1, 1)).toEqual([9, 12]);
  });

  it("works through a list from the right", () => {
    expect(map(readTransform("translate(10,0) scale(2)"), 3, 0)).toEqual([16, 0]);
    expect(map(readTransform("scale(2),translate(10,0)"), 3, 0)).toEqual([26, 0]);
  });

  it("leaves all as it is where nothing is written", () => {
    expect(readTransform("  ")).toEqual([1, 0, 0, 1, 0, 0]);
  });

  it("refuses what it cannot read", () => {
    for (const text of ["skewX(10)", "translate()", "rotate(1,2)", "scale(1,2,3)", "translate(1"]) {
      expect(() => readTransform(text)).toThrow(`transform="${text}"`);
    }
  });
});

describe("compose", () => {
  it("maps by the inner one first", () => {
    const both = compose([1, 0, 0, 1, 5, 0], [2, 0, 0, 2, 0, 0]);
    expect(map(both, 1, 1)).toEqual([7, 2]);
  });
});
