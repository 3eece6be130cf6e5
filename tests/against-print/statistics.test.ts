import jstat from "jstat";
import { describe, expect, it } from "vitest";
import { uniforms } from "../../src/numbers/generator.js";
import { mean, quantiles } from "../../src/numbers/quantiles.js";
import { expectNear } from "./near.js";
import { CERTIFIED_SETS } from "./nist-univariate.js";

describe("certified data sets", () => {
  // NIST Statistical Reference Datasets, univariate: certified means, to 15 digits.
  it.each(CERTIFIED_SETS)("[F6] mean of $name as certified", ({ values, mean: certified }) => {
    expectNear(mean(values), certified, 1e-13);
  });

  // The same sets: standard deviation, n − 1. No report prints one; it shows that the data are those certified.
  it.each(CERTIFIED_SETS)("[F6] $name spreads as certified", ({ values, deviation }) => {
    const centre = mean(values);
    const squares = mean(values.map((value) => (value - centre) ** 2)) * values.length;
    expectNear(Math.sqrt(squares / (values.length - 1)), deviation, 1e-12);
  });
});

describe("quantiles", () => {
  // jstat with both parameters at 1 is Hyndman and Fan's definition 7; its own default is another, which gives
  // 1.4 for 1 … 10 at 0.1 where definition 7 gives 1.9.
  it("[F7] agree with another library on any rank", () => {
    const probabilities = Array.from({ length: 101 }, (_, i) => i / 100);
    for (const count of [2, 9, 100, 1000]) {
      const values = uniforms(1, `values ${count}`, count);
      const others = jstat.jStat.quantiles([...values], probabilities, 1, 1);
      quantiles(values, probabilities).forEach((value, i) => {
        expect(Math.abs(value - others[i]!)).toBeLessThan(1e-14);
      });
    }
    const ten = Float64Array.from({ length: 10 }, (_, i) => i + 1);
    expect(quantiles(ten, [0.1])[0]).toBeCloseTo(1.9, 12);
    expect(jstat.jStat.quantiles([...ten], [0.1])[0]).toBeCloseTo(1.4, 12);
  });
});
