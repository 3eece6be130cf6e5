import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { filled, patterned, patternPath, type Pattern } from "../../src/charts/pattern.js";

const PATTERNS = ["falling", "crossed", "level", "upright", "grid"] as const;

interface Line {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

function lines(path: string): readonly Line[] {
  const found = path.matchAll(/M([\d.-]+),([\d.-]+)(?:L([\d.-]+),([\d.-]+)|([HVh])([\d.-]+))/g);
  return Array.from(found, ([, x, y, toX, toY, letter, by]) => {
    const [startX, startY] = [Number(x), Number(y)];
    const to = {
      H: [Number(by), startY],
      V: [startX, Number(by)],
      h: [startX + Number(by), startY],
    }[letter ?? ""] ?? [Number(toX), Number(toY)];
    return { from: [startX, startY], to: [to[0] ?? Number.NaN, to[1] ?? Number.NaN] };
  });
}

const box = fc.record({
  x: fc.double({ min: -50, max: 500, noNaN: true }),
  y: fc.double({ min: -50, max: 500, noNaN: true }),
  width: fc.double({ min: 0, max: 90, noNaN: true }),
  height: fc.double({ min: 0, max: 90, noNaN: true }),
});

describe("patterns", () => {
  it.each(PATTERNS)("%s stays within its area", (pattern) => {
    fc.assert(
      fc.property(box, (area) => {
        for (const { from, to } of lines(patternPath(area, pattern))) {
          for (const [x, y] of [from, to]) {
            expect(x).toBeGreaterThan(area.x - 0.02);
            expect(x).toBeLessThan(area.x + area.width + 0.02);
            expect(y).toBeGreaterThan(area.y - 0.02);
            expect(y).toBeLessThan(area.y + area.height + 0.02);
          }
        }
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it.each<[Pattern, readonly number[]]>([
    ["falling", [1]],
    ["crossed", [-1, 1]],
  ])("%s lines keep their slope", (pattern, slopes) => {
    const found = lines(patternPath({ x: 3, y: 7, width: 60, height: 40 }, pattern));
    expect(found.length).toBeGreaterThan(10);
    const seen = found.map(({ from, to }) => (to[1] - from[1]) / (to[0] - from[0]));
    for (const slope of seen) expect(slopes.some((one) => Math.abs(slope - one) < 0.05)).toBe(true);
    for (const slope of slopes) expect(seen.some((one) => Math.abs(slope - one) < 0.05)).toBe(true);
    for (const { from, to } of found) {
      const [atEdge, atEnd] = [from, to].map(
        ([x, y]) =>
          Math.min(Math.abs(x - 3), Math.abs(x - 63), Math.abs(y - 7), Math.abs(y - 47)) < 0.02,
      );
      expect([atEdge, atEnd]).toEqual([true, true]);
    }
  });

  it("match in areas side by side", () => {
    const left = lines(patternPath({ x: 0, y: 0, width: 21, height: 20 }, "level"));
    const right = lines(patternPath({ x: 21, y: 0, width: 9, height: 20 }, "level"));
    expect(left.map(({ from }) => from[1])).toEqual(right.map(({ from }) => from[1]));
  });

  it("a grid has the lines of both directions", () => {
    const area = { x: 0, y: 0, width: 40, height: 20 };
    expect(lines(patternPath(area, "grid"))).toEqual([
      ...lines(patternPath(area, "level")),
      ...lines(patternPath(area, "upright")),
    ]);
  });

  it("plain has none", () => {
    expect(patternPath({ x: 0, y: 0, width: 40, height: 20 }, "plain")).toBe("");
  });
});

describe("filled areas", () => {
  const fill = {
    colour: "#d5e6f3",
    pattern: "falling",
    line: "#4d7f9f",
    letters: "#1e2733",
  } as const;

  it("are a ground and one path", () => {
    const nodes = filled({ x: 0, y: 0, width: 40, height: 20 }, fill);
    expect(nodes.map(({ tag }) => tag)).toEqual(["rect", "path"]);
    expect(patterned({ x: 0, y: 0, width: 40, height: 20 }, fill)).toEqual([nodes[1]]);
  });

  it("are nothing without extent", () => {
    expect(filled({ x: 0, y: 0, width: 0, height: 20 }, fill)).toEqual([]);
  });
});
