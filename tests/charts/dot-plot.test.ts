import { describe, expect, it } from "vitest";
import { dotAxis } from "../../src/charts/dot-axis.js";
import { dotPlot, tenth } from "../../src/charts/dot-plot.js";

const frame = { left: 100, right: 400, top: 0, bottom: 50 };

describe("plot of dots", () => {
  it("places values of the axis in its frame", () => {
    const axis = dotAxis([0, 10]);
    const { x } = dotPlot(frame, axis, 40);
    expect(x(0)).toBeCloseTo(100, 6);
    expect(x(10)).toBeGreaterThan(390);
    expect(x(10)).toBeLessThanOrEqual(400);
  });

  it("leaves numbers out that would crowd", () => {
    const axis = dotAxis([0, 10]);
    const numbers = (apart: number): number =>
      JSON.stringify(dotPlot(frame, axis, apart).node).split('"text"').length - 1;
    expect(numbers(40)).toBe(axis.ticks.length);
    expect(numbers(150)).toBeLessThanOrEqual(2);
  });

  it("rounds lengths of paths", () => {
    expect(tenth(1.26)).toBe(1.3);
  });
});
