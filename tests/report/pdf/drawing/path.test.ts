import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { arc } from "../../../../src/report/pdf/drawing/arc.js";
import { pathOperators } from "../../../../src/report/pdf/drawing/path.js";

describe("pathOperators", () => {
  it("reads the triangle of SVG 1.1 (second edition) 8.1, example triangle01", () => {
    expect(pathOperators("M 100 100 L 300 100 L 200 300 z")).toBe(
      "100 100 m 300 100 l 200 300 l h",
    );
  });

  it("reads relative commands, repeated numbers and tight writing", () => {
    expect(pathOperators("m10,20 5-5 .5.5h-3V0zl1e1 0")).toBe(
      "10 20 m 15 15 l 15.5 15.5 l 12.5 15.5 l 12.5 0 l h 20 20 l",
    );
  });

  it("mirrors the handle of a smooth curve", () => {
    // SVG 1.1 (second edition) 8.3.6, example cubic01: the first handle of S is (250, 300).
    expect(pathOperators("M100,200 C100,100 250,100 250,200 S400,300 400,200")).toBe(
      "100 200 m 100 100 250 100 250 200 c 250 300 400 300 400 200 c",
    );
    expect(pathOperators("M0,0 S1,1 2,0")).toBe("0 0 m 0 0 1 1 2 0 c");
  });

  it("turns quadratic curves into cubic ones with handles at two thirds", () => {
    expect(pathOperators("M0,0 Q30,60 60,0 T120,0")).toBe(
      "0 0 m 20 40 40 40 60 0 c 80 -40 100 -40 120 0 c",
    );
  });

  it("ends an arc where it says, flags written without blanks", () => {
    expect(pathOperators("M0 0a10 10 0 0120 0")).toMatch(/ 20 0 c$/);
    expect(pathOperators("M0,0 A0,5 0 0 1 10,10")).toBe("0 0 m 0 0 10 10 10 10 c");
    expect(pathOperators("M0,0 A5,5 0 0 1 0,0")).toBe("0 0 m");
  });

  it("refuses data that breaks off or is none", () => {
    for (const data of ["L10,10", "M10", "M0,0 L1", "M0,0 X1,1", "M0,0 L1,1 hello", "M0,0 Z5"]) {
      expect(() => pathOperators(data)).toThrow("expected SVG path data");
    }
  });

  it("draws nothing for an empty path", () => {
    expect(pathOperators(" ")).toBe("");
  });
});

describe("arc", () => {
  it("stays on the circle within 0.03 %", () => {
    // A quarter turn by one curve with handles 4/3 tan(π/8) strays by at most 2.7e-4 of the radius:
    // from memory, the well-known bound for this approximation.
    for (const [x0, y0, x1, y1, x2, y2, x3, y3] of withStarts(
      [1, 0],
      arc([1, 0], [1, 1], 0, true, true, [0, -1]),
    )) {
      for (let t = 0; t <= 1; t += 0.05) {
        const at = (a: number, b: number, c: number, d: number): number =>
          (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t ** 2 * c + t ** 3 * d;
        expect(Math.hypot(at(x0, x1, x2, x3), at(y0, y1, y2, y3))).toBeCloseTo(1, 3);
      }
    }
  });

  it("takes the way that the flags ask for", () => {
    const count = (large: boolean, sweep: boolean): number =>
      arc([1, 0], [1, 1], 0, large, sweep, [0, 1]).length;
    expect(count(false, true)).toBe(1);
    expect(count(true, false)).toBe(3);
  });

  it("always ends at its end, whatever the radii", () => {
    const place = fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 }));
    fc.assert(
      fc.property(
        place,
        place,
        place,
        fc.integer({ min: 0, max: 359 }),
        fc.boolean(),
        fc.boolean(),
        (from, to, radii, turned, large, sweep) => {
          const last = arc(from, radii, turned, large, sweep, to).at(-1);
          if (last) expect(last.slice(4)).toEqual(to);
          else expect(to).toEqual(from);
          expect(last?.every(Number.isFinite) ?? true).toBe(true);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });
});

type Eight = readonly [number, number, number, number, number, number, number, number];

function withStarts(
  start: readonly [number, number],
  curves: ReturnType<typeof arc>,
): readonly Eight[] {
  let [x, y] = start;
  return curves.map((curve): Eight => {
    const whole: Eight = [x, y, ...curve];
    [x, y] = [curve[4], curve[5]];
    return whole;
  });
}
