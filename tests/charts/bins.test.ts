import { describe, expect, it } from "vitest";
import { binned, stretchOf, within } from "../../src/charts/bins.js";
const even = Float64Array.from({ length: 1200 }, (_, index) => (index + 0.5) / 1200);

describe("bins", () => {
  it("count every draw once, the last edge included", () => {
    const bins = binned(Float64Array.from([0, 0.5, 1, 1]), { low: 0, high: 1 });
    expect(bins.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo(1, 12);
    expect(bins[0]).toEqual({ x: 0, height: 0.25 });
    expect(bins.at(-1)?.height).toBe(0.5);
  });

  it("leave out what lies beyond the axis", () => {
    const bins = binned(Float64Array.from([-1, 0.5, 2, 3]), { low: 0, high: 1 });
    expect(bins.reduce((sum, { height }) => sum + height, 0)).toBe(0.25);
  });

  it("are level for even draws", () => {
    const bins = binned(even, { low: 0, high: 1 });
    for (const { height } of bins) expect(height * bins.length).toBeCloseTo(1, 9);
  });
});

describe("pieces of bins", () => {
  const bins = [
    { x: 0, height: 1 },
    { x: 1, height: 3 },
    { x: 2, height: 2 },
  ];
  const areaOf = (points: readonly { x: number; height: number }[]): number =>
    points.reduce((sum, { x, height }, index) => {
      const next = points[index + 1];
      return next === undefined ? sum : sum + height * (next.x - x);
    }, 0);

  it("start and end where they are cut", () => {
    expect(within(bins, 0.5, 1.25)).toEqual([
      { x: 0.5, height: 1 },
      { x: 1, height: 3 },
      { x: 1.25, height: 3 },
    ]);
  });

  it("have together the area of the whole", () => {
    const pieces = [within(bins, 0, 0.7), within(bins, 0.7, 2.2), within(bins, 2.2, 3)];
    expect(pieces.map(areaOf).reduce((sum, area) => sum + area, 0)).toBeCloseTo(6, 12);
  });

  it("are nothing without extent", () => {
    expect(within(bins, 1, 1)).toEqual([]);
  });
});

describe("stretch of an axis", () => {
  it("holds the draws, their interval and zero", () => {
    const { low, high } = stretchOf([{ draws: even.map((draw) => 10 + draw), low: 9, high: 10.9 }]);
    expect(low).toBe(0);
    expect(high).toBeGreaterThan(10.99);
    expect(high).toBeLessThan(11.5);
  });

  it("is not drawn out by one draw in ten thousand", () => {
    const draws = Float64Array.from({ length: 10000 }, (_, index) =>
      index === 7 ? 1e6 : index % 5,
    );
    expect(stretchOf([{ draws, low: 0, high: 4 }]).high).toBeLessThan(5);
  });

  it("reaches zero from below", () => {
    expect(stretchOf([{ draws: Float64Array.from([-3, -2]), low: -3, high: -2 }])).toMatchObject({
      high: 0,
    });
  });

  it("has some extent even where nothing varies", () => {
    expect(stretchOf([{ draws: new Float64Array(3), low: 0, high: 0 }])).toEqual({
      low: -1,
      high: 1,
    });
  });
});
