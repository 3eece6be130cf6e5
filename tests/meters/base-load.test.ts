import { describe, expect, it } from "vitest";
import { type BaseLoad, baseLoad, type NoBaseLoad } from "../../src/meters/base-load.js";

const numbers = (...values: readonly number[]): Float64Array => Float64Array.from(values);
const P = numbers(100, 120, 90, 150, 80, 130, 110, 140, 70, 125, 95, 115);
const E = numbers(2150, 2390, 2010, 2780, 1890, 2540, 2260, 2650, 1760, 2450, 2080, 2330);
const production = (values: Float64Array): { words: string; values: Float64Array } => ({
  words: "production",
  values,
});

function found(result: BaseLoad | NoBaseLoad): BaseLoad {
  if ("refused" in result) throw new Error(result.refused);
  return result;
}

describe("baseLoad", () => {
  // Worked outside, by the normal equations in long decimals.
  it("[P19] finds base and slope of twelve months", () => {
    const fit = found(baseLoad(E, production(P)));
    expect(fit.coefficients[0]?.value).toBeCloseTo(868.0689, 3);
    expect(fit.coefficients[1]?.value).toBeCloseTo(12.73447, 4);
    expect(fit.r2).toBeCloseTo(0.999429, 6);
    expect(fit.cv).toBeCloseTo(0.0034057, 7);
    expect(fit.share).toBeCloseTo(0.3817, 4);
    expect(fit.usable).toBe(true);
    expect(fit.changePoint).toBeUndefined();
  });

  it("[F11] has no bias, as any fit with an intercept", () => {
    expect(Math.abs(found(baseLoad(E, production(P))).nmbe)).toBeLessThan(1e-12);
  });

  it("has F = t² of its one driver", () => {
    const { f, coefficients, fChance } = found(baseLoad(E, production(P)));
    expect(f / coefficients[1]!.t ** 2).toBeCloseTo(1, 9);
    expect(fChance / coefficients[1]!.chance).toBeCloseTo(1, 6);
  });

  it("refuses fewer than nine points and says what would help", () => {
    const result = baseLoad(E.slice(0, 8), production(P.slice(0, 8)));
    expect(result).toMatchObject({ refused: "8 periods, fewer than 9" });
    expect((result as NoBaseLoad).remedy).toContain("9 periods");
  });

  it("refuses production that hardly varies", () => {
    const even = P.map((value) => 100 + value / 10);
    expect(baseLoad(E, production(even))).toMatchObject({
      refused: "production varies by 1.07 to 1 only, less than 2 to 1",
    });
    expect(baseLoad(E, production(new Float64Array(12)))).toHaveProperty("refused");
  });

  it("tells heating from production by degree days", () => {
    const days = numbers(300, 280, 200, 90, 0, 0, 0, 0, 10, 60, 180, 290);
    const heated = E.map((value, i) => value + 4 * days[i]!);
    const fit = found(baseLoad(heated, production(P), [{ words: "degree days", values: days }]));
    expect(fit.coefficients[0]?.value).toBeCloseTo(868, -2);
    expect(fit.coefficients[2]).toMatchObject({ words: "degree days" });
    expect(fit.coefficients[2]?.value).toBeCloseTo(4, 1);
    expect(fit.p).toBe(3);
    expect(fit.tested?.pays).toBe(true);
    // With one driver more, its F is its t squared.
    expect(fit.tested!.f / fit.coefficients[2]!.t ** 2).toBeCloseTo(1, 6);
  });

  it("leaves degree days out where they do not pay, and says so", () => {
    const days = numbers(7, 3, 9, 1, 8, 2, 6, 4, 5, 7, 3, 8);
    const fit = found(baseLoad(E, production(P), [{ words: "degree days", values: days }]));
    expect(fit.tested).toMatchObject({ words: "degree days", pays: false });
    expect(fit.tested?.chance).toBeGreaterThan(0.1);
    expect(fit.p).toBe(2);
    expect(fit.coefficients[0]?.value).toBeCloseTo(868.0689, 3);
  });

  it("takes a change point when it pays, and counts it as a coefficient", () => {
    const bend = numbers(...Array.from({ length: 14 }, (_, i) => 20 + 10 * i));
    const noise = [1, -2, 2, -1, 0, 1, -1, 2, -2, 1, 0, -1, 1, -1];
    const y = bend.map((value, i) => 500 + 8 * Math.max(0, value - 80) + noise[i]!);
    const fit = found(baseLoad(y, production(bend)));
    expect(fit.changePoint).toBe(80);
    expect(fit.p).toBe(3);
    expect(Math.abs(fit.coefficients[0]!.value - 500)).toBeLessThan(3);
  });

  it("says when a fit is too loose to be used", () => {
    const loose = E.map((value, i) => value + (i % 2 === 0 ? 900 : -900));
    expect(found(baseLoad(loose, production(P))).usable).toBe(false);
  });
});
