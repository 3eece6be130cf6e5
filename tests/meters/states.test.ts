import { describe, expect, it } from "vitest";
import { logCovariance, logMean } from "../../src/meters/states.js";

describe("logarithms of draws", () => {
  const x = Float64Array.of(1, Math.E, Math.E ** 2);
  const y = x.map((value) => value ** -2);

  it("have a mean", () => {
    expect(logMean(x)).toBeCloseTo(1, 12);
  });

  it("go together as they do", () => {
    const rows = logCovariance([x, y], Float64Array.of(logMean(x), logMean(y)));
    expect([...rows.map((row) => [...row])]).toEqual([
      [expect.closeTo(1, 12), expect.closeTo(-2, 12)],
      [expect.closeTo(-2, 12), expect.closeTo(4, 12)],
    ]);
  });
});
