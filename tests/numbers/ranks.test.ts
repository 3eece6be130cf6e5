import { sampleCorrelation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { draw, quantileOf } from "../../src/numbers/distributions.js";
import { normalCdf } from "../../src/numbers/normal.js";
import { mixed, type Ranks, ranksFrom, ranksOf } from "../../src/numbers/ranks.js";
import type { Spread } from "../../src/numbers/spread.js";

const COUNT = 20_000;

function farthest(a: Float64Array, b: Float64Array): number {
  return a.reduce((worst, value, i) => Math.max(worst, Math.abs(value - b[i]!)), 0);
}

describe("ranks", () => {
  it("says the same in both scales", () => {
    const ranks = ranksOf(1, "hall.temperature @ site main", COUNT);
    expect(farthest(ranks.scores().map(normalCdf), ranks.shares())).toBeLessThan(1e-15);
  });

  it("has the median at a share of one half, and the usual 95 % interval", () => {
    const scores = ranksFrom(Float64Array.of(0.5, 0.025, 0.975)).scores();
    expect(scores[0]).toBe(0);
    // 1.959963985 is tabulated in every statistics handbook.
    expect(scores[1]).toBeCloseTo(-1.959963985, 8);
    expect(scores[2]).toBeCloseTo(1.959963985, 8);
  });

  it("follows another stream by the correlation asked for", () => {
    const first = ranksOf(1, "a", COUNT);
    const own = ranksOf(1, "b", COUNT);
    for (const rho of [-0.6, 0, Math.SQRT1_2, 0.9]) {
      const seen = sampleCorrelation([...first.scores()], [...mixed(first, own, rho).scores()]);
      // Standard error of a correlation coefficient, (1 − ρ²)/√n; four of them.
      expect(Math.abs(seen - rho)).toBeLessThan((4 * (1 - rho * rho)) / Math.sqrt(COUNT));
    }
  });

  it("is the other stream at a correlation of one, and its mirror at minus one", () => {
    const first = ranksOf(1, "a", 100);
    const own = ranksOf(1, "b", 100);
    expect(mixed(first, own, 1).scores()).toEqual(first.scores());
    expect(mixed(first, own, -1).scores()).toEqual(first.scores().map((z) => -z));
  });

  it.each<Spread>([
    { shape: "normal", value: 25, sd: 2, limits: [-100, 200] },
    { shape: "lognormal", value: 3, gsd: 1.2, limits: [0, 1e9] },
    { shape: "lognormal", value: 3, gsd: 1.2, limits: [2.5, 4] },
    { shape: "triangular", low: 1, value: 2, high: 5 },
    { shape: "pert", low: 1, value: 2, high: 5 },
  ])("draws a $shape spread by its inverse distribution function", (spread) => {
    const ranks: Ranks = ranksOf(1, "c", 1000);
    const wanted = ranks.shares().map(quantileOf(spread));
    expect(farthest(draw(spread, ranks), wanted)).toBeLessThan(1e-12);
  });
});
