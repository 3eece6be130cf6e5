import { describe, expect, it } from "vitest";
import { baseWeights, toldBase } from "../../src/meters/base-told.js";
import { leastSquares } from "../../src/numbers/least-squares.js";

const X = Float64Array.of(3, 9, 4, 7, 1, 8, 2, 6, 5, 10);
const Y = X.map((value, at) => 12 + 3 * value + Math.sin(7 * at));

describe("baseWeights", () => {
  it("are what the intercept of a fit hangs on", () => {
    const weights = baseWeights([X], [1, 0]);
    const sum = (values: Float64Array): number =>
      values.reduce((all, value, at) => all + value * weights[at]!, 0);
    expect(sum(Y)).toBeCloseTo(leastSquares([X], Y).coefficients[0]!, 9);
    // A line through 0 has no intercept, and one that is flat is all of it.
    expect(sum(X)).toBeCloseTo(0, 9);
    expect(sum(X.map(() => 1))).toBeCloseTo(1, 9);
  });

  it("count what goes by degree days as often as there are any", () => {
    const days = X.map((_, at) => (at < 5 ? 100 + 10 * at : 0));
    const weights = baseWeights([X, days], [10, 0, 600]);
    const y = X.map((value, at) => 12 + 3 * value + 0.5 * days[at]!);
    expect(y.reduce((all, value, at) => all + value * weights[at]!, 0)).toBeCloseTo(120 + 300, 6);
  });
});

describe("toldBase", () => {
  const before = { mean: Math.log(100), sd: 0.6 };

  it("is what was known before where the regression says little", () => {
    const after = toldBase(before, 150, 5000);
    expect(after?.mean).toBeCloseTo(before.mean, 2);
    expect(after?.sd).toBeCloseTo(before.sd, 2);
  });

  it("is what the regression found where it says much", () => {
    const after = toldBase(before, 160, 4);
    expect(Math.exp(after?.mean ?? NaN)).toBeCloseTo(160, -1);
    expect(after?.sd).toBeCloseTo(4 / 160, 2);
  });

  it("weighs both by their doubts, as two normal numbers are", () => {
    // Narrow lognormals are nearly normal: 100 ± 5 with 110 ± 5 is 105 ± 5/√2.
    const after = toldBase({ mean: Math.log(100), sd: 0.05 }, 110, 5);
    expect(Math.exp(after?.mean ?? NaN)).toBeCloseTo(105, 0);
    expect(after?.sd).toBeCloseTo(0.05 / Math.SQRT2, 2);
  });

  it("never falls below 0, and says when the regression contradicts what was known", () => {
    const low = toldBase(before, -20, 30);
    expect(low).toBeDefined();
    expect(low!.mean).toBeLessThan(before.mean);
    expect(toldBase(before, -200, 10)).toBeUndefined();
  });
});
