import { describe, expect, it } from "vitest";
import { interval95 } from "../../../src/numbers/distributions.js";
import type { Spread } from "../../../src/numbers/spread.js";
import { densityCurve } from "../../../src/report/dossier/density.js";

const SPREADS: readonly Spread[] = [
  { shape: "normal", value: 5, sd: 1, limits: [0, 20] },
  { shape: "lognormal", value: 25, gsd: 2.1, limits: [0.1, 4000] },
  { shape: "triangular", low: 0.5, value: 0.7, high: 0.9 },
  { shape: "triangular", low: 0, value: 0, high: 3 },
  { shape: "uniform", low: -2, value: 0, high: 4 },
  { shape: "pert", low: 0.1, value: 0.2, high: 0.6 },
];

// Area under straight lines between points, from one value to another.
function area(points: ReturnType<typeof densityCurve>, from: number, to: number): number {
  const steps = 4000;
  const width = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i += 1) {
    const x = from + (i + 0.5) * width;
    const next = points.findIndex(([at]) => at >= x);
    const [x1, y1] = points[next] ?? [NaN, NaN];
    const [x0, y0] = points[next - 1] ?? [NaN, NaN];
    sum += (y0 + ((x - x0) / (x1 - x0)) * (y1 - y0)) * width;
  }
  return sum;
}

describe("densityCurve", () => {
  it.each(SPREADS)("holds 95 % between the ends of the interval: $shape", (spread) => {
    // The interval comes from the quantiles, the curve from the density. Where there are no ends, 0.6 % are
    // cut off on both sides and the rest is drawn as the whole.
    const drawn = "low" in spread ? 1 : 0.988;
    expect(area(densityCurve(spread), ...interval95(spread))).toBeCloseTo(0.95 / drawn, 2);
  });

  it("has its peak where the shape has it", () => {
    const peak = (spread: Spread): number =>
      densityCurve(spread).reduce((best, point) => (point[1] > best[1] ? point : best))[0];
    expect(peak({ shape: "triangular", low: 0.5, value: 0.73, high: 0.9 })).toBe(0.73);
    expect(peak({ shape: "pert", low: 0, value: 0.2, high: 1 })).toBe(0.2);
    // The mode of a lognormal is its median divided by e to the square of ln GSD.
    const mode = 25 / Math.exp(Math.log(2.1) ** 2);
    expect(
      peak({ shape: "lognormal", value: 25, gsd: 2.1, limits: [0.1, 4000] }) / mode,
    ).toBeCloseTo(1, 1);
  });

  it("rises in values and ends at the ends, though steps are no round numbers", () => {
    const curve = densityCurve({ shape: "triangular", low: 0.05, value: 0.1, high: 0.2 });
    expect(curve[0]).toEqual([0.05, 0]);
    expect(curve.at(-1)).toEqual([0.2, 0]);
    expect(curve.every(([at], i) => at > (curve[i - 1]?.[0] ?? -Infinity))).toBe(true);
  });

  it("is empty without doubt", () => {
    expect(densityCurve({ shape: "fixed", value: 3.6 })).toEqual([]);
  });
});
